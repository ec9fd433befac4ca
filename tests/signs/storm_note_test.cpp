// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>

#include "signs/stand_by_hand.h"
#include "staddle/signs/risk_notes.h"

// What the storm note says of the range of odds ratios and of its own remedy.
namespace staddle {
namespace {

using by_hand::cut;
using by_hand::measures;
using Catch::Matchers::Contains;

using OddsOutcome = RiskFacts::OddsOutcome;

// The note of a plan that thins a tall stand in hurricane country at these ages.
RiskNote note_of(const std::vector<std::pair<int, double>>& cuts,
                 const std::vector<OddsOutcome>& odds = {}) {
  const StandMeasures tall = measures(500, 75, 7, 64, 0.40);
  std::vector<ThinningRecord> records;
  for (const auto& [at, removal] : cuts) records.push_back(cut(at, removal, tall));
  const RegimeReport plan = by_hand::plan(15, 40, records, tall);
  StandCase stand_case = by_hand::stand_case();
  stand_case.hazard = by_hand::hazard();
  RiskFacts facts;
  facts.stand_case = &stand_case;
  facts.plan = &plan;
  facts.odds_range = odds;
  const std::vector<RiskNote> notes = risk_notes(facts);
  return *std::ranges::find(notes, std::string("storm"), &RiskNote::topic);
}

}  // namespace

TEST_CASE("the storm note gives the value over the range of odds ratios") {
  const std::vector<OddsOutcome> odds = {{1.0, dollars_per_acre(1521), true},
                                         {1.5, dollars_per_acre(1508), true},
                                         {std::nullopt, dollars_per_acre(1496), true},
                                         {6.0, dollars_per_acre(1480), true}};
  const RiskNote note = note_of({{16, 0.5}}, odds);
  CHECK_THAT(note.text, Contains("$1,520 at 1, $1,510 at 1.5, $1,495 as assumed here and $1,480 "
                                 "at 6; the advice is the same for all of them."));
  const auto figure = [&](const std::string& name) {
    const auto found =
        std::ranges::find(note.figures, name, &std::pair<std::string, double>::first);
    REQUIRE(found != note.figures.end());
    return found->second;
  };
  CHECK(figure("best_value_usd_ac_odds_ratio_1.5") == 1508);
  CHECK(figure("best_value_usd_ac_odds_ratio_assumed") == 1496);
}

TEST_CASE("the storm note names the odds ratios at which the advice is another") {
  const std::vector<OddsOutcome> odds = {{1.0, dollars_per_acre(1521), false},
                                         {std::nullopt, dollars_per_acre(1496), true},
                                         {6.0, dollars_per_acre(1480), false}};
  CHECK_THAT(note_of({{16, 0.5}}, odds).text, Contains("the advice is another at 1 and at 6."));
  CHECK_THAT(note_of({{16, 0.5}}).text, !Contains("the advice is"));
}

TEST_CASE("the storm note does not ask for what the plan does already") {
  const std::string already = "is in this plan already";
  CHECK_THAT(note_of({{16, 1.0 / 3.0}, {21, 0.3}}).text, Contains(already));
  CHECK_THAT(note_of({{16, 1.0 / 3.0}, {20, 0.3}}).text, !Contains(already));
  CHECK_THAT(note_of({{16, 0.34}, {21, 0.3}}).text, !Contains(already));
  CHECK_THAT(note_of({{16, 0.3}}).text, !Contains(already) && Contains("two lighter thinnings"));
}

}  // namespace staddle
