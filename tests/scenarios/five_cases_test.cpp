// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>

#include "scenarios/load_scenario.h"
#include "staddle/report/advice_report.h"

// Five stands whose right answer every forester knows: the advice must say it, in words.
namespace staddle {
namespace {

using Catch::Matchers::Contains;
using support::advise_on;
using support::load_scenario;

struct Case {
  Scenario scenario;
  Advice advice;

  explicit Case(const std::string& file) : Case(load_scenario(file)) {}
  explicit Case(const Scenario& asked) : scenario(asked), advice(advise_on(asked)) {}

  std::string line(int topic) const {
    for (const Line& line : advice_report(scenario, advice).lines) {
      if (line.topic == topic) return line.text;
    }
    return "";
  }
  const RiskNote& note(const std::string& topic) const {
    const auto found = std::ranges::find(advice.risk_notes, topic, &RiskNote::topic);
    REQUIRE(found != advice.risk_notes.end());
    return *found;
  }
  bool cuts_a_third(std::size_t index) const {
    const double share = advice.best.thinnings[index].removal_fraction;
    return share > 0.33 && share < 0.34;
  }
  double left(std::size_t index) const {
    return advice.best.thinnings[index].after.basal_area.in(square_feet_per_acre);
  }
  double value() const { return advice.best.value.objective.in(dollars_per_acre); }
};

bool between(double value, double low, double high) { return value >= low && value <= high; }

TEST_CASE("a ready stand is thinned by a third twice and cut before it is old") {
  const Case ready("juniper_creek.json");
  const RegimeReport& plan = ready.advice.best;
  REQUIRE(plan.thinnings.size() == 2);
  CHECK(between(plan.thinnings[0].at.whole(), 15, 18));
  CHECK(ready.cuts_a_third(0));
  CHECK(between(ready.left(0), 80, 95));
  CHECK(between(plan.thinnings[1].at.whole(), 20, 23));
  CHECK(between(ready.left(1), 70, 80));
  CHECK(between(plan.final_harvest_age.whole(), 31, 35));
}

TEST_CASE("a ready stand may be thinned this season when a good buyer is found") {
  const Case ready("juniper_creek.json");
  REQUIRE(ready.advice.near_best.first_thinning_low.has_value());
  CHECK(*ready.advice.near_best.first_thinning_low <= age(15));
  CHECK(between(ready.advice.waiting_earns->in(dollars_per_acre), 2.5, 7.5));
  CHECK_THAT(ready.line(2), Contains("Waiting two years") &&
                                Contains("earns about $5 an acre, so thin when a good buyer is "
                                         "found"));
}

TEST_CASE("a neglected stand is not thinned but sold within four years for its crowns") {
  const Case neglected("long_neglected.json");
  CHECK(neglected.advice.best.thinnings.empty());
  CHECK(neglected.advice.best.final_harvest_age <= age(32));
  CHECK_THAT(neglected.line(2), Contains("Do not thin") && Contains("sell") &&
                                    Contains("The crowns forbid a thinning") &&
                                    Contains("25 percent"));
  CHECK(neglected.note("crowns").level == RiskLevel::elevated);
}

// The stand of juniper_creek.json with the mean cut tree so much thinner than the stand.
Scenario marked(int hundredths) {
  Scenario scenario = load_scenario("juniper_creek.json");
  scenario.cut_diameter_ratios = {hundredths / 100.0};
  scenario.regimes = {stated("a third at 17 and 22, cut at 33",
                             {{{age(17), 1.0 / 3.0}, {age(22), 1.0 / 3.0}}, age(33)})};
  return scenario;
}

TEST_CASE("marking thinner trees is no way to earn") {
  double best_before = 0.0, fixed_before = 0.0, fixed_step_before = 0.0;
  for (int hundredths = 100; hundredths >= 85; --hundredths) {
    CAPTURE(hundredths);
    const Case stand(marked(hundredths));
    const double fixed = stand.advice.regimes[0].report.value.objective.in(dollars_per_acre);
    if (hundredths < 100) {
      CHECK(stand.value() < best_before);
      CHECK(stand.value() > best_before - 35.0);
      const double step = fixed_before - fixed;
      CHECK(step > 0.0);
      // Smooth: one step of one or two dozen dollars is much like the one before it.
      CHECK(step < 25.0);
      if (hundredths < 99) CHECK(between(step / fixed_step_before, 0.7, 1.4));
      fixed_step_before = step;
    }
    best_before = stand.value();
    fixed_before = fixed;
  }
}

TEST_CASE("where the rule of one ton shuts cuts the answer says so") {
  const auto says_so = [](int hundredths) {
    const Case stand(marked(hundredths));
    const std::vector<Section> sections = advice_report(stand.scenario, stand.advice).sections;
    const bool said = std::ranges::any_of(sections, [](const Section& section) {
      return std::ranges::any_of(section.items, [](const std::string& item) {
        return item.find("more than a ton per acre higher") != std::string::npos;
      });
    });
    CHECK(said == (stand.advice.first_cuts_shut_by_one_ton_rule > 0));
    return said;
  };
  CHECK(says_so(85));
  CHECK_FALSE(says_so(95));
}

TEST_CASE("ten acres of a poor site have no thinning sale and lose by replanting") {
  const Case small("small_tract.json");
  CHECK(small.advice.best.thinnings.empty());
  CHECK(between(small.advice.best.final_harvest_age.whole(), 31, 35));
  CHECK(*small.advice.successor_lev < dollars_per_acre(0));
  CHECK_THAT(small.line(6), Contains("replanting loses money"));
  CHECK_THAT(small.note("land value").text, Contains("Replanting after the harvest loses") &&
                                                Contains("Alternatives"));
}

TEST_CASE("eighteen acres of it wait for the age at which a sale is large enough") {
  const Case larger("small_tract_18_acres.json");
  CHECK(larger.advice.first_age_with_minimum_sale == age(23));
  REQUIRE_FALSE(larger.advice.best.thinnings.empty());
  CHECK(larger.advice.best.thinnings[0].at >= age(23));
  CHECK_THAT(larger.line(2), Contains("Cut nothing this season") && Contains("500 tons") &&
                                 Contains("at age 23"));
}

TEST_CASE("a dense stand may be opened by half with two lighter cuts shown beside") {
  const Case dense("dense_stand.json");
  REQUIRE_FALSE(dense.advice.best.thinnings.empty());
  CHECK(dense.advice.best.thinnings[0].at == age(16));
  CHECK(dense.advice.best.thinnings[0].removal_fraction == 0.5);
  REQUIRE(dense.advice.third_instead.has_value());
  const Regime& lighter = dense.advice.third_instead->best.regime;
  REQUIRE(lighter.thinnings.size() == 2);
  CHECK(lighter.thinnings[0].at == age(16));
  CHECK(lighter.thinnings[1].at == age(21));
  CHECK(between(dense.advice.third_instead->cost.in(dollars_per_acre), 37.5, 42.5));
  CHECK_THAT(dense.line(2), Contains("a third in 2027 and a third in 2032") &&
                                Contains("about $40 an acre"));
}

TEST_CASE("the storm note of a dense stand names the lighter cuts as the remedy") {
  const Case dense("dense_stand.json");
  CHECK(dense.note("storm").level >= RiskLevel::elevated);
  CHECK_THAT(dense.note("storm").text,
             Contains("remedy is two lighter thinnings") && Contains("ages 16 and 21"));
}

}  // namespace
}  // namespace staddle
