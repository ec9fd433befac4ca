// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/svg.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>

#include "report/escape.h"
#include "report/scale.h"
#include "staddle/base/contract.h"
#include "support/text.h"

namespace staddle {
namespace {

using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using support::occurrences;

LineChart lines() {
  LineChart chart;
  chart.x = {"year", true, false};
  chart.y = {"dollars an acre", false, true};
  chart.series = {
      {"the plan", {FigurePoint{2027, 100}, FigurePoint{2030, 250}}},
      {"another",
       {FigurePoint{2027, 50}, FigurePoint{2028, 60}, std::nullopt, FigurePoint{2030, 90}},
       true}};
  chart.marks = {{2028, "thinning, 2028"}, {2029, "thinning, 2029"}};
  chart.band = LineChart::Band{200, 250, "as good"};
  return chart;
}

BarChart bars(BarChart::Direction direction) {
  BarChart chart;
  chart.direction = direction;
  chart.categories = {"one", "two"};
  chart.value = {"dollars", false, true};
  chart.series = {{"in", {30.0, 12.5}, {"$30", "$15"}}, {"out", {-10.0, std::nullopt}, {}}};
  return chart;
}

HeatMap map() {
  HeatMap drawing;
  drawing.columns = {"2027", "2028"};
  drawing.rows = {"20 %", "33 %"};
  drawing.values = {{100.0, 110.0}, {std::nullopt, 120.0}};
  drawing.best = HeatMap::Place{1, 1};
  drawing.within = 15.0;
  drawing.within_name = "within $15 of it";
  return drawing;
}

template <class Drawing>
Figure figure(Drawing drawing) {
  return {"Title", "What it shows.", std::move(drawing), {}};
}

std::vector<Figure> one_of_each() {
  return {figure(lines()), figure(bars(BarChart::Direction::upright)),
          figure(bars(BarChart::Direction::lying)), figure(map())};
}

TEST_CASE("every figure is an image with a title and a description of its own") {
  for (const Figure& drawn : one_of_each()) {
    const std::string svg = to_svg(drawn, "f7");
    CHECK_THAT(svg, StartsWith("<svg "));
    CHECK_THAT(svg, Contains("role=\"img\" aria-labelledby=\"f7-title f7-desc\""));
    CHECK_THAT(svg, Contains("<title id=\"f7-title\">Title</title>"));
    CHECK_THAT(svg, Contains("<desc id=\"f7-desc\">What it shows.</desc>"));
  }
}

TEST_CASE("no id of a figure can be one of another figure") {
  for (const Figure& drawn : one_of_each()) {
    const std::string svg = to_svg(drawn, "f7");
    CHECK(occurrences(svg, " id=\"") == occurrences(svg, " id=\"f7-"));
    CHECK(occurrences(svg, "url(#") == occurrences(svg, "url(#f7-"));
  }
}

TEST_CASE("no element of a figure leans on a style sheet") {
  for (const Figure& drawn : one_of_each()) {
    const std::string svg = to_svg(drawn, "f");
    CHECK_THAT(svg, !Contains("class=") && !Contains("style"));
    CHECK(occurrences(svg, "<polyline") == occurrences(svg, "fill=\"none\" stroke=\"#"));
    CHECK(occurrences(svg, "<text") == occurrences(svg, "font-family="));
  }
}

TEST_CASE("the same figure gives the same bytes") {
  for (const Figure& drawn : one_of_each()) CHECK(to_svg(drawn, "f") == to_svg(drawn, "f"));
}

TEST_CASE("series differ by dash or hatch and not by colour alone") {
  CHECK(occurrences(to_svg(figure(lines()), "f"), "stroke-dasharray=\"8 4\"") >= 2);
  CHECK(occurrences(to_svg(figure(bars(BarChart::Direction::lying)), "f"), "url(#f-s1)") == 2);
}

TEST_CASE("a point left out breaks its line") {
  LineChart chart = lines();
  chart.series.resize(1);
  chart.series[0].points = {FigurePoint{2027, 1}, FigurePoint{2028, 2}, std::nullopt,
                            FigurePoint{2029, 3}, FigurePoint{2030, 4}};
  CHECK(occurrences(to_svg(figure(chart), "f"), "<polyline") == 2);
}

TEST_CASE("a map shows what is not allowed and what is as good as the best") {
  const std::string svg = to_svg(figure(map()), "f");
  CHECK_THAT(svg, Contains("not allowed") && Contains("the best") && Contains("within $15 of it"));
  // Legend and two cells: 110 and 120 are within 15 of 120, 100 is not.
  CHECK(occurrences(svg, "r=\"3.5\" fill=\"#ffffff\"") == 3);
}

TEST_CASE("markup in the words of a figure stays words") {
  BarChart chart = bars(BarChart::Direction::lying);
  chart.categories[0] = "</svg><script>alert(1)</script>";
  chart.series[0].labels[0] = "\"'&";
  const std::string svg = to_svg(figure(chart), "f");
  CHECK_THAT(svg, !Contains("<script") && Contains("&lt;/svg&gt;"));
  CHECK_THAT(svg, Contains("&quot;&#39;&amp;"));
}

TEST_CASE("a name longer than the figure is cut between letters") {
  BarChart chart = bars(BarChart::Direction::lying);
  chart.categories[0].clear();
  for (int i = 0; i < 500; ++i) chart.categories[0] += "\xC3\xA9";
  const std::string svg = to_svg(figure(chart), "f");
  CHECK_THAT(svg, Contains("\xC3\xA9...</text>"));
  CHECK(svg.size() < 10000);
}

TEST_CASE("a figure of nothing or of no finite numbers is a broken promise") {
  CHECK_THROWS_AS(to_svg(figure(LineChart{}), "f"), ContractViolation);
  CHECK_THROWS_AS(to_svg(figure(BarChart{}), "f"), ContractViolation);
  CHECK_THROWS_AS(to_svg(figure(HeatMap{}), "f"), ContractViolation);
  LineChart chart = lines();
  chart.series[0].points[0]->y = std::numeric_limits<double>::infinity();
  CHECK_THROWS_AS(to_svg(figure(chart), "f"), ContractViolation);
}

TEST_CASE("a scale ends at round ticks that enclose its numbers") {
  const Scale scale = round_scale(3.0, 97.0, 5);
  CHECK(scale.low == 0.0);
  CHECK(scale.high == 100.0);
  CHECK(scale.ticks() == std::vector<double>{0, 20, 40, 60, 80, 100});
  CHECK(round_scale(-10.0, 30.0, 4).ticks() == std::vector<double>{-10, 0, 10, 20, 30});
  CHECK(round_scale(5.0, 5.0, 4).low < 5.0);
  CHECK(round_scale(0.0, 0.0, 4).high > 0.0);
}

TEST_CASE("a scale never has more spaces than asked for and a few at least") {
  for (double low = -3.0; low <= 3.0; low += 0.7) {
    for (double span = 0.01; span < 2e6; span *= 3.1) {
      CAPTURE(low, span);
      const Scale scale = round_scale(low, low + span, 6);
      CHECK(scale.low <= low + 1e-6 * span);
      CHECK(scale.high >= low + span - 1e-6 * span);
      CHECK(scale.ticks().size() >= 3);
      CHECK(scale.ticks().size() <= 9);  // each end may be widened by a space
    }
  }
}

TEST_CASE("years are written plainly and money with separators") {
  CHECK(tick_text(2030, 5, true) == "2030");
  CHECK(tick_text(2000, 500, false) == "2,000");
  CHECK(tick_text(0.25, 0.05, false) == "0.25");
  CHECK(tick_text(-40, 20, false) == "-40");
}

TEST_CASE("text of a user stays text in markup and in Markdown") {
  CHECK(escape::markup("<b>&\"'") == "&lt;b&gt;&amp;&quot;&#39;");
  CHECK(escape::markup("a\nb\x01") == "a b ");
  CHECK(escape::markdown("*a* [b](c) <d> `e` |f| _g_ \\h") ==
        "\\*a\\* \\[b\\](c) \\<d\\> \\`e\\` \\|f\\| \\_g\\_ \\\\h");
  CHECK(escape::markdown_within("-48.0 |") == "-48.0 \\|");
  CHECK(escape::markdown("48.0 acres") == "48\\.0 acres");
  CHECK(escape::markdown("") == "");
  CHECK(escape::markdown("# a") == "\\# a");
  CHECK(escape::markdown("  - a") == "  \\- a");
  CHECK(escape::markdown("12. a") == "12\\. a");
  CHECK(escape::markdown("a 12. b # - +") == "a 12. b # - +");
  CHECK(escape::markdown("=SUM(A1)") == "\\=SUM(A1)");
  CHECK(escape::markdown("&lt;") == "&amp;lt;");
  CHECK(escape::one_line("a\r\n\tb\x7F") == "a   b ");
}

}  // namespace
}  // namespace staddle
