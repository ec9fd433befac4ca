// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "report/cells.h"
#include "report/changes.h"
#include "report/dates.h"
#include "report/key_words.h"
#include "report/tract_by_hand.h"
#include "staddle/base/contract.h"

namespace staddle {
namespace {

TEST_CASE("changes read as one says them") {
  CHECK(change_in_words("growth -15 %") == "growth 15 percent lower");
  CHECK(change_in_words("all prices +20 %") == "all prices 20 percent higher");
  CHECK(change_in_words("no rain") == "no rain");
}

TEST_CASE("a change up and the same one down are drawn together") {
  using Texts = std::vector<std::string>;
  CHECK(changes_drawn_together({"growth 15 percent lower", "growth 15 percent higher"}) ==
        Texts{"growth 15 percent lower or higher"});
  CHECK(changes_drawn_together({"growth 15 percent lower", "prices 15 percent higher"}) ==
        Texts{"growth 15 percent lower", "prices 15 percent higher"});
  CHECK(changes_drawn_together({"growth 15 percent higher"}) ==
        Texts{"growth 15 percent higher"});
}

TEST_CASE("ages become calendar years where the present one is known") {
  Scenario scenario = by_hand::tract(15);
  const Dates ages(scenario);
  CHECK(ages.in(age(17)) == "at age 17");
  CHECK(ages.within(age(17), age(20)) == "from age 17 to 20");
  CHECK(ages.within(age(17), age(17)) == "at age 17");
  CHECK_THROWS_AS(ages.year_of(age(17)), ContractViolation);
  scenario.present_year = calendar_year(2027);
  const Dates years(scenario);
  CHECK(years.in(age(17)) == "in 2029, at age 17");
  CHECK(years.within(age(17), age(20)) == "from 2029 to 2032");
  CHECK(years.on(age(15)) == "in 2027");
  CHECK(years.wait(age(17)) == "two years");
  CHECK(years.wait(age(16)) == "one year");
}

TEST_CASE("bare land counts its years from planting") {
  Scenario scenario = by_hand::tract();
  scenario.present_year = calendar_year(2027);
  CHECK(Dates(scenario).in(age(0)) == "in 2027, at age 0");
}

TEST_CASE("guards are told with their settings and unknown keys are told plainly") {
  const Guards guards = default_guards();
  CHECK(guard_in_words("max_removal_fraction", guards) == "take no more than a third at once");
  CHECK(guard_in_words("dense_stand_now", guards) ==
        "up to half now, if the stand carries 140 sq ft");
  CHECK(guard_in_words("some_new_guard", guards) == "some new guard");
  CHECK(limit_in_words("guards/min_qmd_in") == "mean diameter at a thinning, inches");
  CHECK(limit_value("guards/max_removal_fraction", 0.4476) == "45 percent");
  CHECK(limit_value("min_sale_tons", 512.34) == "512.3");
  CHECK(sign_in_words("qmd_in") == "mean diameter, inches");
}

TEST_CASE("cells hold rounded words and the number behind them") {
  const Cell cell = cells::per_acre(dollars_per_acre(1362.4));
  CHECK(cell.text == "1,360");
  CHECK(cell.value == 1362.4);
  CHECK(cells::per_acre(dollars_per_acre(-12)).text == "-10");
  CHECK(cells::as_given(dollars_per_acre(-8)).text == "-8");
  CHECK(cells::tract(dollars(16312)).text == "16,500");
  CHECK(cells::percent(0.333).text == "33");
}

TEST_CASE("a cost that rounds to nothing is not shown as nothing") {
  CHECK(cells::cost_per_acre(dollars_per_acre(1.2)).text == "under 5");
  CHECK(cells::cost_per_acre(dollars_per_acre(0)).text == "0");
  CHECK(cells::cost_per_acre(dollars_per_acre(7.6)).text == "10");
}

}  // namespace
}  // namespace staddle
