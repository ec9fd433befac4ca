// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "staddle/optimise/stand_solution.h"
#include "staddle/plant/establishment.h"
#include "staddle/regime/after_tax.h"

namespace staddle {

// The response at which an alternative would be worth as much as the best one; of the best
// one, as much as the second. All else stays as it is.
struct BreakEvenResponse {
  std::string key = "years_gained";  // or "site_index_shift_ft"
  std::string unit = "years";        // or "ft"
  double today = 0.0;                // the response that the alternative counts with
  std::optional<double> value;
  std::string reason;  // why there is none; else empty
};

// A figure that leans on more than the equations or the studies were made on.
struct Extrapolation {
  std::string what;  // the key: "planted_tpa", "site_index_ft", "years_gained"
  double value = 0.0;
  double low = 0.0, high = 0.0;
};

// The money of an answer after tax: the plan and its rank stay those before tax.
struct AlternativeAfterTax {
  PlanAfterTax plan;  // where the answer has a best
  MoneyPerAcre establishment, later_practices;
  std::optional<MoneyPerAcre> loss_against_best;
  std::optional<MoneyPerAcre> gain_of_next_better;
};

// One alternative optimised to its own best regime.
struct AlternativeAnswer {
  EstablishmentAlternative alternative;
  std::optional<PricedRegime> best;  // absent for the reason below
  std::string reason;                // a gate that shuts it, or no regime; else empty
  bool shut = false;                 // by a gate
  MoneyPerAcre establishment;        // at age 0
  MoneyPerAcre later_practices;      // after it, not discounted
  std::optional<std::size_t> rank;   // 1: the best. Ties: the earlier of the file
  std::optional<MoneyPerAcre> loss_against_best;
  std::optional<std::size_t> next_better;  // of those above it, the nearest; in the list
  std::optional<MoneyPerAcre> gain_of_next_better;
  std::optional<BreakEvenResponse> break_even;
  std::vector<Extrapolation> extrapolations;
  std::optional<AlternativeAfterTax> after_tax;

  double worth_usd_ac() const { return best->value.objective.in(dollars_per_acre); }
};

// A rule of time, of law or of prudence, told for these alternatives on this site.
struct PlantGate {
  std::string topic;  // "wetland", "spray window", ...
  std::string text;
};

struct SpeciesAdvice {
  std::string name;    // "loblolly pine"
  std::string advice;  // "first choice", "fits", "possible", "not here"
  std::vector<std::string> reasons;
  std::string priced;  // how it can be priced
};

struct PlantSolution {
  std::vector<AlternativeAnswer> alternatives;  // in the order of the file
  std::vector<std::size_t> ranking;             // those with a regime, the best first
  // What the scenario plants without any of them.
  std::optional<PricedRegime> as_stated;
  std::optional<PlanAfterTax> as_stated_after_tax;
  std::vector<PlantGate> gates;
  std::vector<SpeciesAdvice> species;
};

}  // namespace staddle
