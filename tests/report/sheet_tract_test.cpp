// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "report/spreadsheet_oracle.h"
#include "report/tract_by_hand.h"
#include "staddle/finance/valuation.h"
#include "staddle/report/calendar.h"
#include "staddle/report/sheet.h"
#include "staddle/tract/solve.h"
#include "support/files.h"
#include "support/near.h"
#include "support/not_run.h"

namespace staddle {
namespace {

using support::OpenedWorkbook;

// Three stands of 40 acres, two standing, of which no more than 50 may be cut in 5 years.
TractFile three_stands() {
  TractFile file;
  file.title = "Three stands";
  file.present_year = calendar_year(2027);
  int age_yr = 18;
  for (const char* name : {"=North", "South", "Bare"}) {
    const bool bare = std::string(name) == "Bare";
    TractFileStand stand{"", by_hand::tract(bare ? std::nullopt : std::optional<int>(age_yr))};
    age_yr += 6;
    stand.scenario.title = name;
    stand.scenario.present_year = file.present_year;
    file.stands.push_back(std::move(stand));
  }
  file.plan.years = 20;
  file.plan.period_yr = 5;
  file.plan.final_harvest_acres_max_per_period = acres(50);
  return file;
}

struct PlannedTract {
  TractFile tract = three_stands();
  TractSolution solution = solve(make_tract_problem(tract), {}).value();
};

OwnerReport report_on(const TractFile& tract) {
  OwnerReport report;
  report.title = tract.title;
  return report;
}

TEST_CASE("a workbook of a tract is computed as it was written and sums to the plan") {
  if (!support::spreadsheet_program_is_there()) {
    return support::not_run("gnumeric is not installed");
  }
  const PlannedTract planned;
  const support::TemporaryDirectory directory;
  const std::string path = directory.path("tract.xlsx");
  REQUIRE_FALSE(write_workbook(path, planned.tract, planned.solution, report_on(planned.tract)));
  CHECK(support::numbers_computed_as_written(path) > 100);

  const OpenedWorkbook book = support::recalculate_workbook(path);
  Money income, cost;
  for (const TractPeriod& period : planned.solution.periods) {
    income += period.income;
    cost += period.cost;
  }
  const std::size_t all = book.row_of("Periods", "in all");
  CHECK(book.number("Periods", all, 1) == support::within(income.in(dollars), support::half_cent));
  CHECK(book.number("Periods", all, 3) ==
        support::within((income - cost).in(dollars), support::half_cent));
  const std::size_t stands = book.row_of("Stands", "in all");
  CHECK(book.number("Stands", stands, 2) == support::within(120, 1e-9));
  CHECK(book.number("Stands", stands, 4) ==
        support::within(planned.solution.present_value.in(dollars), support::half_cent));
  CHECK(book.number("Stands", stands, 6) ==
        support::within(
            (planned.solution.unlimited_present_value - planned.solution.present_value).in(dollars),
            support::half_cent));
  CHECK_NOTHROW(book.row_of("Stands", "=North"));
  CHECK(book.sheets.at("Jobs").size() == 4 + planned.solution.actions.size());
}

TEST_CASE("the years of a tract's workbook are discounted at the rate above them") {
  if (!support::spreadsheet_program_is_there()) {
    return support::not_run("gnumeric is not installed");
  }
  PlannedTract planned;
  planned.tract.stands.front().scenario.costs.rate = DiscountRate::real(0.07);
  const support::TemporaryDirectory directory;
  const std::string path = directory.path("tract.xlsx");
  REQUIRE_FALSE(write_workbook(path, planned.tract, planned.solution, report_on(planned.tract)));
  const OpenedWorkbook book = support::recalculate_workbook(path);
  CashFlows flows;
  for (const TractPeriod& year : planned.solution.years) {
    flows.push_back(
        {years(year.from_year), dollars_per_acre((year.income - year.cost).in(dollars)), ""});
  }
  const MoneyPerAcre expected = net_present_value(flows, DiscountRate::real(0.07));
  CHECK(book.number("Years", 5 + planned.solution.years.size(), 7) ==
        support::within(expected.in(dollars_per_acre), support::half_cent));
}

TEST_CASE("the same plan of a tract gives the same workbook to the byte") {
  const PlannedTract planned;
  const support::TemporaryDirectory directory;
  for (const char* name : {"one.xlsx", "other.xlsx"}) {
    REQUIRE_FALSE(write_workbook(directory.path(name), planned.tract, planned.solution,
                                 report_on(planned.tract)));
  }
  CHECK(support::read_file(directory.path("one.xlsx")) ==
        support::read_file(directory.path("other.xlsx")));
}

TEST_CASE("the calendar of a tract tells every stand under keys of its own") {
  const PlannedTract planned;
  const std::vector<Operation> work = operations(planned.tract, planned.solution);
  std::set<std::string> keys, stands;
  for (const Operation& job : work) {
    keys.insert(job.key);
    stands.insert(job.what.substr(0, job.what.find_first_of(":(")));
    CHECK(static_cast<int>(job.first.year()) >= 2027);
    CHECK(static_cast<int>(job.first.year()) <= 2047);
  }
  CHECK(keys.size() == work.size());
  CHECK(std::ranges::is_sorted(work, {}, &Operation::first));
  CHECK(tract_calendar(planned.tract, planned.solution));
  TractFile undated = planned.tract;
  undated.present_year.reset();
  CHECK(tract_calendar(undated, planned.solution).error().front().place == "/calendar_year");
}

TEST_CASE("the calendar of a tract has a cut in every year that the plan cuts") {
  const PlannedTract planned;
  const std::vector<Operation> work = operations(planned.tract, planned.solution);
  for (const TractAction& action : planned.solution.actions) {
    if (action.successor || action.kind == TractAction::Kind::planting) continue;
    const std::string name = planned.solution.stands.at(action.stand).name;
    const bool found = std::ranges::any_of(work, [&](const Operation& job) {
      return job.what.starts_with(name) && job.key.ends_with("-cutting") &&
             static_cast<int>(job.last.year()) == 2027 + action.year;
    });
    CAPTURE(name, action.year);
    CHECK(found);
  }
}

}  // namespace
}  // namespace staddle
