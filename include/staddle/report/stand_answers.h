// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "staddle/advise/advice.h"
#include "staddle/advise/value_maps.h"
#include "staddle/base/parallel.h"
#include "staddle/base/result.h"
#include "staddle/hold/ledger.h"
#include "staddle/plant/plant_solution.h"
#include "staddle/scenario/scenario.h"
#include "staddle/vary/vary_solution.h"

// All that a report on one stand is made from, solved from its scenario: sentences,
// figures, spreadsheet and calendar take every number from here.
namespace staddle {

// One way to manage the stand, told year by year by the evaluator
// (report.cash_flow: expected money, undiscounted, an acre, at ages).
struct OwnerOption {
  std::string name;  // "the plan", "one thinning", "sell everything today"
  RegimeReport report;
  MoneyPerAcre loss_against_best;   // negative where a regime that breaks limits is worth more
  std::vector<BrokenLimit> breaks;  // of a plan that the owner states
};

struct StandAnswers {
  Scenario scenario;  // rate, delay, prices, costs, acres, present year
  Advice advice;      // land_value: of an acre after the harvest, standing
  // The case that prices them: land value filled in. Absent where regimes come from
  // tables of their own.
  std::optional<StandCase> stand_case;
  // The plan first, then every other way that the advice speaks of, then the owner's.
  std::vector<OwnerOption> options;
  // Absent where regimes come from tables of their own.
  std::optional<ValueByFinalAge> by_final_age;
  std::optional<ValueMap> first_thinning_map;  // absent also where no thinning is possible
  std::optional<HoldAnswer> hold;              // standing stands
  std::optional<VarySolution> vary;            // where the scenario has a vary block
  // Where the scenario names ways to start the next stand; absent where none has a regime.
  std::optional<PlantSolution> plant;
  std::vector<std::string> storm_zones;  // that a scenario may choose from
};

struct StandAnswersOptions {
  unsigned threads = 0;  // 0: all cores; changes no figure
  std::stop_token stop;
  Progress progress;  // may be empty
};

// Solves the scenario and every question of its report. Faults as advise() and vary().
// REQUIRES: a scenario that the reader accepted.
Result<StandAnswers> answer_stand(const Scenario& scenario,
                                  const std::vector<std::string>& storm_zones = {},
                                  const StandAnswersOptions& options = {});

}  // namespace staddle
