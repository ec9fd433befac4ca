// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/base/contract.h"
#include "staddle/scenario/problems.h"
#include "staddle/scenario/tract_file.h"

namespace staddle {
namespace {

LandAfterHarvest land_after(const AfterHarvest& after_harvest) {
  using Kind = LandAfterHarvest::Kind;
  switch (after_harvest.kind) {
    case AfterHarvest::Kind::replant:
      return {Kind::replant, {}};
    case AfterHarvest::Kind::best:
      return {Kind::replant_if_worthwhile, {}};
    case AfterHarvest::Kind::land_price:
      return {Kind::land_price, after_harvest.land_price};
  }
  throw ContractViolation("make_tract_problem knows every kind of what follows the harvest");
}

}  // namespace

TractProblem make_tract_problem(const TractFile& tract) {
  TractProblem problem;
  problem.plan = tract.plan;
  if (tract.present_year) problem.calendar_year = tract.present_year->whole();
  for (const TractFileStand& stand : tract.stands) {
    ScenarioProblems problems = make_problems(stand.scenario);
    problem.stands.push_back({stand.scenario.title, stand.group, std::move(problems.stand),
                              std::move(problems.successor),
                              land_after(stand.scenario.after_harvest)});
  }
  return problem;
}

}  // namespace staddle
