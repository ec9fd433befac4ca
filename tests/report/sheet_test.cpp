// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/sheet.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "report/answers_by_hand.h"
#include "report/spreadsheet_oracle.h"
#include "staddle/regime/after_tax.h"
#include "support/files.h"
#include "support/near.h"
#include "support/not_run.h"

namespace staddle {
namespace {

using support::OpenedWorkbook;

const char* const inputs = "Prices and rate";

// Every kind of money at once: fee, tax, sale costs, practices, flows that end at an age, at
// the first thinning and at the harvest, a cost and an income of every year.
Scenario with_all_money(std::optional<int> age_yr, bool storms) {
  Scenario scenario = by_hand::tract(age_yr);
  scenario.present_year = calendar_year(2027);
  if (storms) scenario.hazard = by_hand::hazard();
  Costs& costs = scenario.costs;
  costs.sale_fee_fraction = 0.08;
  costs.harvest_tax_fraction = 0.02;
  costs.thinning_sale_cost = dollars_per_acre(12);
  costs.final_sale_cost = dollars_per_acre(9);
  costs.regeneration_delay_yr = 2;
  costs.annual_income = dollars_per_acre(5);
  costs.practices = {{"release", age(2), dollars_per_acre(65)},
                     {"burn", age(20), dollars_per_acre(30)},
                     {"fire lines", age(20), dollars_per_acre(4)}};
  costs.flows = {{"pine straw", age(9), DatedFlow::Until::first_thinning, {}, dollars_per_acre(60)},
                 {"programme", age(1), DatedFlow::Until::age, age(21), dollars_per_acre(7)},
                 {"patrol", age(15), DatedFlow::Until::final_harvest, {}, dollars_per_acre(-3)}};
  if (scenario.is_standing()) {
    scenario.stand.standing->other_timber = {
        {"hardwood pulpwood", tons_per_acre(8), 0.02, dollars_per_ton(6)}};
  }
  scenario.prices[0].thinning_factor = 0.9;
  scenario.prices[1].thinning_discount = dollars_per_ton(1.5);
  StatedRegime never{"no thinning, cut at 34", {}, age(34)};
  StatedRegime twice{"=twice, cut at 38",
                     {{age(20), StatedThinning::By::removal_fraction, 0.3, {}, {}},
                      {age(27), StatedThinning::By::removal_fraction, 0.25, {}, {}}},
                     age(38)};
  scenario.regimes = {never, twice};
  return scenario;
}

struct Written {
  support::TemporaryDirectory directory;
  StandAnswers answers;
  std::string path = directory.path("out.xlsx");

  explicit Written(const Scenario& scenario) : answers(by_hand::answers_for(scenario)) {
    write(scenario);
  }
  // Again, as if this scenario's prices, costs and rate had been typed into the cells for
  // them: plans and tons stay those of the first.
  void write(const Scenario& scenario) {
    answers.scenario = scenario;
    const auto failure = write_workbook(path, answers, by_hand::report_on(scenario));
    INFO(failure.value_or(""));
    REQUIRE_FALSE(failure);
  }
};

std::vector<Scenario> many_scenarios() {
  return {with_all_money({}, false), with_all_money(18, false), with_all_money({}, true),
          with_all_money(18, true)};
}

// What the evaluator says of an option at other prices and another rate: the same cuts, on
// land of the same worth.
RegimeReport priced_anew(const StandAnswers& answers, const Scenario& changed,
                         const RegimeReport& told) {
  StandCase stand = make_advise_problem(changed).value().stand.stand_case;
  stand.land_value = answers.advice.land_value;
  return simulate(stand, stated(told.name, told.regime())).value();
}

std::string option_sheet(const OpenedWorkbook& book, std::size_t option) {
  const std::string number = std::to_string(option + 1) + " ";
  const auto found = std::ranges::find_if(
      book.sheets, [&](const auto& sheet) { return sheet.first.starts_with(number); });
  REQUIRE(found != book.sheets.end());
  return found->first;
}

// The results of one option's sheet against a report, to the cent.
void compare(const OpenedWorkbook& book, std::size_t option, const RegimeReport& expected) {
  const std::string sheet = option_sheet(book, option);
  CAPTURE(sheet);
  const auto result = [&](std::size_t row) { return book.number(sheet, row, 5); };
  const auto dollars_of = [](MoneyPerAcre money) { return money.in(dollars_per_acre); };
  CHECK(result(5) == support::within(dollars_of(expected.value.objective), support::half_cent));
  CHECK(result(6) ==
        support::within(dollars_of(expected.value.net_present_value), support::half_cent));
  CHECK(result(7) == support::relative(expected.value.land_weight, support::two_methods));
  CHECK(result(8) ==
        support::within(dollars_of(expected.equal_annual_equivalent), support::half_cent));
  REQUIRE(expected.benefit_cost_ratio.has_value());
  CHECK(result(9) == support::relative(*expected.benefit_cost_ratio, support::two_methods));
  if (expected.internal_rate_of_return) {
    CHECK(result(10) == support::relative(*expected.internal_rate_of_return, support::two_methods));
  } else {
    CHECK(book.at(sheet, 10, 5) == "none");
  }
}

TEST_CASE("a spreadsheet program computes every cell as it was written") {
  if (!support::spreadsheet_program_is_there()) {
    return support::not_run("gnumeric is not installed");
  }
  for (const Scenario& scenario : many_scenarios()) {
    const Written written(scenario);
    CHECK(support::numbers_computed_as_written(written.path) > 1000);
  }
}

TEST_CASE("the values of a workbook are those of the evaluator") {
  if (!support::spreadsheet_program_is_there()) {
    return support::not_run("gnumeric is not installed");
  }
  for (const Scenario& scenario : many_scenarios()) {
    const Written written(scenario);
    const OpenedWorkbook book = support::recalculate_workbook(written.path);
    for (std::size_t i = 0; i < written.answers.options.size(); ++i) {
      compare(book, i, written.answers.options[i].report);
    }
  }
}

TEST_CASE("the net money of every year in a workbook is that of the evaluator") {
  if (!support::spreadsheet_program_is_there()) {
    return support::not_run("gnumeric is not installed");
  }
  for (const Scenario& scenario : many_scenarios()) {
    const Written written(scenario);
    const OpenedWorkbook book = support::recalculate_workbook(written.path);
    for (std::size_t i = 0; i < written.answers.options.size(); ++i) {
      const RegimeReport& report = written.answers.options[i].report;
      const std::string sheet = option_sheet(book, i);
      const auto& headings = book.sheets.at(sheet).at(15);
      const auto net = static_cast<std::size_t>(
          std::distance(headings.begin(), std::ranges::find(headings, "net")));
      const Age present = report.years.front().at;
      const auto delay = static_cast<std::size_t>(scenario.costs.regeneration_delay_yr);
      for (std::size_t t = 0; t < report.years.size() + delay; ++t) {
        MoneyPerAcre expected;
        for (const CashFlowLine& line : report.cash_flow) {
          if (line.at == present + years(static_cast<double>(t))) expected += line.amount;
        }
        CAPTURE(sheet, t);
        CHECK(book.number(sheet, 17 + t, net) ==
              support::within(expected.in(dollars_per_acre), 1e-6));
      }
    }
  }
}

TEST_CASE("a changed rate and price move a workbook as they move the evaluator") {
  if (!support::spreadsheet_program_is_there()) {
    return support::not_run("gnumeric is not installed");
  }
  for (const Scenario& scenario : many_scenarios()) {
    Written written(scenario);
    Scenario changed = scenario;
    changed.costs.rate = DiscountRate::real(0.0425);
    changed.prices[0].stumpage = dollars_per_ton(31.5);
    changed.prices[1].stumpage = dollars_per_ton(5.25);
    changed.prices[1].thinning_factor = 0.75;
    changed.costs.sale_fee_fraction = 0.1;
    changed.costs.establishment = dollars_per_acre(410);
    changed.costs.annual_cost = dollars_per_acre(9.5);
    changed.costs.practices[1].cost = dollars_per_acre(45);
    changed.costs.flows[0].per_year = dollars_per_acre(80);
    written.write(changed);
    const OpenedWorkbook book = support::recalculate_workbook(written.path);
    for (std::size_t i = 0; i < written.answers.options.size(); ++i) {
      const RegimeReport& told = written.answers.options[i].report;
      const RegimeReport anew = priced_anew(written.answers, changed, told);
      // The change must be one that shows.
      REQUIRE(std::fabs((anew.value.objective - told.value.objective).in(dollars_per_acre)) > 1);
      compare(book, i, anew);
    }
  }
}

// As with_all_money, with a basis on the timber that stands.
Scenario taxed(std::optional<int> age_yr, bool storms) {
  Scenario scenario = with_all_money(age_yr, storms);
  scenario.tax = TaxRules{.long_term_rate = 0.15, .ordinary_rate = 0.24, .inflation = 0.02};
  if (age_yr) scenario.tax->basis = dollars_per_acre(150);
  return scenario;
}

// The results after tax of every option's sheet against the evaluator at these prices.
void compare_after_tax(const StandAnswers& answers, const Scenario& scenario,
                       const OpenedWorkbook& book) {
  StandCase stand = make_advise_problem(scenario).value().stand.stand_case;
  const AfterTax tax(stand, *scenario.tax, scenario.area, answers.advice.after_tax->land_value);
  for (std::size_t i = 0; i < answers.options.size(); ++i) {
    const RegimeReport after = tax.report(stated("", answers.options[i].report.regime())).value();
    const std::string sheet = option_sheet(book, i);
    CAPTURE(sheet);
    CHECK(book.number(sheet, 11, 5) ==
          support::within(after.value.net_present_value.in(dollars_per_acre), support::half_cent));
    CHECK(book.number(sheet, 12, 5) ==
          support::within(after.value.objective.in(dollars_per_acre), support::half_cent));
  }
}

TEST_CASE("values after tax in a workbook are those of the evaluator and follow prices") {
  if (!support::spreadsheet_program_is_there()) {
    return support::not_run("gnumeric is not installed");
  }
  for (const Scenario& scenario : {taxed({}, false), taxed(18, false), taxed(18, true)}) {
    Written written(scenario);
    CHECK(support::numbers_computed_as_written(written.path) > 1000);
    compare_after_tax(written.answers, scenario, support::recalculate_workbook(written.path));
    Scenario changed = scenario;
    changed.prices[0].stumpage = dollars_per_ton(31.5);
    changed.prices[1].thinning_factor = 0.75;
    changed.costs.annual_cost = dollars_per_acre(9.5);
    written.write(changed);
    compare_after_tax(written.answers, changed, support::recalculate_workbook(written.path));
  }
}

TEST_CASE("the same answer gives the same workbook to the byte") {
  const Written one(with_all_money(18, true));
  const Written other(with_all_money(18, true));
  CHECK(support::read_file(one.path) == support::read_file(other.path));
}

TEST_CASE("names that look like formulas or markup stay texts in a workbook") {
  if (!support::spreadsheet_program_is_there()) {
    return support::not_run("gnumeric is not installed");
  }
  for (const std::string name :
       {"=1+1", "+A1", "-2+3", "@SUM(A1)", "=cmd|' /C calc'!A0", "<b>Ada & \"Co\"</b>", "{=A1}",
        "http://example.org", "Zoë Ñandú \xF0\x9F\x8C\xB2"}) {
    CAPTURE(name);
    Scenario scenario = with_all_money(18, false);
    scenario.title = name;
    scenario.owner = scenario.prepared_by = name;
    scenario.costs.practices.front().what = name;
    scenario.costs.flows.front().what = name;
    scenario.stand.standing->other_timber.front().what = name;
    scenario.regimes.front().name = name;
    const Written written(scenario);
    const OpenedWorkbook book = support::recalculate_workbook(written.path);
    CHECK(book.at("Answer", 0, 0) == name);
    CHECK_NOTHROW(book.row_of("Answer", "Owner: " + name));
    CHECK_NOTHROW(book.row_of(inputs, name));
    CHECK_NOTHROW(book.row_of("Options", name));
    compare(book, 0, written.answers.options.front().report);
  }
}

TEST_CASE("very long names are cut where a cell or a sheet would not hold them") {
  if (!support::spreadsheet_program_is_there()) {
    return support::not_run("gnumeric is not installed");
  }
  Scenario scenario = with_all_money(18, false);
  for (int i = 0; i < 20'000; ++i) scenario.owner += "ñ ";
  scenario.regimes.front().name = scenario.owner + "1";
  scenario.regimes.back().name = scenario.owner + "2";
  const Written written(scenario);
  const OpenedWorkbook book = support::recalculate_workbook(written.path);
  CHECK(book.sheets.size() == written.answers.options.size() + 4);
  const std::string owner = book.at("Answer", 1, 0);
  CHECK(owner.starts_with("Owner: ñ ñ"));
  CHECK(owner.ends_with(" [...]"));
  for (std::size_t i = 0; i < written.answers.options.size(); ++i) {
    compare(book, i, written.answers.options[i].report);
  }
}

TEST_CASE("a workbook that cannot be written says why") {
  const Scenario scenario = by_hand::tract(18);
  CHECK(write_workbook("/nowhere/at/all/out.xlsx", by_hand::answers_for(scenario),
                       by_hand::report_on(scenario)));
}

}  // namespace
}  // namespace staddle
