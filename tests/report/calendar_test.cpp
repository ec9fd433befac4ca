// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/calendar.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>
#include <sstream>

#include "report/season.h"
#include "report/tract_by_hand.h"
#include "support/not_run.h"
#include "support/program.h"

namespace staddle {
namespace {

using Catch::Matchers::Contains;
using season::day;

// Forty acres in 2027, with the thinnings at these ages and the harvest.
struct PlannedStand {
  Scenario scenario;
  Advice advice;
};

PlannedStand planned(std::optional<int> age_yr, std::vector<int> thinned_at, int cut_at) {
  PlannedStand result{by_hand::tract(age_yr), {}};
  result.scenario.present_year = calendar_year(2027);
  result.advice = by_hand::advice_for(result.scenario);
  StatedRegime regime{"", {}, age(cut_at)};
  for (const int at : thinned_at) {
    regime.thinnings.push_back({age(at), StatedThinning::By::removal_fraction, 0.3, {}, {}});
  }
  const StandCase stand = make_advise_problem(result.scenario).value().stand.stand_case;
  result.advice.best = simulate(stand, regime).value();
  return result;
}

std::vector<Operation> work_of(const PlannedStand& plan) {
  return operations(plan.scenario, plan.advice);
}

const Operation& job(const std::vector<Operation>& work, const std::string& key) {
  const auto found = std::ranges::find(work, key, &Operation::key);
  INFO(key);
  REQUIRE(found != work.end());
  return *found;
}

bool has(const std::vector<Operation>& work, const std::string& key) {
  return std::ranges::find(work, key, &Operation::key) != work.end();
}

int days_from(CalendarDay first, CalendarDay last) {
  return static_cast<int>((std::chrono::sys_days(last) - std::chrono::sys_days(first)).count());
}

TEST_CASE("a cut is marked for two months and offered for six weeks before its year ends") {
  const auto work = work_of(planned(18, {20}, 30));
  CHECK(job(work, "thinning-1-marking").first == day(2029, 1, 1));
  CHECK(job(work, "thinning-1-marking").last == day(2029, 2, 28));
  CHECK(job(work, "thinning-1-bids").first == day(2029, 3, 1));
  CHECK(days_from(job(work, "thinning-1-bids").first, job(work, "thinning-1-bids").last) == 41);
  CHECK(job(work, "thinning-1-contract").first == day(2029, 4, 12));
  CHECK(job(work, "thinning-1-contract").last == day(2031, 4, 11));
  CHECK(job(work, "thinning-1-cutting").last == day(2029, 12, 31));
  CHECK(job(work, "final-harvest-cutting").first == day(2039, 4, 15));
}

TEST_CASE("the month that the site names is the month of the cut") {
  PlannedStand plan = planned(18, {20}, 30);
  plan.scenario.site.month_of_cut = 2;
  const auto work = work_of(plan);
  CHECK(job(work, "thinning-1-cutting").first == day(2029, 2, 1));
  CHECK(job(work, "thinning-1-cutting").last == day(2029, 2, 28));
  CHECK(job(work, "thinning-1-bids").last < job(work, "thinning-1-cutting").first);
  CHECK(job(work, "thinning-1-marking").first.year() == std::chrono::year(2028));
}

TEST_CASE("a month that leaves no time to mark and sell this year is said to come too early") {
  PlannedStand plan = planned(18, {18}, 30);
  plan.scenario.site.month_of_cut = 4;
  const auto early = work_of(plan);
  CHECK_THAT(job(early, "thinning-1-cutting").details, Contains("too early"));
  CHECK(job(early, "thinning-1-marking").first == day(2027, 1, 1));
  CHECK(job(early, "thinning-1-bids").last < job(early, "thinning-1-cutting").first);
  plan.scenario.site.month_of_cut = 5;
  const auto in_time = work_of(plan);
  CHECK_THAT(job(in_time, "thinning-1-cutting").details, !Contains("too early"));
  CHECK(job(in_time, "thinning-1-cutting").first == day(2027, 5, 1));
  CHECK(job(in_time, "thinning-1-marking").first >= day(2027, 1, 1));
}

TEST_CASE("a calendar has wet ground logged in the dry season only") {
  PlannedStand plan = planned(18, {20}, 30);
  plan.scenario.site.drainage = SiteFacts::Drainage::wet;
  const Operation cutting = job(work_of(plan), "thinning-1-cutting");
  CHECK(cutting.first == day(2029, 7, 1));
  CHECK(cutting.last == day(2029, 10, 31));
  CHECK_THAT(cutting.details, Contains("dry season only"));
  CHECK_THAT(cutting.basis, Contains("from memory"));
}

TEST_CASE("land cut before March is sprayed the same fall and planted in the winter after") {
  PlannedStand plan = planned(18, {}, 30);
  plan.scenario.site.month_of_cut = 2;
  const auto early = work_of(plan);
  CHECK(job(early, "next-spraying").first == day(2039, 9, 1));
  CHECK(job(early, "next-planting").first == day(2039, 12, 1));
  CHECK(job(early, "next-planting").last == day(2040, 3, 10));
  plan.scenario.site.month_of_cut = 3;
  const auto late = work_of(plan);
  CHECK(job(late, "next-spraying").first == day(2040, 9, 1));
  CHECK(job(late, "next-planting").first == day(2040, 12, 1));
  CHECK(job(late, "next-seedlings").first == day(2039, 12, 1));
  CHECK(job(late, "next-seedlings").last == day(2040, 6, 1));
  CHECK(job(late, "next-herbaceous").first == day(2041, 3, 1));
  CHECK(job(late, "next-herbaceous").last == day(2041, 5, 31));
  CHECK(job(late, "next-release").first == day(2042, 8, 1));
  CHECK(job(late, "next-release").last == day(2042, 10, 31));
}

TEST_CASE("no burn begins within eight weeks of the first spraying") {
  const auto work = work_of(planned(18, {}, 30));
  CHECK(days_from(job(work, "next-spraying").first, job(work, "next-burning").first) == 56);
  CHECK_THAT(job(work, "next-burning").details, Contains("eight weeks"));
}

TEST_CASE("bare land is planted first and a sold tract is not planted again") {
  const auto bare = work_of(planned({}, {17}, 30));
  CHECK(job(bare, "first-planting").first == day(2027, 12, 1));
  // Nothing is asked of the time before the present year.
  CHECK(job(bare, "first-seedlings").first == day(2027, 1, 1));
  CHECK(bare.front().first >= day(2027, 1, 1));
  PlannedStand sold = planned(18, {}, 30);
  sold.scenario.after_harvest = {AfterHarvest::Kind::land_price, dollars_per_acre(900)};
  CHECK_FALSE(has(work_of(sold), "next-planting"));
  CHECK_FALSE(has(work_of(sold), "first-planting"));
}

TEST_CASE("the stand is measured again five years after an entry while it stands") {
  const auto work = work_of(planned(18, {20, 26}, 30));
  CHECK(job(work, "thinning-1-measuring").first == day(2034, 1, 1));
  CHECK_FALSE(has(work, "thinning-2-measuring"));
  PlannedStand thinned = planned(18, {}, 30);
  thinned.scenario.stand.standing->last_thinning = LastThinning{age(15), 0.3};
  CHECK(job(work_of(thinned), "last-thinning-measuring").first == day(2029, 1, 1));
}

TEST_CASE("work that can hurt someone carries its caution") {
  PlannedStand plan = planned(18, {20}, 30);
  plan.scenario.costs.practices = {{"understory burn", age(24), dollars_per_acre(30)}};
  const auto work = work_of(plan);
  for (const char* key : {"thinning-1-cutting", "final-harvest-cutting"}) {
    CHECK_THAT(job(work, key).caution, Contains("trained crews"));
  }
  for (const char* key : {"next-spraying", "next-herbaceous", "next-release"}) {
    CHECK_THAT(job(work, key).caution, Contains("licensed applicator"));
  }
  CHECK_THAT(job(work, "next-burning").caution, Contains("certified burners"));
  CHECK_THAT(job(work, "practice-1").caution, Contains("certified burners"));
  CHECK_THAT(job(work, "thinning-1-bids").caution, Contains("registered forester"));
  for (const Operation& each : work) CHECK(each.basis.size() > 5);
}

TEST_CASE("operations stand in the order of their days under keys of their own") {
  const auto work = work_of(planned({}, {17, 23}, 32));
  CHECK(std::ranges::is_sorted(work, {}, &Operation::first));
  std::set<std::string> keys;
  for (const Operation& each : work) {
    keys.insert(each.key);
    CAPTURE(each.key);
    CHECK(each.first.ok());
    CHECK(each.last.ok());
    CHECK(each.first <= each.last);
  }
  CHECK(keys.size() == work.size());
}

TEST_CASE("a calendar without the present year is refused with the key that is missing") {
  PlannedStand plan = planned(18, {20}, 30);
  plan.scenario.present_year.reset();
  const auto refused = stand_calendar(plan.scenario, plan.advice);
  REQUIRE_FALSE(refused);
  REQUIRE(refused.error().size() == 1);
  CHECK(refused.error().front().place == "/calendar_year");
  CHECK(refused.error().front().code == FaultCode::missing_key);
}

// ---- the file ----

TEST_CASE("no line of a calendar is longer than 75 octets nor ends without CRLF") {
  PlannedStand plan = planned(18, {20}, 30);
  plan.scenario.title.clear();
  for (int i = 0; i < 60; ++i) plan.scenario.title += "ñ\xF0\x9F\x8C\xB2, ";
  const std::string calendar = stand_calendar(plan.scenario, plan.advice).value();
  std::istringstream lines(calendar);
  std::size_t folded = 0;
  for (std::string line; std::getline(lines, line);) {
    REQUIRE(line.ends_with('\r'));
    REQUIRE(line.size() - 1 <= 75);
    REQUIRE(line.find('\r') == line.size() - 1);
    // No line begins within a letter.
    const std::size_t first = line.starts_with(' ') ? 1 : 0;
    REQUIRE((static_cast<unsigned char>(line[first]) & 0xC0) != 0x80);
    folded += first;
  }
  CHECK(folded > 20);
}

TEST_CASE("the end of an event is the day after its last day") {
  const Operation leap{"a", "b", day(2028, 2, 1), day(2028, 2, 29), "c", "", "d"};
  const std::string calendar = to_calendar("t", calendar_year(2027), {leap});
  CHECK_THAT(calendar, Contains("DTSTART;VALUE=DATE:20280201\r\nDTEND;VALUE=DATE:20280301\r\n"));
  CHECK_THAT(calendar, Contains("DTSTAMP:20270101T000000Z\r\n"));
}

TEST_CASE("texts of a calendar are escaped") {
  const Operation odd{
      "a", "x;y,z\\n", day(2028, 2, 1), day(2028, 2, 2), "one\r\ntwo\nBEGIN:VEVENT\x07", "", "d"};
  const std::string calendar = to_calendar("t", calendar_year(2027), {odd});
  CHECK_THAT(calendar, Contains("SUMMARY:t: x\\;y\\,z\\\\n\r\n"));
  CHECK_THAT(calendar, Contains("DESCRIPTION:one\\ntwo\\nBEGIN:VEVENT \\n\\nSeason: d.\r\n"));
}

TEST_CASE("events keep their identity while the plan moves by a year") {
  const auto uids = [](const PlannedStand& plan) {
    std::set<std::string> found;
    std::istringstream lines(stand_calendar(plan.scenario, plan.advice).value());
    for (std::string line; std::getline(lines, line);) {
      if (line.starts_with("UID:")) found.insert(line);
    }
    return found;
  };
  const auto before = uids(planned(18, {20}, 30));
  CHECK(before.size() > 10);
  CHECK(before == uids(planned(18, {21}, 31)));
  PlannedStand other = planned(18, {20}, 30);
  other.scenario.title = "Another tract";
  for (const std::string& uid : uids(other)) CHECK_FALSE(before.contains(uid));
}

// ---- an independent parser ----

const char* const python = "/usr/bin/python3";

// Writes each event as a line: identity, start, end, and the text it holds.
const char* const script = R"(
import sys
from icalendar import Calendar
calendar = Calendar.from_ical(sys.stdin.buffer.read())
assert calendar["VERSION"] == "2.0" and calendar["PRODID"]
for event in calendar.walk("VEVENT"):
    assert not event.errors, event.errors
    start, end = event.decoded("DTSTART"), event.decoded("DTEND")
    assert event.decoded("DTSTAMP").tzinfo is not None
    assert start < end
    text = (str(event["SUMMARY"]) + "|" + str(event["DESCRIPTION"])).replace("\n", "~")
    print(event["UID"], start.isoformat(), end.isoformat(), text, sep="|")
)";

bool parser_is_there() {
  return support::run_program(python, {"-c", "import icalendar"}).exit_code == 0;
}

std::string iso(CalendarDay shown) {
  std::ostringstream text;
  text.fill('0');
  text.width(4);
  text << static_cast<int>(shown.year()) << '-';
  text.width(2);
  text << static_cast<unsigned>(shown.month()) << '-';
  text.width(2);
  text << static_cast<unsigned>(shown.day());
  return text.str();
}

TEST_CASE("an independent parser reads every event with its days and words") {
  if (!parser_is_there()) return support::not_run("python3-icalendar is not installed");
  for (const std::string& title :
       {std::string("Forty acres"), std::string("=1+1; \"a, b\" \\ <b>"),
        std::string("Zoë's \xF0\x9F\x8C\xB2 wood, ") + std::string(300, 'w')}) {
    PlannedStand plan = planned({}, {17, 23}, 32);
    plan.scenario.title = title;
    const auto work = work_of(plan);
    const support::Run run = support::run_program(
        python, {"-c", script}, stand_calendar(plan.scenario, plan.advice).value());
    INFO(run.err);
    REQUIRE(run.exit_code == 0);
    std::istringstream lines(run.out);
    std::set<std::string> identities;
    for (const Operation& each : work) {
      std::string line;
      REQUIRE(std::getline(lines, line));
      CHECK_THAT(line, Contains("|" + iso(each.first) + "|" + iso(season::plus_days(each.last, 1)) +
                                "|" + title + ": " + each.what + "|" + each.details));
      identities.insert(line.substr(0, line.find('|')));
    }
    CHECK(identities.size() == work.size());
  }
}

}  // namespace
}  // namespace staddle
