// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "report/answer.h"
#include "report/cells.h"
#include "signs/plain_words.h"
#include "staddle/scenario/advise_problem.h"
#include "staddle/signs/cautions.h"

namespace staddle {
namespace {

const char* quantity_in_words(const std::string& what) {
  if (what == "age_yr") return "ages, years";
  if (what == "tpa") return "trees an acre";
  if (what == "site_index_ft") return "site index, feet";
  return "";
}

std::string how_trees_are_marked(const Answer& answer) {
  std::vector<std::string> ratios;
  for (const double ratio : answer.scenario.cut_diameter_ratios) {
    ratios.push_back(words::number(ratio, 2));
  }
  return fmt::format("The trees cut are taken to be {} times as thick as the stand's mean: this "
                     "describes how they are marked. The equations show no gain in grade or health "
                     "from taking the poor trees; it is there all the same.",
                     words::list(ratios, "then"));
}

}  // namespace

Section assumptions_section(const Answer& answer) {
  Section section{"What this answer takes for granted", {}, {}, {}};
  std::string defaults;
  for (const Assumption& assumption : assumptions_of(answer.scenario, answer.advice)) {
    if (assumption.why == "default") {
      defaults += (defaults.empty() ? "" : "; ") + assumption.pointer + " " + assumption.value_json;
      continue;
    }
    section.items.push_back(assumption.pointer.empty()
                                ? words::capital(assumption.why)
                                : fmt::format("{} {}: {}", assumption.pointer,
                                              assumption.value_json, assumption.why));
  }
  if (!defaults.empty()) {
    section.paragraphs.push_back("Defaults used, where the file is silent: " + defaults + ".");
  }
  if (!answer.cuts.empty()) section.items.push_back(how_trees_are_marked(answer));
  return section;
}

Section sources_section(const Answer& answer) {
  Section section{"Sources and cautions", {}, {}, {}};
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
        "The answer leans on {} of {}, outside the {} to {} to which the equations were fitted.",
        quantity_in_words(outside.what), words::number(outside.value), words::number(outside.low),
        words::number(outside.high)));
  }
  for (const std::string& caution : standing_cautions()) section.items.push_back(caution);
  return section;
}

std::string foot_of(const Answer& answer) {
  const Certificate& certificate = answer.advice.certificate;
  const double gap = certificate.gap.in(dollars_per_acre);
  const std::string others =
      gap == 0.0 ? std::string("none of the others is worth more")
                 : fmt::format("none of the others can be worth more than ${:.2f} an acre more", gap);
  return fmt::format("Proof: of {} plans within the choices allowed, {} were priced one by one, and "
                     "{}. The arithmetic is exact; the growth is not (15 to 20 percent).",
                     words::number(certificate.lattice_regimes),
                     words::number(static_cast<double>(certificate.regimes_valued)), others);
}

}  // namespace staddle
