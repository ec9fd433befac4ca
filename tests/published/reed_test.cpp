// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cmath>

#include "staddle/io/scenario_reader.h"
#include "staddle/optimise/solve.h"
#include "staddle/scenario/problems.h"
#include "support/near.h"
#include "support/seed.h"

// Reed 1984, "The effects of the risk of fire on the optimal rotation of a forest",
// J. Environ. Econ. Manage. 11:180: a stand that a total loss may strike every year.
namespace staddle {
namespace {

using support::half_cent;
using support::relative;
using support::TaggedSeed;

// V(t) = scale (1 - exp(-rate t))^shape, $/ac.
struct ValueCurve {
  double scale = 4000, rate = 0.08, shape = 4;
  double at(int age_yr) const { return scale * std::pow(1 - std::exp(-rate * age_yr), shape); }
};

constexpr int last_row_yr = 60;

// The curve as an owner's yield table, whose only product sells at a dollar a ton.
std::string table_of(const ValueCurve& curve) {
  std::string csv = "age_yr,dominant_height_ft,tpa,basal_area_ft2_ac,timber_tons_ac\n";
  for (int at = 1; at <= last_row_yr; ++at) {
    csv += fmt::format("{},{},{},{},{}\n", at, 2 + 1.5 * at, 600 - 5 * at, 2.5 * at, curve.at(at));
  }
  return csv;
}

std::string total_loss(double chance, double damage_share, double salvage, double cleanup_usd_ac) {
  return fmt::format(
      R"({{"perils": [{{"name": "total loss", "annual_probability": {}, "damage_share": {},
           "salvage_share": {}, "cleanup_usd_ac": {}}}]}})",
      chance, damage_share, salvage, cleanup_usd_ac);
}

StandProblem problem_of(const ValueCurve& curve, double rate, double establishment_usd_ac,
                        const std::string& storm) {
  const std::string text = fmt::format(
      R"({{"format": "staddle-scenario/1", "title": "total loss", "acres": 1,
          "stand": {{"yield_table": "value.csv"}},
          "economics": {{"real_discount_rate": {}, "stumpage_usd_per_ton": {{"timber": 1}},
                         "establishment_usd_ac": {}, "annual_cost_usd_ac": 0,
                         "regeneration_delay_yr": 0}},
          "decisions": {{"max_thinnings": 0, "final_harvest_age_yr": [1, {}]}},
          "storm": {}}})",
      rate, establishment_usd_ac, last_row_yr, storm);
  const auto scenario = read_scenario(text, "total_loss.json", [&](const std::string&) {
    return Result<std::string>(table_of(curve));
  });
  if (!scenario) FAIL(to_line(scenario.error().front()));
  return make_problems(*scenario).stand;
}

PricedRegime best_of(const StandProblem& problem,
                     StandOptions::Method method = StandOptions::Method::exhaustive) {
  StandOptions options;
  options.method = method;
  return solve(problem, options).best;
}

double lev(const PricedRegime& priced) { return priced.value.objective.in(dollars_per_acre); }

double between(RandomStream& random, double low, double high) {
  return low + (high - low) * random.next_uniform();
}

// So many times a stand and a rate of discount, drawn.
template <class Check>
void for_random_stands(const std::string& tag, std::uint64_t count, const Check& check) {
  const TaggedSeed seed(tag);
  for (std::uint64_t number = 0; number < count; ++number) {
    CAPTURE(number);
    RandomStream random = seed.stream(number);
    const ValueCurve curve{between(random, 1000, 8000), between(random, 0.05, 0.12),
                           between(random, 2, 6)};
    const double rate = between(random, 0.02, 0.10);
    check(random, curve, rate);
  }
}

}  // namespace

// Ages and land expectation values for V(t) = 4000 (1 - exp(-0.08 t))^4 and planting at
// 300 $/ac, computed from Reed's formula independently of this program.
TEST_CASE("a stand under the risk of total loss is cut and worth as Reed found to the cent") {
  struct Cell {
    int age_yr;
    double lev_usd_ac;
  };
  struct Row {
    double rate;
    std::array<Cell, 6> cells;
  };
  const std::array<std::string, 6> risks = {
      R"({"zone": "none"})",     total_loss(0.005, 1, 0, 0),   total_loss(0.01, 1, 0, 0),
      total_loss(0.02, 1, 0, 0), total_loss(0.02, 1, 0.25, 0), total_loss(0.02, 1, 0.25, 500)};
  const std::array<Row, 4> table = {
      Row{0.04,
          {{{24, 865.20}, {23, 747.25}, {23, 635.79}, {22, 428.83}, {22, 487.78}, {22, 237.78}}}},
      Row{0.05,
          {{{23, 521.97}, {22, 436.74}, {22, 355.57}, {21, 204.29}, {21, 245.45}, {21, 45.45}}}},
      Row{0.06,
          {{{22, 306.75}, {21, 241.81}, {21, 179.97}, {20, 63.70}, {21, 93.82}, {21, -72.85}}}},
      Row{0.08,
          {{{20, 61.36}, {20, 19.75}, {19, -20.43}, {19, -96.09}, {19, -77.75}, {19, -202.75}}}}};
  for (const Row& row : table) {
    for (std::size_t i = 0; i < risks.size(); ++i) {
      INFO("rate " << row.rate << ", " << risks[i]);
      const StandProblem problem = problem_of({}, row.rate, 300, risks[i]);
      for (const auto method :
           {StandOptions::Method::exhaustive, StandOptions::Method::automatic}) {
        const PricedRegime best = best_of(problem, method);
        CHECK(best.regime.final_harvest.whole() == row.cells[i].age_yr);
        CHECK(lev(best) == support::within(row.cells[i].lev_usd_ac, half_cent));
      }
    }
  }
}

TEST_CASE("a risk of total loss acts like a higher rate of discount") {
  // The best age is the riskless one at r' = 1/w - 1, w = v (1 - p), and
  // LEV = LEV(r') (1 - w)/(1 - v).
  for_random_stands("identity of Reed", 100,
                    [](RandomStream& random, const ValueCurve& curve, double rate) {
                      const double chance = between(random, 0.0, 0.05);
                      const double planting = between(random, 50, 500);
                      const double v = 1 / (1 + rate);
                      const double w = v * (1 - chance);
                      const PricedRegime risky =
                          best_of(problem_of(curve, rate, planting, total_loss(chance, 1, 0, 0)));
                      const PricedRegime calm =
                          best_of(problem_of(curve, 1 / w - 1, planting, R"({"zone": "none"})"));
                      CHECK(risky.regime.final_harvest == calm.regime.final_harvest);
                      CHECK(lev(risky) == support::within(lev(calm) * (1 - w) / (1 - v), 1e-6));
                    });
}

TEST_CASE("a loss that leaves nothing never brings the final harvest later") {
  for_random_stands("direction of the harvest", 30,
                    [](RandomStream& random, const ValueCurve& curve, double rate) {
                      const double share = between(random, 0.1, 1.0);
                      int before = last_row_yr;
                      double value_before = HUGE_VAL;
                      for (const double chance : {0.0, 0.005, 0.01, 0.02, 0.04, 0.08}) {
                        const PricedRegime best =
                            best_of(problem_of(curve, rate, 300, total_loss(chance, share, 0, 0)));
                        CHECK(best.regime.final_harvest.whole() <= before);
                        CHECK(lev(best) <= value_before);
                        before = best.regime.final_harvest.whole();
                        value_before = lev(best);
                      }
                    });
}

TEST_CASE("a peril without chance and no zone give the same bits") {
  for (const double rate : {0.04, 0.08}) {
    const StandProblem none = problem_of({}, rate, 300, R"({"zone": "none"})");
    const StandProblem null = problem_of({}, rate, 300, total_loss(0, 1, 0.25, 500));
    REQUIRE(null.stand_case.hazard.active());
    REQUIRE_FALSE(none.stand_case.hazard.active());
    for (int at = 1; at <= last_row_yr; ++at) {
      const RegimeValue a = evaluate(none.stand_case, {{}, age(at)});
      const RegimeValue b = evaluate(null.stand_case, {{}, age(at)});
      CHECK(a.objective == b.objective);
      CHECK(a.net_present_value == b.net_present_value);
      CHECK(a.land_weight == b.land_weight);
    }
  }
}

}  // namespace staddle
