// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>
#include <nlohmann/json.hpp>

#include "staddle/io/scenario_reader.h"
#include "staddle/optimise/solve.h"
#include "staddle/scenario/problems.h"
#include "support/files.h"
#include "support/near.h"

// Sixty scenarios on which three independent implementations of the same equations and
// conventions agree; between them they notice each rule of growth, money, limits and
// storms. Where a land price is used the expected LEV* is given all the same.
namespace staddle {
namespace {

using nlohmann::json;

// Dollars per acre: two implementations of one lattice optimum.
constexpr double same_optimum = 0.01;
// Relative, with a floor of one dollar: two implementations of one regime.
constexpr double same_regime = 1e-6;

Result<std::string> load_nothing(const std::string& name) {
  return Faults{{FaultCode::unreadable, name, "", "no file is read here", ""}};
}

struct Solved {
  ScenarioProblems problems;
  std::optional<StandSolution> successor;
  StandSolution stand;
  double lev() const {
    return (successor ? *successor : stand).best.value.objective.in(dollars_per_acre);
  }
};

Solved solve_case(const Scenario& scenario, StandOptions options) {
  Solved solved{make_problems(scenario), std::nullopt, {}};
  if (solved.problems.successor) {
    solved.successor = solve(*solved.problems.successor, options);
    solved.problems.stand.stand_case.land_value =
        land_value_after(scenario.after_harvest, solved.successor->best.value.objective);
  }
  solved.stand = solve(solved.problems.stand, options);
  return solved;
}

void check_stated(const json& expected, const Scenario& scenario, const Solved& solved) {
  const auto report = simulate(solved.problems.stand.stand_case, scenario.regimes.at(0));
  REQUIRE(report.has_value());
  const double value = report->value.objective.in(dollars_per_acre);
  const double wanted = expected.at("stated_usd_ac").get<double>();
  CHECK(value == support::within(wanted, same_regime * std::max(1.0, std::fabs(wanted))));
  CHECK(
      solved.lev() ==
      support::within(expected.at("best_without_thinning_lev_usd_ac").get<double>(), same_optimum));
}

void check_best(const json& expected, const Solved& solved) {
  const Regime& best = solved.stand.best.regime;
  CHECK(solved.stand.best.value.objective.in(dollars_per_acre) ==
        support::within(expected.at("best_usd_ac").get<double>(), same_optimum));
  CHECK(solved.lev() == support::within(expected.at("lev_usd_ac").get<double>(), same_optimum));
  CHECK(best.final_harvest.whole() == expected.at("final_harvest_age_yr").get<int>());
  const json& thinnings = expected.at("thinnings");
  REQUIRE(best.thinnings.size() == thinnings.size());
  for (std::size_t i = 0; i < thinnings.size(); ++i) {
    CHECK(best.thinnings[i].at.whole() == thinnings[i].at("age_yr").get<int>());
    CHECK(best.thinnings[i].removal_fraction ==
          support::within(thinnings[i].at("removal_fraction").get<double>(), 1e-9));
  }
}

TEST_CASE("sixty reference scenarios give the values of three other implementations") {
  const json cases = json::parse(support::read_file(support::in_source_tree(
                                     "tests/published/data/reference_regimes.json")))
                         .at("cases");
  REQUIRE(cases.size() == 60);
  for (const json& one : cases) {
    const std::string title = one.at("scenario").at("title").get<std::string>();
    INFO(title << ", noticed by: " << one.at("purpose").get<std::string>());
    const auto scenario = read_scenario(one.at("scenario").dump(), title, load_nothing);
    if (!scenario) FAIL_CHECK(to_line(scenario.error().front()));
    if (!scenario) continue;
    StandOptions options;
    options.method = StandOptions::Method::exhaustive;
    const Solved solved = solve_case(*scenario, options);
    const json& expected = one.at("expect");
    if (expected.contains("stated_usd_ac")) {
      check_stated(expected, *scenario, solved);
    } else {
      check_best(expected, solved);
    }
  }
}

}  // namespace
}  // namespace staddle
