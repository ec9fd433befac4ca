// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/storm_text.h"

#include <catch2/catch.hpp>
#include <sstream>

#include "support/text.h"

namespace staddle {
namespace {

using support::says;

Scenario scenario_of_fire() {
  Scenario scenario;
  scenario.title = "Cane Ridge";
  scenario.hazard.zone = "own";
  Peril fire;
  fire.name = "fire";
  fire.annual_probability = 0.0125;
  fire.constant_share = 1.0;
  scenario.hazard.perils = {fire};
  return scenario;
}

StormForecast forecast() {
  StormForecast forecast;
  forecast.asked.futures = 20'000;
  RegimeFutures futures;
  futures.expected_value = dollars_per_acre(811);
  futures.mean = dollars_per_acre(809);
  futures.standard_error = dollars_per_acre(1);
  futures.difference_in_standard_errors = -2.0;
  futures.quantiles = {dollars_per_acre(-40), dollars_per_acre(500), dollars_per_acre(900),
                       dollars_per_acre(900), dollars_per_acre(900)};
  futures.chance_half_lost = 0.21;
  futures.worst_event = {age(29), "fire", dollars_per_acre(1234)};
  futures.annual_loss = {{age(1), 0.0125, 0.0125}, {age(2), 0.0125, 0.0125}};
  StormForecast::Told told;
  told.name = "best";
  told.plan.regime.thinnings.push_back({age(15), 0.5});
  told.plan.regime.final_harvest = age(29);
  told.futures = futures;
  forecast.regimes.push_back(told);
  return forecast;
}

}  // namespace

TEST_CASE("the text of the futures says what the best plan is worth in bad luck and good") {
  StormForecast told = forecast();
  const std::string text = storm_text(scenario_of_fire(), told);
  CHECK(says(text,
             "Own perils. Chance that a storm strikes the stand in any one year "
             "(assumptions): fire: 1.25 percent."));
  CHECK(says(text, "20,000 futures were drawn (seed 1)"));
  CHECK(says(text, "The best plan is half at age 15, final harvest at age 29."));
  CHECK(says(text,
             "One future in twenty brings -$40 an acre or less, one in four $500 or less; "
             "half of them bring $900 or more, but hardly any more."));
  CHECK(says(text, "In 21 percent of the futures storms take at least half of the stand"));
  CHECK(says(text, "fire at age 29: it costs $1,235 an acre"));
  CHECK(
      says(text, "Every year 1.25 percent of the acres standing are to be lost, thinned or not."));
  told.regimes[0].futures.quantiles.p95 = dollars_per_acre(950);
  CHECK(says(storm_text(scenario_of_fire(), told), "one in twenty $950 or more."));
}

TEST_CASE("the text of the futures says whether they agree with the expected values") {
  StormForecast told = forecast();
  CHECK(says(storm_text(scenario_of_fire(), told), "They do"));
  told.regimes[0].futures.difference_in_standard_errors = -3.01;
  CHECK(says(storm_text(scenario_of_fire(), told), "try another seed or more futures"));
  told.regimes[0].futures.difference_in_standard_errors.reset();
  CHECK(says(storm_text(scenario_of_fire(), told), "They do"));
}

TEST_CASE("the text of the futures says what the choice to clear brings") {
  StormForecast told = forecast();
  told.asked.choices = true;
  auto& choices = told.regimes[0].futures.choices;
  choices = ChoicesOutcome{dollars_per_acre(859), dollars_per_acre(1), 0.07};
  CHECK(says(storm_text(scenario_of_fire(), told),
             "$860 an acre on average, $50 more; the stand is cleared in 7 percent of them."));
  choices->mean = dollars_per_acre(759);
  CHECK(says(storm_text(scenario_of_fire(), told), "$50 less;"));
  choices->mean = dollars_per_acre(808);
  CHECK(says(storm_text(scenario_of_fire(), told), "on average, about the same;"));
}

TEST_CASE("the text of the futures says when no storm can strike") {
  StormForecast told = forecast();
  told.regimes[0].futures.annual_loss.clear();
  told.regimes[0].futures.worst_event.reset();
  const std::string text = storm_text(scenario_of_fire(), told);
  CHECK(says(text, "No storm of any future destroyed anything."));
  CHECK(says(text, "sells everything now: no storm can strike it."));
}

TEST_CASE("the text of the futures keeps to its width and ends no line in blanks") {
  std::istringstream lines(storm_text(scenario_of_fire(), forecast()));
  for (std::string line; std::getline(lines, line);) {
    CAPTURE(line);
    CHECK(line.size() <= 100);
    CHECK((line.empty() || line.back() != ' '));
  }
}

}  // namespace staddle
