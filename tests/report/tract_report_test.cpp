// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/tract_report.h"

#include <catch2/catch.hpp>

#include "report/tract_by_hand.h"
#include "staddle/report/text.h"
#include "support/text.h"

namespace staddle {
namespace {

// Two stands of 40 acres, by hand: their words are tested here, not their plan.
TractFile tract() {
  TractFile file;
  file.title = "Two stands";
  file.present_year = calendar_year(2027);
  for (const char* name : {"North", "South"}) {
    TractFileStand stand{"", by_hand::tract()};
    stand.scenario.title = name;
    stand.scenario.area = acres(40);
    stand.scenario.present_year = calendar_year(2027);
    file.stands.push_back(std::move(stand));
  }
  file.plan.years = 10;
  file.plan.period_yr = 5;
  file.plan.final_harvest_acres_max_per_period = acres(30);
  return file;
}

RegimeShare share(double area, int final_age) {
  RegimeShare share;
  share.acres = acres(area);
  share.report.final_harvest_age = age(final_age);
  share.present_value = dollars_per_acre(1000);
  return share;
}

TractSolution solution() {
  TractSolution solution;
  solution.status = TractSolution::Status::optimal;
  solution.message = "no plan that keeps the limits is worth more";
  solution.keeps_limits = true;
  solution.present_value = dollars(80000);
  solution.bound = dollars(80000);
  solution.unlimited_present_value = dollars(84000);
  solution.products = {"sawtimber"};
  StandSchedule north{"North", {share(30, 24), share(10, 28)}, {{}, age(24)}, {}};
  north.unlimited_value = dollars_per_acre(1050);
  StandSchedule south = north;
  south.name = "South";
  south.regimes = {share(40, 24)};
  solution.stands = {north, south};
  TractAction cut;
  cut.year = 1;
  cut.kind = TractAction::Kind::final_harvest;
  cut.acres = acres(30);
  cut.tons = {tons(2400)};
  cut.money = dollars(60000);
  solution.actions = {cut};
  TractPeriod first;
  first.from_year = 1;
  first.to_year = 5;
  first.income = dollars(60000);
  first.cost = dollars(12000);
  first.final_harvest_acres = acres(30);
  first.tons = {tons(2400)};
  TractPeriod second = first;
  second.from_year = 6;
  second.to_year = 10;
  second.income = dollars(20000);
  solution.periods = {first, second};
  LimitCost cost;
  cost.limit = "final_harvest_acres_max_per_period";
  cost.shadow_price = 12;
  cost.text = "each further acre that may be cut for good adds $12";
  solution.limit_costs = {cost};
  return solution;
}

// Blanks and line ends in a row stand for one blank.
void check_says(const std::string& text, const std::string& words) {
  CAPTURE(text, words);
  CHECK(support::says(text, words));
}

TEST_CASE("a plan of a tract opens with its worth beside that without limits") {
  const std::string text = tract_text(tract(), solution());
  check_says(text,
             "Two stands, 80 acres, planned from 2027 to 2037 in 2 periods of 5 years; a "
             "stand may be cut in parts.");
  check_says(text, "The plan is worth $80,000 in today's money");
  check_says(text, "Without the limits the tract is worth $84,000: keeping them costs $4,000.");
  check_says(text, "To begin with: final harvest of 30 acres of North in 2028.");
  check_says(text, "least in 2033-2037, $20,000, and most in 2028-2032, $60,000.");
  check_says(text, "Each further acre that may be cut for good adds $12.");
  check_says(text, "neither an appraisal nor a land price");
}

TEST_CASE("jobs and periods are told by calendar year or by year of the plan") {
  check_says(tract_text(tract(), solution()), "2028 North final harvest 30.0 2,400 60,000");
  TractFile undated = tract();
  undated.present_year.reset();
  for (TractFileStand& stand : undated.stands) stand.scenario.present_year.reset();
  const std::string text = tract_text(undated, solution());
  check_says(text, "planned for 10 years in 2 periods of 5 years");
  check_says(text, "year 1 North final harvest");
  check_says(text, "years 6-10");
}

TEST_CASE("a tract without limits is said to have none") {
  TractFile free = tract();
  free.plan.final_harvest_acres_max_per_period.reset();
  TractSolution same = solution();
  same.limit_costs.clear();
  const std::string text = tract_text(free, same);
  check_says(text, "It has no limits to keep");
  CHECK(text.find("What the limits cost") == std::string::npos);
}

TEST_CASE("limits that conflict stand first with the most that can be had") {
  TractSolution broken = solution();
  broken.status = TractSolution::Status::infeasible;
  broken.keeps_limits = false;
  broken.message = "the limits cannot all be kept";
  LimitConflict conflict;
  conflict.text = "an income of $9 in 2030 cannot be had: the most is $5";
  broken.conflicts = {conflict};
  const Report report = tract_report(tract(), broken);
  CHECK(report.sections.front().title == "Limits that cannot all be kept");
  CHECK(report.sections.front().items.front() ==
        "An income of $9 in 2030 cannot be had: the most is $5.");
  check_says(to_text(report), "No plan can keep all limits.");
}

TEST_CASE("a search stopped early says how much better another plan could be") {
  TractSolution stopped = solution();
  stopped.status = TractSolution::Status::limit_reached;
  stopped.message = "the time was up";
  stopped.bound = dollars(82000);
  stopped.gap_fraction = 0.025;
  const std::string text = tract_text(tract(), stopped);
  check_says(text, "The time was up. No plan that keeps the limits can be worth more than $82,000");
  CHECK(text.find("Proof:") == std::string::npos);
  TractSolution nothing;
  nothing.message = "stopped before every stand was solved on its own";
  check_says(tract_text(tract(), nothing), "There is no plan yet.");
}

TEST_CASE("every caution stands in a plan") {
  const std::string text = tract_text(tract(), solution());
  check_says(text, "Herbicides are put out only by a licensed applicator");
  check_says(text, "no tax or legal advice");
}

}  // namespace
}  // namespace staddle
