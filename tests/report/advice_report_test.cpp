// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/advice_report.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>

#include "report/tract_by_hand.h"
#include "report/wrap.h"
#include "staddle/report/text.h"
#include "staddle/signs/cautions.h"
#include "support/near.h"

namespace staddle {
namespace {

using Catch::Matchers::Contains;

struct Told {
  Scenario scenario;
  Advice advice;
  Report report;

  explicit Told(const Scenario& asked) : scenario(asked), advice(by_hand::advice_for(asked)) {
    tell();
  }
  void tell() { report = advice_report(scenario, advice, {"coast", "inland", "none"}); }
  std::string line(int topic) const {
    const auto found = std::ranges::find(report.lines, topic, &Line::topic);
    return found == report.lines.end() ? "" : found->text;
  }
  std::vector<int> topics() const {
    std::vector<int> result;
    for (const Line& line : report.lines) result.push_back(line.topic);
    return result;
  }
  const Section& section(const std::string& title) const {
    const auto found = std::ranges::find(report.sections, title, &Section::title);
    REQUIRE(found != report.sections.end());
    return *found;
  }
};

Scenario in_2027(Scenario scenario) {
  scenario.present_year = calendar_year(2027);
  return scenario;
}

TEST_CASE("a standing stand is answered in twelve lines and bare land in ten") {
  CHECK(Told(by_hand::tract(18)).topics() ==
        std::vector<int>{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12});
  CHECK(Told(by_hand::tract()).topics() == std::vector<int>{1, 2, 3, 4, 5, 8, 9, 10, 11, 12});
}

TEST_CASE("no line of the text is wider than a hundred letters") {
  Scenario stormy = in_2027(by_hand::tract(18));
  stormy.hazard = by_hand::hazard();
  for (const Scenario& scenario : {by_hand::tract(), in_2027(by_hand::tract(18)), stormy}) {
    std::istringstream text(text_answer(scenario, by_hand::advice_for(scenario)));
    for (std::string line; std::getline(text, line);) {
      CAPTURE(line);
      CHECK(width_of(line) <= text_width);
      CHECK_FALSE(line.ends_with(' '));
    }
  }
}

TEST_CASE("years are named where the present one is given and ages where not") {
  CHECK_THAT(Told(in_2027(by_hand::tract(18))).line(5), Contains("in 20"));
  CHECK_THAT(Told(by_hand::tract(18)).line(5), Contains("at age") && !Contains("in 20"));
}

// A stand that the plan thins in its present year.
Told thinned_now() {
  Scenario scenario = in_2027(by_hand::tract(24));
  scenario.lattice.guards = {};
  scenario.lattice.final_from = age(30);
  scenario.lattice.thinning_to = age(24);
  scenario.lattice.max_thinnings = 1;
  scenario.lattice.removal_fractions = {1.0 / 3.0};
  Told told(scenario);
  told.advice.best = simulate(make_advise_problem(scenario)->stand.stand_case,
                              stated("best", {{{age(24), 1.0 / 3.0}}, age(34)})).value();
  told.advice.best_plan.regime = told.advice.best.regime();
  told.tell();
  return told;
}

TEST_CASE("a thinning of this season says what to leave and how to count it") {
  const Told told = thinned_now();
  const double left = told.advice.best.thinnings[0].after.basal_area.in(square_feet_per_acre);
  CHECK(left == support::relative(72.0, 1e-9));  // two thirds of 108
  CHECK_THAT(told.line(2), Contains("Thin this season: leave 72 square feet of basal area"));
  CHECK_THAT(told.line(2), Contains("leaves 7.2 \"in\" trees"));
  CHECK_THAT(told.line(2), Contains("every fifth row"));
  CHECK_THAT(told.line(3), Contains("truckloads of 25 tons"));
}

TEST_CASE("a stand that was thinned before loses no more rows") {
  Told told = thinned_now();
  told.scenario.stand.standing->last_thinning = LastThinning{age(15), 0.3};
  told.tell();
  CHECK_THAT(told.line(2), Contains("take no rows") && !Contains("every fifth row"));
}

TEST_CASE("a due thinning that may wait is left to the first good buyer") {
  Told told = thinned_now();
  told.advice.best.thinnings[0].at = age(26);
  told.advice.best_plan.regime = told.advice.best.regime();
  told.advice.readiness.judgement = SignVerdict::due;
  told.advice.waiting_earns = dollars_per_acre(5.2);
  told.advice.near_best.first_thinning_low = age(24);
  told.advice.near_best.first_thinning_high = age(27);
  told.tell();
  CHECK_THAT(told.line(2), Contains("Waiting two years, to 2029, earns about $5 an acre, so thin "
                                    "when a good buyer is found"));
  SECTION("and no longer where waiting is worth more than the tolerance") {
    told.advice.near_best.first_thinning_low = age(25);
    told.tell();
    CHECK_THAT(told.line(2), Contains("Cut nothing this season; look again in 2029") &&
                                 Contains("the signs call for a thinning, but waiting two years "
                                          "earns about $5 an acre"));
    CHECK_THAT(told.line(3), Contains("no timber and no income"));
  }
}

TEST_CASE("a sale too small for a buyer is put off to the year in which it is large enough") {
  Told told = thinned_now();
  told.advice.best.thinnings[0].at = age(27);
  told.advice.best_plan.regime = told.advice.best.regime();
  told.advice.first_age_with_minimum_sale = age(27);
  told.scenario.lattice.min_sale = tons(500);
  told.tell();
  CHECK_THAT(told.line(2), Contains("brings the 500 tons that you ask of a sale") &&
                               Contains("first there in 2030, at age 27"));
}

TEST_CASE("short crowns are the reason where a stand is only to be sold") {
  Told told(in_2027(by_hand::tract(28)));
  told.advice.best = simulate(make_advise_problem(told.scenario)->stand.stand_case,
                              stated("best", {{}, age(30)})).value();
  told.advice.best.years.front().measures.live_crown_ratio = 0.25;
  told.advice.best_plan.regime = told.advice.best.regime();
  told.advice.readiness.judgement = SignVerdict::late;
  told.advice.near_best.final_harvest_low = age(28);
  told.tell();
  CHECK_THAT(told.line(2), Contains("Do not thin; sell the whole stand within two years") &&
                               Contains("crowns forbid a thinning") && Contains("25 percent"));
}

TEST_CASE("land that loses money is said to lose it when all is sold today") {
  Told told(by_hand::tract(18));
  told.advice.successor_lev = dollars_per_acre(-150);
  told.advice.sell_today->land = dollars_per_acre(-143);
  told.tell();
  CHECK_THAT(told.line(6), Contains("burden of $145 an acre") && Contains("replanting loses"));
  told.scenario.after_harvest.kind = AfterHarvest::Kind::best;
  told.advice.sell_today->land = dollars_per_acre(0);
  told.tell();
  CHECK_THAT(told.line(6), Contains("replanting would lose $150 an acre"));
}

TEST_CASE("two lighter cuts stand beside a heavy one on the first screen") {
  Told told = thinned_now();
  ThirdInstead lighter;
  lighter.best.regime = {{{age(24), 1.0 / 3.0}, {age(29), 1.0 / 3.0}}, age(36)};
  lighter.cost = dollars_per_acre(41);
  told.advice.third_instead = lighter;
  told.tell();
  CHECK_THAT(told.line(2), Contains("two cuts of at most a third: a third in 2027 and a third in "
                                    "2032") && Contains("cost about $40 an acre"));
}

TEST_CASE("an offer is refused where waiting is worth more") {
  Told told = thinned_now();
  told.scenario.costs.sale_fee_fraction = 0.10;
  told.scenario.costs.thinning_sale_cost = dollars_per_acre(20);
  told.advice.sale_now = SaleNow{told.advice.best_plan.regime, dollars_per_acre(300),
                                 dollars_per_acre(250)};
  told.tell();
  // (250 + 20) / 0.9 = 300 an acre before fees, 12,000 for forty acres.
  CHECK_THAT(told.line(12), Contains("refuse any offer below $12,000 in all ($300 an acre)"));
  CHECK_THAT(told.line(12), Contains("sealed bids") && Contains("lump sum") && Contains("as cut"));
}

TEST_CASE("without a storm zone the ids are named and a heavy cut is cautioned all the same") {
  const Told told(by_hand::tract(18));
  CHECK_THAT(told.line(10), Contains("No storm zone was chosen, so storms are not in these "
                                     "figures (zones: coast, inland)"));
  CHECK_THAT(told.line(10), Contains("more exposed to wind and ice"));
}

TEST_CASE("with a storm zone the worst storm comes first and is no prophecy") {
  Scenario scenario = in_2027(by_hand::tract(18));
  scenario.hazard = by_hand::hazard();
  Told told(scenario);
  REQUIRE_FALSE(told.advice.storm->thinnings.empty());
  CHECK(told.line(10).starts_with("The worst storm in the five years after a thinning"));
  CHECK_THAT(to_text(told.report), !Contains("will be hit"));
  CHECK(told.section("Storms").tables.size() == 3);
}

TEST_CASE("what a stand was planted for is asked of no table") {
  Told told(by_hand::tract());
  CHECK_THAT(told.line(2), Contains("as the yield table foresees"));
  told.scenario.stand.planted = trees_per_acre(600);
  told.tell();
  CHECK_THAT(told.line(2), Contains("600 seedlings of pine") && Contains("8.5 by 8.5 feet"));
  CHECK_THAT(told.line(3), Contains("Planting costs $350 an acre ($14,000 for the tract)"));
}

TEST_CASE("planting that loses money is not advised without saying so") {
  Told told(by_hand::tract());
  told.advice.best.value.objective = dollars_per_acre(-96);
  told.tell();
  CHECK(told.line(2).starts_with("Planting pine here loses money"));
  CHECK_THAT(told.line(8), Contains("loses $95 an acre"));
}

TEST_CASE("a stand thinned lately is looked at again when the years between are over") {
  Scenario scenario = in_2027(by_hand::tract(18));
  scenario.stand.standing->last_thinning = LastThinning{age(16), 0.3};
  const Told told(scenario);
  REQUIRE(told.advice.readiness.too_soon_after_thinning);
  CHECK_THAT(told.line(2),
             Contains("look again in 2030, at age 21: the stand was thinned in 2025"));
  CHECK_THAT(told.line(4), !Contains("first thinning"));
}

TEST_CASE("a sale of next year is prepared next month") {
  Told told = thinned_now();
  told.advice.best.thinnings[0].at = age(25);
  told.advice.best_plan.regime = told.advice.best.regime();
  told.tell();
  CHECK_THAT(told.line(12), Contains("the sale of 2028 takes two months to mark"));
  told.advice.best.thinnings[0].at = age(26);
  told.tell();
  CHECK_THAT(told.line(12), Contains("Next month there is nothing to sell"));
}

TEST_CASE("a harvest at the last age allowed is said to be at the edge") {
  Told told(by_hand::tract(18));
  const auto said = [&] {
    return std::ranges::any_of(told.section("What this answer takes for granted").items,
                               [](const std::string& item) {
                                 return item.find("last age that the choices allow") !=
                                        std::string::npos;
                               });
  };
  CHECK_FALSE(said());
  told.scenario.lattice.final_to = told.advice.best.final_harvest_age;
  told.tell();
  CHECK(said());
}

TEST_CASE("wet ground is logged in the dry season only") {
  Told told = thinned_now();
  CHECK_THAT(told.line(12), !Contains("dry season"));
  told.scenario.site.drainage = SiteFacts::Drainage::wet;
  told.tell();
  CHECK_THAT(told.line(12), Contains("log in the dry season only"));
}

TEST_CASE("a due thinning that the limits keep shut is said to be shut") {
  Told told = thinned_now();
  told.advice.best.thinnings[0].at = age(27);
  told.advice.best_plan.regime = told.advice.best.regime();
  told.advice.readiness.judgement = SignVerdict::due;
  told.advice.waiting_earns.reset();
  told.tell();
  CHECK_THAT(told.line(2), Contains("none that the limits allow is open this season"));
}

TEST_CASE("advice that changes says what would be better and what keeping costs") {
  Told told(in_2027(by_hand::tract(18)));
  told.advice.survives = {{"growth -15 %", std::nullopt, true, dollars_per_acre(0)},
                          {"growth +15 %", told.advice.best_plan, false, dollars_per_acre(12)}};
  told.tell();
  CHECK_THAT(told.line(9), Contains("stays the same with growth 15 percent lower.") &&
                               Contains("With growth 15 percent higher better") &&
                               Contains("lose $10 an acre"));
}

TEST_CASE("the cash flow table adds up to the cash flow") {
  Scenario scenario = in_2027(by_hand::tract());
  scenario.hazard = by_hand::hazard();
  const Told told(scenario);
  const Table& table = told.section("The plan").tables.back();
  double shown = 0.0;
  for (const std::vector<Cell>& row : table.rows) shown += *row.back().value;
  double given = 0.0;
  for (const CashFlowLine& line : told.advice.best.cash_flow) {
    given += line.amount.in(dollars_per_acre);
  }
  CHECK(shown == support::relative(given, 1e-9));
  CHECK(table.rows.size() < told.advice.best.cash_flow.size());
}

TEST_CASE("prices quoted in other units show the yields in them too") {
  Told told(by_hand::tract(18));
  CHECK(told.section("The plan").tables.size() == 3);
  told.scenario.prices[1].quoted = {19, 2.675};
  told.tell();
  const Table& units = told.section("The plan").tables[2];
  CHECK(units.columns.size() == 4);
  CHECK(*units.rows.back()[2].value ==
        support::relative(told.advice.best.final_harvest.tons[1].in(tons_per_acre) / 2.675, 1e-12));
}

TEST_CASE("stated regimes stand beside the plan with the limits they break") {
  Scenario scenario = in_2027(by_hand::tract(18));
  scenario.regimes = {stated("half at once", {{{age(18), 0.5}}, age(30)})};
  const Told told(scenario);
  const Table& options = told.section("Other ways, and what they are worth").tables[0];
  CHECK(options.rows.back()[0].text == "yours: half at once");
  CHECK_THAT(options.rows.back()[5].text, Contains("share of basal area taken 50 percent"));
}

TEST_CASE("every answer ends with the cautions and the proof") {
  for (const Scenario& scenario : {by_hand::tract(), by_hand::tract(18)}) {
    const Told told(scenario);
    const std::vector<std::string>& items = told.section("Sources and cautions").items;
    for (const std::string& caution : standing_cautions()) {
      CHECK(std::ranges::find(items, caution) != items.end());
    }
    CHECK_THAT(told.report.foot, Contains("none of the others is worth more") &&
                                     Contains("The arithmetic is exact; the growth is not (15 to "
                                              "20 percent)"));
  }
}

TEST_CASE("marking thinner trees is never shown as a way to earn") {
  const Told told(by_hand::tract(18));
  for (const Line& line : told.report.lines) CHECK_THAT(line.text, !Contains("0.95"));
  CHECK_THAT(told.section("What this answer takes for granted").items.back(),
             Contains("describes how they are marked and is no way to earn"));
}

TEST_CASE("questions to the owner stand right after the lines") {
  Scenario scenario = by_hand::tract(18);
  scenario.questions = {"Is the rate of 9 percent nominal?"};
  const Told told(scenario);
  CHECK(told.report.sections.front().items == scenario.questions);
}

}  // namespace
}  // namespace staddle
