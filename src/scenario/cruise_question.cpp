// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/scenario/cruise_question.h"

#include <algorithm>

namespace staddle {
namespace {

std::optional<Area> area_of(const Tally& tally, const CruiseTerms& terms) {
  if (terms.area) return terms.area;
  Area sum;
  const bool all_known =
      !tally.plots.empty() &&
      std::all_of(tally.plots.begin(), tally.plots.end(), [&](const Plot& plot) {
        return std::any_of(tally.strata.begin(), tally.strata.end(),
                           [&](const StratumAcres& known) { return known.name == plot.stratum; });
      });
  if (all_known) {
    for (const StratumAcres& stratum : tally.strata) sum += stratum.acres;
    return sum;
  }
  if (terms.economics) return terms.economics->area;
  return std::nullopt;
}

void take_growth(CruiseQuestion& question) {
  const CruiseTerms& terms = question.terms;
  if (terms.model) {
    question.problem.growth = *terms.model;
    question.model = terms.model->id;
    return;
  }
  if (!terms.economics) return;
  const GrowthSource& source = terms.economics->stand.source;
  if (const auto* equations = std::get_if<EquationSet>(&source)) {
    question.problem.growth = *equations;
    question.model = equations->id;
  } else if (const auto* table = std::get_if<YieldTable>(&source)) {
    question.problem.growth = *table;
    question.model = "yield_table";
  }
}

void take_economics(CruiseQuestion& question) {
  if (!question.terms.economics) {
    question.assumed.push_back({"/products", "null", "the default products"});
    question.assumed.push_back({"/ready", "null", "the default limits of the signs"});
    return;
  }
  const Scenario& economics = *question.terms.economics;
  AppraisalProblem& problem = question.problem;
  problem.ready_limits = economics.ready_limits;
  problem.years_between_entries = economics.lattice.years_between_entries;
  problem.look_ahead_to = economics.lattice.final_to;
  // A table's products have no diameters by which single trees could be told apart.
  if (std::holds_alternative<EquationSet>(economics.stand.source)) {
    problem.products = economics.products;
    problem.prices = economics.prices;
  }
  for (const Assumption& assumption : economics.assumed) {
    const bool concerns_cruise =
        assumption.pointer.starts_with("/products") || assumption.pointer.starts_with("/ready");
    if (concerns_cruise) question.assumed.push_back(assumption);
  }
}

}  // namespace

CruiseQuestion make_cruise_question(std::string plots_file, Tally tally, CruiseTerms terms) {
  CruiseQuestion question{std::move(plots_file),
                          std::move(terms),
                          {std::move(tally),
                           {},
                           {},
                           default_products(),
                           {},
                           0.10,
                           0.90,
                           default_ready_limits(),
                           5,
                           age(45)},
                          {},
                          {},
                          {}};
  question.problem.at = question.terms.at;
  question.problem.error = question.terms.error;
  question.problem.confidence = question.terms.confidence;
  question.area = area_of(question.problem.tally, question.terms);
  take_growth(question);
  take_economics(question);
  return question;
}

std::vector<Assumption> assumptions_of(const CruiseQuestion& question, const Appraisal& appraisal) {
  std::vector<Assumption> assumed = question.assumed;
  for (const std::string& sentence : appraisal.assumed) assumed.push_back({"", "null", sentence});
  return assumed;
}

}  // namespace staddle
