// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "report/answer.h"
#include "report/cells.h"
#include "signs/plain_words.h"
#include "staddle/scenario/advise_problem.h"
#include "staddle/signs/cautions.h"

namespace staddle {
namespace {

std::string quantity_in_words(const std::string& what, double value) {
  const std::string amount = words::number(value);
  if (what == "age_yr") return fmt::format("an age of {} years", amount);
  if (what == "tpa") return fmt::format("{} trees an acre", amount);
  return fmt::format("a site index of {} feet", amount);
}

// "replant" without its quotes; lists and numbers as they are.
std::string plain_value(const std::string& json) {
  if (json.size() < 2 || json.front() != '"') return json;
  return json.substr(1, json.size() - 2);
}

std::string products_in_words(const std::vector<ProductLimit>& products) {
  std::vector<std::string> texts;
  for (const ProductLimit& product : products) {
    texts.push_back(fmt::format("{} from {:.4g} inches to a top of {:.4g}",
                                words::product(product.name), product.min_dbh.in(inches),
                                product.top.in(inches)));
  }
  return "products: " + words::list(texts);
}

// The defaults used, one text per block of the file.
class Defaults {
 public:
  void add(const Assumption& assumption, const Scenario& scenario) {
    const std::size_t slash = assumption.pointer.find('/', 1);
    const std::string block = assumption.pointer.substr(1, slash - 1);
    if (block == "products") {
      blocks_.push_back(products_in_words(scenario.products));
      return;
    }
    const std::string key = slash == std::string::npos ? "" : assumption.pointer.substr(slash + 1);
    const auto begun = std::ranges::find_if(
        blocks_, [&](const std::string& text) { return text.starts_with(block + ":"); });
    std::string& text = begun == blocks_.end() ? blocks_.emplace_back(block + ":") : *begun;
    if (!text.ends_with(':')) text += ";";
    text += (key.empty() ? "" : " " + key) + " " + plain_value(assumption.value_json);
  }

  bool empty() const { return blocks_.empty(); }
  const std::vector<std::string>& blocks() const { return blocks_; }

 private:
  std::vector<std::string> blocks_;
};

std::string how_trees_are_marked(const Answer& answer) {
  std::vector<std::string> ratios;
  for (const double ratio : answer.scenario.cut_diameter_ratios) {
    ratios.push_back(words::number(ratio, 2));
  }
  return fmt::format("The trees cut are taken to be {} times as thick as the stand's mean: this "
                     "describes how they are marked and is no way to earn. The equations show no "
                     "gain in grade or health from taking the poor trees.",
                     words::list(ratios, "then"));
}

}  // namespace

Section assumptions_section(const Answer& answer) {
  Section section{"What this answer takes for granted", {}, {}, {}};
  Defaults defaults;
  for (const Assumption& assumption : assumptions_of(answer.scenario, answer.advice)) {
    if (assumption.why == "default") {
      defaults.add(assumption, answer.scenario);
    } else if (assumption.pointer.empty()) {
      section.items.push_back(words::capital(assumption.why));
    } else {
      section.items.push_back(fmt::format("{}, {}: {}", assumption.pointer.substr(1),
                                          plain_value(assumption.value_json), assumption.why));
    }
  }
  if (!answer.cuts.empty()) section.items.push_back(how_trees_are_marked(answer));
  if (answer.final_age() == answer.scenario.lattice.final_to) {
    section.items.push_back(fmt::format(
        "The final harvest stands at the last age that the choices allow, {}: a later one was not "
        "looked at.", answer.final_age().whole()));
  }
  section.paragraphs.push_back(defaults.empty()
                                   ? "The file leaves nothing to the defaults."
                                   : "Where the file is silent, these defaults were used:");
  section.items.insert(section.items.begin(), defaults.blocks().begin(), defaults.blocks().end());
  return section;
}

Section growth_section(const Answer& answer) {
  Section section{"Sources", {}, {}, {}};
  if (const EquationSet* equations = answer.equations()) {
    section.paragraphs.push_back(fmt::format("Growth: {} ({}). Source: {}.", equations->id,
                                             equations->region, equations->source));
    for (const std::string& note : equations->notes) section.items.push_back(note);
  } else if (const auto* table = std::get_if<YieldTable>(&answer.scenario.stand.source)) {
    section.paragraphs.push_back(fmt::format(
        "Growth: the owner's yield table {}. It tells of unthinned stands; how a thinned one "
        "recovers is an assumption.",
        table->file));
  }
  for (const OutsideRange& outside : answer.advice.outside_fitted_range) {
    section.items.push_back(fmt::format(
        "The answer leans on {}, outside the {} to {} to which the equations were fitted.",
        quantity_in_words(outside.what, outside.value), words::number(outside.low),
        words::number(outside.high)));
  }
  return section;
}

Section sources_section(const Answer& answer) {
  Section section = growth_section(answer);
  section.title = "Sources and cautions";
  for (const std::string& caution : standing_cautions()) section.items.push_back(caution);
  return section;
}

std::string foot_of(const Answer& answer) {
  const Certificate& certificate = answer.advice.certificate;
  const double gap = certificate.gap.in(dollars_per_acre);
  const std::string others =
      gap == 0.0 ? std::string("none of the others is worth more")
                 : fmt::format("none of the others can add more than ${:.2f} an acre", gap);
  return fmt::format(
      "Proof: of {} plans within the choices allowed, {} were priced one by one, and "
      "{}. The arithmetic is exact; the growth is not (15 to 20 percent).",
      words::number(certificate.lattice_regimes),
      words::number(static_cast<double>(certificate.regimes_valued)), others);
}

}  // namespace staddle
