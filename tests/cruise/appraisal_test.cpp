// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/cruise/appraisal.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "cruise/tally_fixture.h"
#include "staddle/base/contract.h"
#include "staddle/regime/simulate.h"
#include "support/loblolly_equations.h"
#include "support/near.h"

namespace staddle {
namespace {

using cruise_test::points_with;
using cruise_test::problem_of;
using cruise_test::tree;
using support::relative;
using support::round_off;
using support::within;

double ft2(BasalArea area) { return area.in(square_feet_per_acre); }
double tpa(TreeDensity trees) { return trees.in(trees_per_acre); }

PriceList prices() {
  return {{dollars_per_ton(25), 1.0, {}, {}},
          {dollars_per_ton(18), 1.0, {}, {}},
          {dollars_per_ton(7), 1.0, {}, {}}};
}

// Twelve tenth-acre plots of an invented stand: diameters 4 to 13 in, heights measured.
AppraisalProblem whole_problem() {
  Tally tally{PlotDesign::fixed_area(acres(0.1)), {}, {}};
  for (int i = 0; i < 12; ++i) {
    Plot plot{std::to_string(i), "", {}};
    for (int j = 0; j < 36 + i % 5; ++j) {
      const double dbh_in = 4 + 0.25 * ((7 * j + 5 * i) % 36);
      plot.trees.push_back(tree(dbh_in, 4.5 + std::exp(4.2 - 2.0 / dbh_in)));
      plot.trees.back().live_crown_ratio = 0.38;
    }
    tally.plots.push_back(plot);
  }
  AppraisalProblem problem = problem_of(tally);
  problem.at = age(18);
  problem.growth = support::coastal_loblolly();
  problem.prices = prices();
  return problem;
}

std::string reason_of(const Appraisal& appraisal, const std::string& key) {
  for (const MissingFigure& missing : appraisal.missing) {
    if (missing.key == key) return missing.reason;
  }
  return "";
}

double tons_of_rows(const Appraisal& appraisal, std::size_t product) {
  double sum = 0.0;
  for (const StandTableRow& row : appraisal.stand_table) {
    sum += row.tons[product].in(tons_per_acre);
  }
  return sum;
}

TEST_CASE("the count of trees that are in times the factor is the basal area") {
  const Appraisal appraisal = appraise(problem_of(points_with({8, 12, 10})));
  CHECK(ft2(appraisal.basal_area.mean) == relative(100, round_off));
  CHECK(ft2(*appraisal.basal_area.standard_error) == within(11.547, 0.0005));
  CHECK(*appraisal.basal_area.coefficient_of_variation == relative(0.2, round_off));
  CHECK(appraisal.quadratic_mean_diameter->in(inches) == relative(8, round_off));
  CHECK(appraisal.mean_diameter->in(inches) == relative(8, round_off));
}

TEST_CASE("a plot without trees counts") {
  const Appraisal appraisal = appraise(problem_of(points_with({12, 12, 0})));
  CHECK(ft2(appraisal.basal_area.mean) == relative(80, round_off));
  CHECK(appraisal.plots == 3);
  CHECK(appraisal.plots_without_trees == 1);
}

TEST_CASE("plots without any tree have no diameter and say why") {
  const Appraisal appraisal = appraise(problem_of(points_with({0, 0, 0})));
  CHECK(ft2(appraisal.basal_area.mean) == 0);
  CHECK_FALSE(appraisal.quadratic_mean_diameter);
  CHECK_FALSE(appraisal.dominant_height);
  CHECK_FALSE(appraisal.plots_needed);
  CHECK_FALSE(appraisal.basal_area.coefficient_of_variation);
  for (const char* key : {"qmd_in", "dominant_height_ft", "plots_needed", "tons_ac"}) {
    CHECK_FALSE(reason_of(appraisal, key).empty());
  }
  CHECK(appraisal.readiness.judgement == SignVerdict::not_yet);
}

TEST_CASE("a single plot shows no variation and says so") {
  const Appraisal appraisal = appraise(problem_of(points_with({11})));
  CHECK_FALSE(appraisal.basal_area.standard_error);
  CHECK_FALSE(appraisal.basal_area.interval_90);
  CHECK_FALSE(appraisal.plots_needed);
  CHECK_FALSE(reason_of(appraisal, "standard_error").empty());
}

TEST_CASE("strata weigh by their acres and without acres by their plots") {
  Tally tally = points_with({10, 10, 10, 20});
  for (int i = 0; i < 3; ++i) tally.plots[static_cast<std::size_t>(i)].stratum = "a";
  tally.plots[3].stratum = "b";
  const Appraisal by_plots = appraise(problem_of(tally));
  CHECK(ft2(by_plots.basal_area.mean) == relative(125, round_off));
  CHECK(by_plots.assumed.size() == 2);
  tally.strata = {{"a", acres(10)}, {"b", acres(30)}};
  const Appraisal by_acres = appraise(problem_of(tally));
  CHECK(ft2(by_acres.basal_area.mean) == relative(175, round_off));
  CHECK(by_acres.assumed.empty());
  CHECK(ft2(by_acres.strata[1].mean_basal_area) == relative(200, round_off));
  CHECK_FALSE(by_acres.basal_area.standard_error);
}

TEST_CASE("where some strata have acres they share what the plots of the others leave") {
  Tally tally = points_with({10, 10, 20, 20, 30, 30, 0, 0});
  for (std::size_t i = 0; i < 8; ++i) tally.plots[i].stratum = std::string(1, "abcd"[i / 2]);
  tally.strata = {{"a", acres(10)}, {"b", acres(30)}};
  const Appraisal appraisal = appraise(problem_of(tally));
  const double weights[] = {0.125, 0.375, 0.25, 0.25};
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK(appraisal.strata[i].weight == relative(weights[i], round_off));
  }
}

TEST_CASE("the stand table adds up to the stand") {
  const Appraisal appraisal = appraise(whole_problem());
  double trees = 0.0;
  double basal_area = 0.0;
  double money = 0.0;
  for (const StandTableRow& row : appraisal.stand_table) {
    trees += tpa(row.trees);
    basal_area += ft2(row.basal_area);
    money += row.stumpage->in(dollars_per_acre);
  }
  CHECK(trees == relative(tpa(appraisal.trees.mean), round_off));
  CHECK(basal_area == relative(ft2(appraisal.basal_area.mean), round_off));
  CHECK(money == relative(appraisal.stumpage->mean.in(dollars_per_acre), round_off));
  for (std::size_t p = 0; p < 3; ++p) {
    CHECK(tons_of_rows(appraisal, p) ==
          relative((*appraisal.tons)[p].mean.in(tons_per_acre), round_off));
  }
}

TEST_CASE("an inch class reaches from half an inch below to just under half an inch above") {
  Tally tally{
      PlotDesign::fixed_area(acres(1)), {{"1", "", {tree(7.5), tree(8.49), tree(8.5)}}}, {}};
  const Appraisal appraisal = appraise(problem_of(tally));
  REQUIRE(appraisal.stand_table.size() == 2);
  CHECK(appraisal.stand_table[0].dbh_class_in == 8);
  CHECK(tpa(appraisal.stand_table[0].trees) == relative(2, round_off));
  CHECK(appraisal.stand_table[1].dbh_class_in == 9);
}

TEST_CASE("all trees weigh what the total weight equation says of their stand") {
  AppraisalProblem problem = whole_problem();
  // One product that takes all wood of all trees: a limit and a top next to nothing.
  problem.products = {{"all", inches(0.01), inches(0.01), 1.0}};
  problem.prices.reset();
  const Appraisal appraisal = appraise(problem);
  const GrowthModel growth = GrowthModel::from_equations(
      support::coastal_loblolly(), *appraisal.site_index, trees_per_acre(600));
  const double expected =
      Assortment::from_equations(support::coastal_loblolly(), problem.products)
          .tons(growth, age(18), appraisal.trees.mean, appraisal.basal_area.mean)[0]
          .in(tons_per_acre);
  CHECK((*appraisal.tons)[0].mean.in(tons_per_acre) == relative(expected, 1e-9));
  CHECK(*(*appraisal.calibration)[0] == relative(1, 1e-9));
}

TEST_CASE("a single tree is split at the tops of its class and the smallest product") {
  Tally tally{PlotDesign::fixed_area(acres(0.01)),
              {{"1", "", {tree(12, 60), tree(12, 60), tree(12, 60)}}},
              {}};
  AppraisalProblem problem = problem_of(tally);
  problem.at = age(25);
  problem.growth = support::coastal_loblolly();
  const Appraisal appraisal = appraise(problem);
  const auto share = [](double top_in) {
    return std::exp(-1.064132 * std::pow(top_in / 12, 3.818683));
  };
  const auto tons = [&](std::size_t p) { return (*appraisal.tons)[p].mean.in(tons_per_acre); };
  const double total = tons(0) / share(8);
  CHECK(tons(1) == 0);
  CHECK(tons(2) == relative(total * (share(3) - share(8)), round_off));
}

TEST_CASE("the product column outranks the diameter and trees too thin hold no product") {
  Tally tally{PlotDesign::fixed_area(acres(0.1)),
              {{"1", "", {tree(12, 60), tree(4.4, 40), tree(9, 55)}}},
              {}};
  for (TallyTree& each : tally.plots[0].trees) each.product = "pulpwood";
  AppraisalProblem problem = problem_of(tally);
  problem.at = age(25);
  problem.growth = support::coastal_loblolly();
  const Appraisal appraisal = appraise(problem);
  CHECK((*appraisal.tons)[0].mean == tons_per_acre(0));
  CHECK((*appraisal.tons)[1].mean == tons_per_acre(0));
  CHECK((*appraisal.tons)[2].mean > tons_per_acre(0));
  CHECK(appraisal.stand_table.front().tons[2] == tons_per_acre(0));
}

TEST_CASE("what misses the grade falls one product down unless a cruiser judged the tree") {
  Tally tally{PlotDesign::fixed_area(acres(0.1)),
              {{"1", "", {tree(12, 60), tree(12, 60), tree(12, 60)}}},
              {}};
  AppraisalProblem problem = problem_of(tally);
  problem.at = age(25);
  problem.growth = support::coastal_loblolly();
  const auto tons = [&] { return *appraise(problem).tons; };
  const std::vector<Estimate<Yield>> all = tons();
  problem.products[0].grade_fraction = 0.75;
  const std::vector<Estimate<Yield>> graded = tons();
  CHECK(graded[0].mean.in(tons_per_acre) ==
        relative(0.75 * all[0].mean.in(tons_per_acre), round_off));
  CHECK(graded[1].mean.in(tons_per_acre) ==
        relative(0.25 * all[0].mean.in(tons_per_acre), round_off));
  CHECK(graded[2].mean == all[2].mean);
  for (TallyTree& each : problem.tally.plots[0].trees) each.product = "sawtimber";
  CHECK(tons()[0].mean == all[0].mean);
}

TEST_CASE("dominant height is the mean of dominant and codominant trees where classes are given") {
  Tally tally{PlotDesign::fixed_area(acres(0.1)),
              {{"1", "", {tree(9, 62), tree(8, 58), tree(6, 44), tree(12, 50)}}},
              {}};
  auto& trees = tally.plots[0].trees;
  CHECK(appraise(problem_of(tally)).dominant_height->in(feet) == relative(50, round_off));
  trees[0].crown_class = CrownClass::dominant;
  trees[1].crown_class = CrownClass::codominant;
  trees[2].crown_class = CrownClass::intermediate;
  trees[3].crown_class = CrownClass::suppressed;
  CHECK(appraise(problem_of(tally)).dominant_height->in(feet) == relative(60, round_off));
}

TEST_CASE("a dominant tree counts by the trees it stands for") {
  Tally tally{cruise_test::prism(10), {{"1", "", {tree(5, 40), tree(10, 60), tree(10, 60)}}}, {}};
  for (TallyTree& each : tally.plots[0].trees) each.crown_class = CrownClass::dominant;
  // The tree half as thick stands for four times as many.
  CHECK(appraise(problem_of(tally)).dominant_height->in(feet) ==
        relative((4 * 40 + 2 * 60) / 6.0, round_off));
}

TEST_CASE("three measured heights are enough and two are not") {
  Tally tally = points_with({4});
  auto& trees = tally.plots[0].trees;
  trees[0].height.reset();
  const Appraisal enough = appraise(problem_of(tally));
  REQUIRE(enough.height_curve);
  CHECK(enough.height_curve->filled == 1);
  CHECK(enough.dominant_height->in(feet) == relative(55, round_off));
  CHECK(std::any_of(enough.assumed.begin(), enough.assumed.end(), [](const std::string& text) {
    return text.find("1 of 4 heights were not measured") != std::string::npos;
  }));
  trees[1].height.reset();
  AppraisalProblem problem = problem_of(tally);
  problem.at = age(18);
  problem.growth = support::coastal_loblolly();
  const Appraisal few = appraise(problem);
  CHECK_FALSE(few.dominant_height);
  for (const char* key : {"dominant_height_ft", "site_index_ft", "tons_ac", "calibration"}) {
    CHECK(reason_of(few, key) == "fewer than 3 heights were measured");
  }
}

TEST_CASE("heights left out are filled close to what they were") {
  AppraisalProblem problem = whole_problem();
  const Appraisal full = appraise(problem);
  for (Plot& plot : problem.tally.plots) {
    for (std::size_t i = 0; i < plot.trees.size(); ++i) {
      if (i % 3 != 0) plot.trees[i].height.reset();
    }
  }
  const Appraisal part = appraise(problem);
  CHECK(part.height_curve->filled > part.height_curve->measured);
  // The invented heights lie on a curve of the fitted form.
  CHECK(part.dominant_height->in(feet) == relative(full.dominant_height->in(feet), 1e-9));
}

TEST_CASE("a height curve never falls with diameter") {
  Tally tally{cruise_test::prism(10), {{"1", "", {tree(5, 60), tree(8, 55), tree(12, 50)}}}, {}};
  const HeightCurve curve = *appraise(problem_of(tally)).height_curve;
  CHECK(curve.slope_in == 0);
  CHECK(curve.at(inches(5)) == curve.at(inches(20)));
}

TEST_CASE("crown cover is the area of crowns over the ground") {
  Tally tally{PlotDesign::fixed_area(acres(0.1)), {{"1", "", {tree(8), tree(8)}}}, {}};
  auto& trees = tally.plots[0].trees;
  for (TallyTree& each : trees) each.crown_width = feet_across(12);
  const double cover = 20 * 113.09733552923255 / 43560;
  CHECK(*appraise(problem_of(tally)).crown_cover == relative(cover, round_off));
  trees[1].crown_width.reset();
  CHECK(*appraise(problem_of(tally)).crown_cover == relative(cover, round_off));
  trees[0].crown_width.reset();
  CHECK_FALSE(appraise(problem_of(tally)).crown_cover);
}

TEST_CASE("the site index is that of the height curve through the dominant height") {
  const Appraisal appraisal = appraise(whole_problem());
  CHECK(dominant_height(support::coastal_loblolly(), *appraisal.site_index, age(18)).in(feet) ==
        relative(appraisal.dominant_height->in(feet), round_off));
}

TEST_CASE("without model or age or prices the figures that need them are missing with a reason") {
  AppraisalProblem problem = whole_problem();
  SECTION("no model") {
    problem.growth = std::monostate{};
    CHECK(reason_of(appraise(problem), "tons_ac").find("model") != std::string::npos);
  }
  SECTION("no age") {
    problem.at.reset();
    CHECK(reason_of(appraise(problem), "site_index_ft").find("age") != std::string::npos);
  }
  SECTION("no prices") {
    problem.prices.reset();
    CHECK(reason_of(appraise(problem), "stumpage_usd_ac").find("prices") != std::string::npos);
    CHECK(appraise(problem).tons);
  }
  const Appraisal appraisal = appraise(problem);
  CHECK_FALSE(appraisal.stumpage);
  for (const StandTableRow& row : appraisal.stand_table) CHECK_FALSE(row.stumpage);
}

TEST_CASE("signs come due when the stand that was measured grows to their limits") {
  AppraisalProblem problem = whole_problem();
  problem.ready_limits[3].due = 175;  // basal area
  problem.ready_limits[3].late = 300;
  const Appraisal appraisal = appraise(problem);
  const SignReading& sign = appraisal.readiness.signs[3];
  REQUIRE(sign.sign == "basal_area_ft2_ac");
  CHECK(*sign.value == relative(ft2(appraisal.basal_area.mean), round_off));
  REQUIRE(sign.verdict == SignVerdict::not_yet);
  REQUIRE(sign.about_age_yr);
  CHECK(*sign.about_age_yr > 18);
  CHECK(appraisal.readiness.judgement == SignVerdict::not_yet);
  CHECK(appraisal.readiness_judgement.find(std::to_string(*sign.about_age_yr)) !=
        std::string::npos);
}

TEST_CASE("without model and age the signs are judged by what was measured") {
  AppraisalProblem problem = whole_problem();
  problem.growth = std::monostate{};
  problem.at.reset();
  const Appraisal appraisal = appraise(problem);
  CHECK(appraisal.readiness.signs.front().sign == "dominant_height_ft");
  CHECK(appraisal.readiness.judgement == SignVerdict::due);
  for (const SignReading& sign : appraisal.readiness.signs) CHECK_FALSE(sign.about_age_yr);
}

TEST_CASE("a height that is not known is no reason to call a stand unready by its height") {
  const Appraisal appraisal = appraise(problem_of([] {
    Tally tally = points_with({14, 15});
    for (Plot& plot : tally.plots) {
      for (TallyTree& each : plot.trees) each.height.reset();
    }
    return tally;
  }()));
  for (const SignReading& sign : appraisal.readiness.signs) {
    if (sign.sign == "dominant_height_ft") CHECK_FALSE(sign.value);
  }
  CHECK(appraisal.readiness_judgement.find("cannot be told") != std::string::npos);
}

TEST_CASE("a tally without a plot and prices that miss a product are refused") {
  CHECK_THROWS_AS(appraise(problem_of(points_with({}))), ContractViolation);
  AppraisalProblem problem = whole_problem();
  problem.prices->pop_back();
  CHECK_THROWS_AS(appraise(problem), ContractViolation);
}

}  // namespace
}  // namespace staddle
