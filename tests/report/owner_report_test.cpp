// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/owner_report.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>
#include <sstream>

#include "report/escape.h"
#include "report/tract_by_hand.h"
#include "report/wrap.h"
#include "staddle/report/text.h"
#include "staddle/signs/cautions.h"
#include "support/text.h"

namespace staddle {
namespace {

using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using support::lines_of;
using support::occurrences;

StandAnswers answers_to(const Scenario& scenario) {
  StandAnswersOptions options;
  options.threads = 1;
  return answer_stand(scenario, {"coast"}, options).value();
}

OwnerReport report_on(const Scenario& scenario) {
  return owner_report(answers_to(scenario), {{"forty.json", "{\n  \"acres\": 40\n}\n"}});
}

Scenario stated_beside() {
  Scenario scenario = by_hand::tract(15);
  scenario.regimes = {stated("cut at 25", {{}, age(25)})};
  return scenario;
}

std::vector<std::string> titles_of(const OwnerReport& report) {
  std::vector<std::string> titles;
  for (const Section& section : report.sections) titles.push_back(section.title);
  return titles;
}

bool has(const std::vector<std::string>& titles, const std::string& title) {
  return std::ranges::find(titles, title) != titles.end();
}

TEST_CASE("the options of a report are those that the advice speaks of and the plan first") {
  const StandAnswers answers = answers_to(stated_beside());
  REQUIRE(answers.options.size() >= 4);
  CHECK_THAT(answers.options.front().name, StartsWith("the plan ("));
  CHECK(answers.options.front().loss_against_best == dollars_per_acre(0));
  CHECK(answers.options.back().name == "yours: cut at 25");
  const MoneyPerAcre best = answers.advice.best.value.objective;
  for (const OwnerOption& option : answers.options) {
    CAPTURE(option.name);
    CHECK(option.report.name == option.name);
    CHECK((best - option.report.value.objective).in(dollars_per_acre) ==
          Approx(option.loss_against_best.in(dollars_per_acre)).margin(1e-9));
  }
}

TEST_CASE("the map and the line of values hold the best plan and nothing worth more") {
  for (const auto& scenario : {by_hand::tract(), by_hand::tract(15)}) {
    const StandAnswers answers = answers_to(scenario);
    const Regime& plan = answers.advice.best_plan.regime;
    const MoneyPerAcre best = answers.advice.best.value.objective;
    bool ends = false, starts = plan.thinnings.empty();
    REQUIRE(answers.by_final_age);
    for (const ValueByFinalAge::At& at : answers.by_final_age->ages) {
      if (!at.best) continue;
      CHECK(at.best->regime.final_harvest == at.final_harvest);
      CHECK(at.best->value.objective <= best);
      if (at.unthinned) CHECK(at.unthinned->value.objective <= at.best->value.objective);
      ends = ends || (at.final_harvest == plan.final_harvest && at.best->value.objective == best);
    }
    REQUIRE(answers.first_thinning_map);
    const ValueMap& map = *answers.first_thinning_map;
    REQUIRE(map.cells.size() == map.removals.size());
    for (std::size_t row = 0; row < map.cells.size(); ++row) {
      REQUIRE(map.cells[row].size() == map.ages.size());
      for (std::size_t column = 0; column < map.ages.size(); ++column) {
        const auto& cell = map.cells[row][column];
        if (!cell) continue;
        const Thinning& first = cell->regime.thinnings.front();
        CHECK(first.at == map.ages[column]);
        CHECK(first.removal_fraction == map.removals[row]);
        CHECK(cell->value.objective <= best);
        starts = starts || (cell->value.objective == best && first.at == plan.thinnings[0].at);
      }
    }
    CHECK(ends);
    CHECK(starts);
  }
}

TEST_CASE("a report begins with what to do and what it earns and ends with next month") {
  const OwnerReport report = report_on(by_hand::tract(15));
  std::vector<std::string> headings;
  for (const AnswerGroup& group : report.answer) headings.push_back(group.heading);
  CHECK(headings == std::vector<std::string>{"What to do", "When, and what it brings",
                                             "What it earns", "What could go wrong", "Next month"});
  CHECK(report.key_figures.size() == 3);
  CHECK(report.subject == "40 acres of pine, 15 years old");
}

TEST_CASE("every figure of a report has a table under it and says what it shows") {
  for (const auto& scenario : {by_hand::tract(), stated_beside()}) {
    const OwnerReport report = report_on(scenario);
    std::size_t figures = 0;
    for (const Section& section : report.sections) {
      for (const Figure& figure : section.figures) {
        CAPTURE(figure.title);
        ++figures;
        CHECK_FALSE(figure.table.rows.empty());
        CHECK(figure.title.size() > 10);
        CHECK(figure.description.size() > figure.title.size());
        for (const auto& row : figure.table.rows) {
          CHECK(row.size() == figure.table.columns.size());
        }
      }
    }
    CHECK(figures >= 6);
  }
}

TEST_CASE("the blocks of a scenario choose the sections") {
  const std::vector<std::string> plain = titles_of(report_on(by_hand::tract(15)));
  CHECK(has(plain, "How the stand grows"));
  CHECK(has(plain, "When to make the final harvest"));
  CHECK(has(plain, "What waiting earns"));
  CHECK_FALSE(has(plain, "Storms"));
  CHECK_FALSE(has(plain, "Other prices and rates"));
  CHECK_FALSE(has(titles_of(report_on(by_hand::tract())), "What waiting earns"));
  Scenario more = by_hand::tract(15);
  more.tax = TaxRules{};
  more.vary = VaryQuestion{};
  more.vary->rates = {more.costs.rate};
  more.vary->price_scenarios = {{"low", {dollars_per_ton(15), dollars_per_ton(5)}, 1.0}};
  const std::vector<std::string> titles = titles_of(report_on(more));
  CHECK(has(titles, "Other prices and rates"));
  CHECK(has(titles, "Before and after federal tax"));
}

TEST_CASE("every writer shows every caution and the files to make the report again") {
  const OwnerReport report = report_on(by_hand::tract(15));
  for (const std::string& caution : standing_cautions()) {
    CHECK_THAT(to_html(report), Contains(escape::markup(caution)));
    CHECK_THAT(to_markdown(report), Contains(escape::markdown(caution)));
    CHECK_THAT(to_text(report), Contains(caution.substr(0, 30)));
  }
  CHECK_THAT(to_html(report),
             Contains("<pre tabindex=\"0\">{\n  &quot;acres&quot;: 40\n}\n</pre>"));
  CHECK_THAT(to_markdown(report), Contains("```\n{\n  \"acres\": 40\n}\n```\n"));
  CHECK_THAT(to_text(report), Contains("forty.json:\n\n  {\n    \"acres\": 40\n  }\n"));
}

TEST_CASE("a summary has twelve lines at most and none wraps") {
  for (const auto& scenario : {by_hand::tract(), by_hand::tract(15), by_hand::tract(30)}) {
    const std::vector<std::string> lines = lines_of(summary_text(report_on(scenario)));
    CHECK(lines.size() <= 12);
    CHECK(lines.size() >= 8);
    for (const std::string& line : lines) CHECK(width_of(line) <= text_width);
  }
  CHECK_THAT(summary_text(report_on(by_hand::tract(15))), Contains("registered forester"));
}

TEST_CASE("the same answers give the same bytes on any number of threads") {
  const Scenario scenario = stated_beside();
  StandAnswersOptions many;
  many.threads = 3;
  const OwnerReport one = report_on(scenario);
  const OwnerReport three = owner_report(answer_stand(scenario, {"coast"}, many).value(),
                                         {{"forty.json", "{\n  \"acres\": 40\n}\n"}});
  CHECK(to_html(one) == to_html(three));
  CHECK(to_markdown(one) == to_markdown(three));
  CHECK(to_text(one) == to_text(three));
}

constexpr const char* hostile = "</title></svg><script>alert(\"1\")</script>|`*# &lt;";

TEST_CASE("markup in what the owner typed is never markup") {
  Scenario scenario = stated_beside();
  scenario.title = scenario.owner = scenario.prepared_by = scenario.purpose = hostile;
  scenario.regimes[0].name = hostile;
  scenario.questions = {hostile};
  OwnerReport report = owner_report(answers_to(scenario), {{hostile, hostile}});
  const std::string page = to_html(report);
  CHECK_THAT(page, !Contains("<script") && !Contains("&lt;\n") && Contains("&amp;lt;"));
  CHECK_THAT(page, Contains("&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;"));
  CHECK(occurrences(page, "<title>") == 1);
  const std::string markdown = to_markdown(report);
  // Inside the fence the file stands as it is.
  const std::string before_files = markdown.substr(0, markdown.find("```"));
  CHECK_THAT(before_files, Contains("\\<script\\>"));
  CHECK(std::ranges::count(before_files, '<') == occurrences(before_files, "\\<"));
  // A bar in a cell would begin another.
  for (const std::string& line : lines_of(before_files)) {
    if (line.starts_with("| yours")) CHECK_THAT(line, Contains("\\|\\`\\*# &amp;lt;"));
  }
}

TEST_CASE("signs that spreadsheets and mail take for formulas or lists stay words") {
  for (const char* sign : {"=1+1", "+1", "-1", "@SUM(A1)"}) {
    CAPTURE(sign);
    Scenario scenario = by_hand::tract(15);
    scenario.title = scenario.owner = sign;
    const OwnerReport report = report_on(scenario);
    CHECK_THAT(to_html(report), Contains("<h1>" + std::string(sign) + "</h1>"));
    CHECK_THAT(to_html(report), Contains("Owner: " + std::string(sign) + "</p>"));
    CHECK_THAT(to_text(report), StartsWith(std::string(sign) + "\n"));
    CHECK_THAT(to_markdown(report), Contains("Owner: " + std::string(sign)));
  }
}

TEST_CASE("a very long name breaks no form of the report") {
  Scenario scenario = stated_beside();
  scenario.title = scenario.owner = std::string(5000, 'x');
  scenario.regimes[0].name = std::string(5000, 'y');
  const OwnerReport report = report_on(scenario);
  CHECK_THAT(to_html(report), Contains(std::string(5000, 'x')));
  CHECK(to_html(report).size() < 600000);
  CHECK_THAT(to_text(report), Contains(std::string(5000, 'y')));
  CHECK_THAT(to_markdown(report), Contains(std::string(5000, 'y')));
}

TEST_CASE("a page is whole in itself and names no address but that of its drawings") {
  const std::string page = to_html(report_on(by_hand::tract(15)));
  CHECK_THAT(page, StartsWith("<!doctype html>\n<html lang=\"en\">"));
  CHECK_THAT(page, !Contains("<script") && !Contains("<link") && !Contains("<img") &&
                       !Contains("@import") && !Contains(" src="));
  std::string rest = page;
  const std::string drawings = "http://www.w3.org/2000/svg";
  for (std::size_t at = rest.find(drawings); at != std::string::npos; at = rest.find(drawings)) {
    rest.erase(at, drawings.size());
  }
  CHECK_THAT(rest, !Contains("http:") && !Contains("https:"));
  CHECK(page.size() < 600000);
}

}  // namespace
}  // namespace staddle
