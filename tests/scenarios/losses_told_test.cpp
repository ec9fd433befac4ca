// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>

#include "scenarios/load_scenario.h"
#include "signs/plain_words.h"
#include "staddle/report/advice_report.h"
#include "staddle/report/text.h"

namespace staddle::support {
namespace {

using Catch::Matchers::Contains;

struct Told {
  explicit Told(const Scenario& scenario)
      : advice(advise_on(scenario)), report(advice_report(scenario, advice, {"coast", "none"})) {}

  std::string line(int topic) const {
    const auto found = std::ranges::find(report.lines, topic, &Line::topic);
    REQUIRE(found != report.lines.end());
    return found->text;
  }

  Advice advice;
  Report report;
};

// A stand past its best that the owner will not sell before 35 years.
Scenario held_too_long() {
  Scenario scenario = load_scenario("juniper_creek.json");
  MeasuredStand& stand = *scenario.stand.standing;
  stand.at = age(30);
  stand.trees = trees_per_acre(300);
  stand.basal_area = square_feet_per_acre(165);
  stand.live_crown_ratio = std::nullopt;
  scenario.regimes.clear();
  scenario.lattice.final_from = age(35);
  return scenario;
}

TEST_CASE("a plan that is worth less than selling today is told as a loss and why it stands") {
  const Told told(held_too_long());
  REQUIRE(told.advice.advantage < dollars_per_acre(0));
  CHECK_THAT(told.line(8), Contains("less than selling everything today") &&
                               Contains("35 years, rules out"));
  CHECK_THAT(told.line(2), Contains("you allow a final harvest at 35 years at the earliest"));
}

TEST_CASE("waiting that gains beyond the ages allowed is not told as nothing lost") {
  Scenario scenario = load_scenario("juniper_creek.json");
  scenario.regimes.clear();
  scenario.lattice.final_from = scenario.lattice.final_to = age(15);
  const Told told(scenario);
  REQUIRE(told.advice.wait_five->loss_against_best < dollars_per_acre(0));
  CHECK_THAT(told.line(7), Contains("is gained by a final harvest") &&
                               Contains("beyond the last age that you allow") &&
                               !Contains("nothing is lost"));
  CHECK_THAT(told.line(8), Contains("No other plan within the ages that you allow"));
}

TEST_CASE("land that costs more than it is sold for is told as a burden") {
  Scenario scenario = load_scenario("juniper_creek.json");
  scenario.costs.annual_cost = dollars_per_acre(50);
  scenario.after_harvest = {AfterHarvest::Kind::land_price, dollars_per_acre(0)};
  const Told told(scenario);
  REQUIRE(told.advice.sell_today->land < dollars_per_acre(0));
  CHECK_THAT(told.line(6), Contains("would be a burden of") && !Contains("is worth"));
}

TEST_CASE("a kept plan that earns more because it breaks a limit is told with that limit") {
  Scenario scenario = load_scenario("small_tract_18_acres.json");
  scenario.area = acres(16);
  const Told told(scenario);
  const auto better = std::ranges::find_if(told.advice.survives, [](const Survival& survival) {
    return survival.kept_plan_loss < dollars_per_acre(0);
  });
  REQUIRE(better != told.advice.survives.end());
  REQUIRE(better->kept_plan_breaks.size() == 1);
  CHECK(better->kept_plan_breaks.front().limit == "min_sale_tons");
  CHECK_THAT(told.line(9), Contains("would then break your limits (tons of a sale") &&
                               Contains("be worth " + words::size_of(better->kept_plan_loss) +
                                        " an acre more"));
}

TEST_CASE("with storms the figures of the tract are those of the acres that stand") {
  const Scenario scenario = load_scenario("near_the_coast.json");
  const Told told(scenario);
  const HarvestRecord& harvest = told.advice.best.final_harvest;
  REQUIRE(harvest.share_standing < 0.9);
  const std::string of_tract =
      words::size_of(harvest.share_standing * harvest.revenue * scenario.area);
  CHECK_THAT(told.line(5), Contains("(" + of_tract + " for the tract)") &&
                               Contains("of the acres that storms leave on average"));
  // In the opening lines, and in the table of what the plan yields.
  const std::string text = text_answer(scenario, told.advice);
  const std::size_t first = text.find(of_tract.substr(1));
  REQUIRE(first != std::string::npos);
  CHECK(text.find(of_tract.substr(1), first + 1) != std::string::npos);
}

TEST_CASE("where nothing can be earned no reason of earnings is given for waiting") {
  Scenario scenario = load_scenario("juniper_creek.json");
  scenario.regimes.clear();
  for (ProductPrice& price : scenario.prices) price.stumpage = dollars_per_ton(0);
  CHECK_THAT(Told(scenario).line(2), Contains("at these prices no sale earns anything") &&
                                         !Contains("earns more than"));
}

TEST_CASE("a stand that was thinned before has a next thinning and no first one") {
  Scenario scenario = load_scenario("juniper_creek.json");
  scenario.regimes.clear();
  scenario.stand.standing->last_thinning = LastThinning{age(10), 0.3};
  const Told told(scenario);
  REQUIRE(told.advice.near_best.first_thinning_low.has_value());
  CHECK_THAT(told.line(8), Contains("the next thinning") && !Contains("first thinning"));
}

}  // namespace
}  // namespace staddle::support
