// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <vector>

#include "cruise/tally_fixture.h"
#include "support/seed.h"

// Cruises of invented forests, whose every tree is known.
namespace staddle {
namespace {

struct StandingTree {
  double x_ft, y_ft, dbh_in;
};

// Trees at random on a square, the sides of which meet, so that no plot lies on an edge.
class Forest {
 public:
  Forest(RandomStream& random, double side_ft, double mean_tpa, double mean_dbh_in)
      : side_ft_(side_ft) {
    const double acres = side_ft * side_ft / 43560.0;
    const int trees = static_cast<int>(acres * mean_tpa);
    for (int i = 0; i < trees; ++i) {
      double spread = 0.0;  // of four uniform numbers: bell-shaped, between -1 and 1
      for (int j = 0; j < 4; ++j) spread += (random.next_uniform() - 0.5) / 2.0;
      trees_.push_back({side_ft * random.next_uniform(), side_ft * random.next_uniform(),
                        mean_dbh_in * (1.0 + 0.8 * spread)});
    }
    for (const StandingTree& tree : trees_) {
      basal_area_ft2_ac_ += 0.005454154 * tree.dbh_in * tree.dbh_in / acres;
    }
    tpa_ = static_cast<double>(trees) / acres;
  }

  BasalArea basal_area() const { return square_feet_per_acre(basal_area_ft2_ac_); }
  TreeDensity trees() const { return trees_per_acre(tpa_); }

  // A plot around a random point: trees within reach(dbh) feet.
  template <class Reach>
  Plot plot(RandomStream& random, const std::string& stratum, Reach reach_ft) const {
    Plot plot{"", stratum, {}};
    const double x = side_ft_ * random.next_uniform();
    const double y = side_ft_ * random.next_uniform();
    for (const StandingTree& tree : trees_) {
      if (std::hypot(across(tree.x_ft - x), across(tree.y_ft - y)) <= reach_ft(tree.dbh_in)) {
        plot.trees.push_back(cruise_test::tree(tree.dbh_in));
      }
    }
    return plot;
  }

 private:
  double across(double distance_ft) const { return std::remainder(distance_ft, side_ft_); }

  double side_ft_;
  std::vector<StandingTree> trees_;
  double basal_area_ft2_ac_ = 0.0;
  double tpa_ = 0.0;
};

constexpr int cruises = 400;
constexpr int plots_of_a_cruise = 20;

// A share of 400 cruises lies within three standard errors of its true chance in all but
// three of a thousand seeds; the seed is fixed.
void check_rate(int hits, double chance) {
  const double error = std::sqrt(chance * (1 - chance) / cruises);
  CHECK(static_cast<double>(hits) / cruises == Approx(chance).margin(3 * error));
}

template <class Dimension>
bool holds(const std::optional<Interval<Quantity<Dimension>>>& interval,
           Quantity<Dimension> truth) {
  return interval && interval->low <= truth && truth <= interval->high;
}

TEST_CASE("intervals from point samples hold the true stand as often as they say") {
  const support::TaggedSeed seed("recovery by point samples");
  RandomStream random = seed.stream();
  const Forest forest(random, 500, 320, 8);
  const double factor_ft_per_in = plot_radius_factor_ft_per_in(square_feet_per_acre(10));
  int hits_90 = 0;
  int hits_95 = 0;
  int hits_trees = 0;
  double sum = 0.0;
  for (int cruise = 0; cruise < cruises; ++cruise) {
    Tally tally{cruise_test::prism(10), {}, {}};
    for (int i = 0; i < plots_of_a_cruise; ++i) {
      tally.plots.push_back(
          forest.plot(random, "", [&](double dbh_in) { return factor_ft_per_in * dbh_in; }));
    }
    const Appraisal appraisal = appraise(cruise_test::problem_of(tally));
    hits_90 += holds(appraisal.basal_area.interval_90, forest.basal_area());
    hits_95 += holds(appraisal.basal_area.interval_95, forest.basal_area());
    hits_trees += holds(appraisal.trees.interval_90, forest.trees());
    sum += appraisal.basal_area.mean.in(square_feet_per_acre) / cruises;
  }
  check_rate(hits_90, 0.90);
  check_rate(hits_95, 0.95);
  check_rate(hits_trees, 0.90);
  CHECK(sum == Approx(forest.basal_area().in(square_feet_per_acre)).epsilon(0.01));
}

TEST_CASE("intervals from plots in two strata hold the true tract as often as they say") {
  const support::TaggedSeed seed("recovery by plots in strata");
  RandomStream random = seed.stream();
  const Forest dense(random, 500, 400, 7);
  const Forest open(random, 500, 90, 12);
  constexpr double acres_dense = 30;
  constexpr double acres_open = 10;
  const BasalArea truth = (acres_dense * dense.basal_area() + acres_open * open.basal_area()) /
                          (acres_dense + acres_open);
  constexpr double radius_ft = 26.3;
  int hits = 0;
  for (int cruise = 0; cruise < cruises; ++cruise) {
    Tally tally{PlotDesign::fixed_radius(feet_across(radius_ft)),
                {},
                {{"dense", acres(acres_dense)}, {"open", acres(acres_open)}}};
    for (int i = 0; i < plots_of_a_cruise; ++i) {
      const bool in_dense = i % 2 == 0;
      tally.plots.push_back(
          (in_dense ? dense : open).plot(random, in_dense ? "dense" : "open", [](double) {
            return radius_ft;
          }));
    }
    hits += holds(appraise(cruise_test::problem_of(tally)).basal_area.interval_90, truth);
  }
  check_rate(hits, 0.90);
}

}  // namespace
}  // namespace staddle
