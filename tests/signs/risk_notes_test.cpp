// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/signs/risk_notes.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "signs/stand_by_hand.h"
#include "staddle/base/contract.h"

namespace staddle {
namespace {

using by_hand::cut;
using by_hand::measures;
using Catch::Matchers::Contains;

// 50 ft and 7 in: 86 times as tall as thick.
const StandMeasures sturdy = measures(500, 75, 7, 50, 0.40);

struct Facts {
  StandCase stand_case = by_hand::stand_case();
  RegimeReport plan;
  RiskFacts facts;

  explicit Facts(RegimeReport report) : plan(std::move(report)) {}
  std::vector<RiskNote> notes() {
    facts.stand_case = &stand_case;
    facts.plan = &plan;
    return risk_notes(facts);
  }
  std::optional<RiskNote> note(const std::string& topic) {
    const std::vector<RiskNote> all = notes();
    const auto found = std::ranges::find(all, topic, &RiskNote::topic);
    if (found == all.end()) return std::nullopt;
    return *found;
  }
};

Facts with_cut(double removal, const StandMeasures& before) {
  return Facts(by_hand::plan(15, 30, {cut(16, removal, before)}, sturdy));
}

double points(Facts facts) { return facts.note("storm")->figures.front().second; }

TEST_CASE("storm points count each limit only when it is exceeded") {
  CHECK(points(with_cut(1.0 / 3.0, sturdy)) == 0);
  CHECK(points(with_cut(0.34, sturdy)) == 1);
  CHECK(points(with_cut(0.3, measures(500, 75, 9, 60))) == 0);
  CHECK(points(with_cut(0.3, measures(500, 75, 9, 60.1))) == 1);
  // 12 x 57 / 7.2 = 95, 12 x 56 / 6.4 = 105
  CHECK(points(with_cut(0.3, measures(500, 75, 7.2, 57))) == 0);
  CHECK(points(with_cut(0.3, measures(500, 75, 7.19, 57))) == 1);
  CHECK(points(with_cut(0.3, measures(500, 75, 6.4, 56))) == 1);
  CHECK(points(with_cut(0.3, measures(500, 75, 6.39, 56))) == 2);
}

TEST_CASE("hurricanes above two percent a year count one point") {
  Facts facts = with_cut(0.3, sturdy);
  facts.stand_case.hazard = by_hand::hazard();
  facts.stand_case.hazard.perils[0].annual_probability = 0.02;
  CHECK(points(facts) == 0);
  facts.stand_case.hazard.perils[0].annual_probability = 0.0201;
  CHECK(points(facts) == 1);
  facts.stand_case.hazard.perils[0].hurricane = false;
  CHECK(points(facts) == 0);
}

TEST_CASE("levels of the storm note go by its points") {
  const auto level = [](Facts facts) { return facts.note("storm")->level; };
  CHECK(level(with_cut(0.3, sturdy)) == RiskLevel::low);
  CHECK(level(with_cut(0.5, sturdy)) == RiskLevel::low);                         // 1
  CHECK(level(with_cut(0.5, measures(500, 75, 7, 57))) == RiskLevel::elevated);  // 2
  CHECK(level(with_cut(0.5, measures(500, 75, 6, 57))) == RiskLevel::elevated);  // 3
  CHECK(level(with_cut(0.5, measures(500, 75, 6, 61))) == RiskLevel::high);      // 4
}

TEST_CASE("the worst thinning makes the storm note") {
  Facts facts(by_hand::plan(15, 30, {cut(16, 0.3, measures(500, 75, 6, 61)),
                                     cut(22, 0.5, sturdy)}, sturdy));
  CHECK(points(facts) == 3);
  // A stated thinning that finds nothing to cut opens nothing.
  facts.plan.thinnings[0].cuts_nothing = true;
  CHECK(points(facts) == 1);
}

TEST_CASE("without a storm zone a heavy cut is cautioned all the same") {
  Facts facts = with_cut(0.5, measures(850, 185, 6.3, 51));
  facts.facts.plan_of_thirds = Regime{{{age(16), 1.0 / 3.0}, {age(21), 1.0 / 3.0}}, age(34)};
  facts.facts.cost_of_a_third = dollars_per_acre(41.3);
  const RiskNote storm = *facts.note("storm");
  CHECK(storm.level == RiskLevel::elevated);
  CHECK_THAT(storm.text, Contains("No storm zone was chosen, so storms are not in these figures"));
  CHECK_THAT(storm.text, Contains("takes half of the basal area"));
  CHECK_THAT(storm.text, Contains("two lighter thinnings"));
  CHECK_THAT(storm.text, Contains("at ages 16 and 21 would cost about $40 an acre"));
  CHECK_FALSE(Catch::Matchers::Contains("save").match(storm.text));
  CHECK(facts.note("heavy removal")->level == RiskLevel::elevated);
  CHECK_FALSE(with_cut(1.0 / 3.0, sturdy).note("heavy removal").has_value());
}

TEST_CASE("with a zone the note names chances and damage and the worst event") {
  StandCase stand_case = by_hand::stand_case();
  stand_case.hazard = by_hand::hazard();
  Facts facts(*simulate(stand_case, stated("plan", {{{age(18), 0.5}}, age(35)})));
  facts.stand_case = stand_case;
  facts.facts.plan_of_thirds = Regime{{{age(18), 1.0 / 3.0}}, age(35)};
  facts.facts.cost_of_a_third = dollars_per_acre(20);
  facts.facts.loss_saved_by_a_third = dollars_per_acre(30);
  const RiskNote storm = *facts.note("storm");
  const std::string& text = storm.text;
  CHECK_THAT(text, Contains("Storm zone coast"));
  CHECK_THAT(text, Contains("moderate hurricane 2.5 percent"));
  CHECK_THAT(text, Contains("without the opening"));
  CHECK_THAT(text, Contains("the worst single event is fire"));
  CHECK_THAT(text, Contains("assumptions"));
  CHECK_THAT(text, Contains("would cost about $20 an acre and save about $30 an acre"));
  CHECK_FALSE(Contains("will be hit").match(text));
  for (const auto& [name, value] : storm.figures) {
    CAPTURE(name, value);
    CHECK(std::isfinite(value));
  }
}

TEST_CASE("short crowns are noted at a thinning and in a stand of today") {
  const auto level = [](double crown) -> std::optional<RiskLevel> {
    const auto note = with_cut(0.3, measures(500, 75, 7, 50, crown)).note("crowns");
    return note ? std::optional(note->level) : std::nullopt;
  };
  CHECK_FALSE(level(0.30).has_value());
  CHECK(level(0.299) == RiskLevel::high);

  Facts uncut(by_hand::plan(28, 30, {}, measures(420, 168, 8.6, 74, 0.25)));
  CHECK_FALSE(uncut.note("crowns").has_value());  // bare land: no crown to look at today
  uncut.stand_case.standing = by_hand::measured_at(28);
  CHECK(uncut.note("crowns")->level == RiskLevel::elevated);
  CHECK_THAT(uncut.note("crowns")->text, Contains("25 percent"));
}

TEST_CASE("crowded unthinned stands carry the bark beetle note") {
  const auto level = [](double basal_area) -> std::optional<RiskLevel> {
    Facts facts(by_hand::plan(15, 30, {}, measures(500, basal_area, 7, 50)));
    const auto note = facts.note("bark beetle");
    return note ? std::optional(note->level) : std::nullopt;
  };
  CHECK_FALSE(level(79.9).has_value());
  CHECK(level(80) == RiskLevel::elevated);
  CHECK(level(120) == RiskLevel::elevated);
  CHECK(level(120.1) == RiskLevel::high);
}

TEST_CASE("a stand that was thinned is not called crowded at a hundred square feet") {
  Facts facts(by_hand::plan(18, 30, {}, measures(300, 100, 7.8, 55)));
  facts.stand_case.standing = by_hand::measured_at(18);
  CHECK(facts.note("bark beetle").has_value());
  facts.stand_case.standing->last_thinning = LastThinning{age(15), 0.33};
  CHECK_FALSE(facts.note("bark beetle").has_value());
}

TEST_CASE("root disease is conditional where the soil is unknown") {
  Facts facts = with_cut(0.3, sturdy);
  CHECK(facts.note("root disease")->level == RiskLevel::low);
  CHECK_THAT(facts.note("root disease")->text, Contains("If the topsoil is deep sand"));
  facts.facts.site.soil = SiteFacts::Soil::sand;
  CHECK(facts.note("root disease")->level == RiskLevel::elevated);
  facts.facts.site.drainage = SiteFacts::Drainage::dry;
  CHECK(facts.note("root disease")->level == RiskLevel::high);
  facts.facts.site.month_of_cut = 2;
  CHECK_THAT(facts.note("root disease")->text, Contains("is not within that time"));
  facts.facts.site.month_of_cut = 8;
  CHECK_THAT(facts.note("root disease")->text, Contains("cut is within that time"));
  facts.facts.site.soil = SiteFacts::Soil::clay;
  CHECK_FALSE(facts.note("root disease").has_value());
  Facts uncut(by_hand::plan(15, 30, {}, sturdy));
  CHECK_FALSE(uncut.note("root disease").has_value());
}

TEST_CASE("long rotations and very dense stands are noted beyond their limits") {
  const auto has = [](const std::string& topic, int final_yr, double basal_area) {
    Facts facts(by_hand::plan(15, final_yr, {}, measures(500, basal_area, 7, 50)));
    return facts.note(topic).has_value();
  };
  CHECK_FALSE(has("long rotation", 35, 100));
  CHECK(has("long rotation", 36, 100));
  CHECK_FALSE(has("density", 30, 200));
  CHECK(has("density", 30, 200.1));
}

TEST_CASE("land that loses money is said to lose it and alternatives are named") {
  Facts facts(by_hand::plan(15, 30, {}, sturdy));
  CHECK_FALSE(facts.note("land value").has_value());
  facts.facts.successor_lev = dollars_per_acre(0);
  CHECK_FALSE(facts.note("land value").has_value());
  facts.facts.successor_lev = dollars_per_acre(-151);
  facts.stand_case.standing = by_hand::measured_at(15);
  CHECK_THAT(facts.note("land value")->text, Contains("Replanting after the harvest loses"));
  CHECK_THAT(facts.note("land value")->text, Contains("$150 an acre"));
  CHECK_THAT(facts.note("land value")->text, Contains("natural regeneration"));
}

TEST_CASE("the gravest note comes first") {
  Facts facts(by_hand::plan(15, 36, {cut(16, 0.5, measures(500, 130, 6, 61, 0.25))},
                            measures(500, 130, 6, 61, 0.25)));
  const std::vector<RiskNote> notes = facts.notes();
  CHECK(notes.front().topic == "storm");
  CHECK(std::ranges::is_sorted(notes, std::ranges::greater(), &RiskNote::level));
  CHECK(notes.back().topic == "root disease");
}

TEST_CASE("notes without a plan break the promise") {
  CHECK_THROWS_AS(risk_notes({}), ContractViolation);
}

}  // namespace
}  // namespace staddle
