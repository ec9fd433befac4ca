// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/vary_text.h"

#include <catch2/catch.hpp>
#include <sstream>

#include "report/tract_by_hand.h"
#include "staddle/report/text.h"
#include "staddle/scenario/vary_question.h"
#include "staddle/vary/vary.h"
#include "support/text.h"

namespace staddle {
namespace {

using support::says;

Scenario varied() {
  Scenario scenario = by_hand::tract();
  scenario.regimes = {{"early cash", {}, age(20)}};
  VaryQuestion question;
  question.rates = {DiscountRate::real(0.03), scenario.costs.rate};
  question.price_scenarios = {{"dear pulp", {scenario.prices[0].stumpage, dollars_per_ton(20)}}};
  const std::vector<Parameter> parameters = parameters_of({"sawtimber", "pulpwood"});
  question.one_at_a_time = {{parameters[0], -0.2, 0.25}};
  question.grid = GridQuestion{{parameters[1], {0, 0.5}}, {parameters[4], {0.03, 0.06}}};
  scenario.vary = question;
  return scenario;
}

// Blanks and line ends in a row stand for one blank.
}  // namespace

TEST_CASE("the text of vary opens with the plan that is never far from the best") {
  const Scenario scenario = varied();
  const VarySolution solution = vary(make_vary_problem(scenario)).value();
  const std::string text = vary_text(scenario, solution);
  CHECK(says(text, "As things are the best plan is"));
  CHECK(says(text, "Never far from the best: "));
  CHECK(says(text, "Over all 4 cases it is never more than"));
  CHECK(text.find("Never far") < text.find("Rates and prices"));
  CHECK(says(text, "price of sawtimber -20.00 percent +25.00 percent"));
  CHECK(says(text, "price of pulpwood across, discount rate down"));
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) CHECK(line.size() <= text_width);
}

TEST_CASE("every break-even stands in the text with its value or the range without one") {
  const Scenario scenario = varied();
  VarySolution solution = vary(make_vary_problem(scenario)).value();
  const std::array<double, 2> range{0.0001, 0.5};
  solution.break_evens = {
      {"it turns", "real_discount_rate", "per year", 0.0625, {{0.0625, 0.0626}}, range, ""},
      {"it turns", "pulpwood", "$/ton", {}, {}, {0, 90}, "none in range: from 0 to 90 $/ton"},
      {"it turns", "establishment_usd_ac", "$/ac", 1234.5, {{1234.5, 1234.51}}, {0, 1e5}, ""}};
  const std::string text = vary_text(scenario, solution);
  CHECK(says(text, "6.25 percent"));
  CHECK(says(text, "none from $0.00 a ton to $90.00 a ton"));
  CHECK(says(text, "$1,234.50 an acre"));
}

TEST_CASE("a plan above the best in every case is said to break the limits") {
  const Scenario scenario = varied();
  VarySolution solution = vary(make_vary_problem(scenario)).value();
  solution.regimes[1].worst = dollars_per_acre(-30);
  solution.least_worst_loss = 1;
  CHECK(says(vary_text(scenario, solution),
             "Above the best in all 4 cases, because it breaks the limits asked for: early cash"));
}

TEST_CASE("without a plan the text of vary gives the reason") {
  Scenario scenario = varied();
  VarySolution solution = vary(make_vary_problem(scenario)).value();
  solution.base.best.reset();
  solution.base.reason = "no age is left";
  CHECK(says(vary_text(scenario, solution), "No plan is left: no age is left."));
}

}  // namespace staddle
