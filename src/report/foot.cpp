// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "report/answer.h"
#include "report/cells.h"
#include "report/fitted_words.h"
#include "regime/case_kernel.h"
#include "signs/counted_words.h"
#include "signs/plain_words.h"
#include "staddle/scenario/advise_problem.h"
#include "staddle/signs/cautions.h"

namespace staddle {
namespace {

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

// Absent where no thinning can be made.
std::optional<std::string> how_thinned_stands_recover(const Answer& answer) {
  const Scenario& scenario = answer.scenario;
  const bool thins = scenario.lattice.max_thinnings > 0 || !scenario.regimes.empty();
  if (!thins || std::holds_alternative<std::vector<TabledRegime>>(scenario.stand.source)) {
    return std::nullopt;
  }
  if (scenario.thinning_response == ThinningResponse::as_published) {
    return "A thinned stand is taken to fill its room again at the published rate, however short "
           "its crowns are (thinning_response as-published); in trials old and short-crowned "
           "stands did less.";
  }
  return fmt::format(
      "A thinned stand is taken to fill its room again only as far as its live crowns allow: not "
      "at all from crowns of {} of the height or less, at the full published rate from {} on "
      "(thinning_response crown-limited).",
      words::percent(crown_without_response),
      words::percent(crown_without_response + crown_range_of_response));
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
  if (auto recovery = how_thinned_stands_recover(answer)) section.items.push_back(*recovery);
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
  for (std::string& words : outside_fitted_words(answer.advice.outside_fitted_range)) {
    section.items.push_back(std::move(words));
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
      "Proof: of {} within the choices allowed, {} {} priced one by one, and "
      "{}. The arithmetic is exact; the growth is not (15 to 20 percent).",
      words::counted(certificate.lattice_regimes, "plan"),
      words::number(static_cast<double>(certificate.regimes_valued)),
      certificate.regimes_valued == 1 ? "was" : "were", others);
}

}  // namespace staddle
