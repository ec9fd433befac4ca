// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/plant/compare.h"

#include <catch2/catch.hpp>

#include "plant/plant_fixture.h"
#include "staddle/optimise/solve.h"
#include "support/near.h"
#include "support/seed.h"

namespace staddle::plant_tests {
namespace {

double value_of(const AlternativeAnswer& answer) { return answer.worth_usd_ac(); }

// What the land alone says of one way.
double solved(const Land& land, const EstablishmentAlternative& alternative) {
  return solve(land.stand(alternative)).best.value.objective.in(dollars_per_acre);
}

PlantSolution compared(const Land& land) {
  PlantOptions options;
  options.break_evens = false;
  return compare_establishments(land.problem(), options);
}

double between(RandomStream& random, double low, double high) {
  return low + (high - low) * random.next_uniform();
}

EstablishmentAlternative random_way(RandomStream& random, const Land& land, int number) {
  EstablishmentAlternative alternative =
      way("way " + std::to_string(number), between(random, 350, 900), between(random, 100, 450),
          between(random, 0, 4));
  if (random.next_uniform() < 0.3) alternative.site_index_shift = feet(between(random, -6, 6));
  if (land.equations.hardwood_per_percent && random.next_uniform() < 0.5) {
    alternative.response.hardwood_percent = between(random, 0, 40);
  }
  if (random.next_uniform() < 0.3) {
    alternative.planted = trees_per_acre(between(random, 2000, 4000));
    alternative.response.precommercial =
        PrecommercialThinning{age(4), trees_per_acre(between(random, 400, 800))};
    alternative.practices.push_back({"thinning", age(4), dollars_per_acre(150)});
  }
  return alternative;
}

Land random_land(RandomStream& random, int ways) {
  Land land = random.next_uniform() < 0.5 ? coastal_land() : upland_land();
  land.site_index = feet(between(random, 55, 85));
  if (random.next_uniform() < 0.5) land.lattice.guards = {};
  for (int i = 0; i < ways; ++i) land.alternatives.push_back(random_way(random, land, i));
  return land;
}

}  // namespace

TEST_CASE("each way is worth what a search of its own problem finds and all regimes valued agree") {
  const support::TaggedSeed seed("ways to plant");
  for (std::uint64_t number = 0; number < 20; ++number) {
    CAPTURE(number);
    RandomStream random = seed.stream(number);
    const Land land = random_land(random, 4);
    const PlantSolution fast = compared(land);
    PlantOptions plain;
    plain.exhaustive = true;
    plain.break_evens = false;
    const PlantSolution slow = compare_establishments(land.problem(), plain);
    REQUIRE(fast.ranking == slow.ranking);
    for (std::size_t i = 0; i < 4; ++i) {
      CHECK(value_of(fast.alternatives[i]) == solved(land, land.alternatives[i]));
      CHECK(value_of(fast.alternatives[i]) == value_of(slow.alternatives[i]));
      CHECK(fast.alternatives[i].best->regime.final_harvest ==
            slow.alternatives[i].best->regime.final_harvest);
    }
  }
}

TEST_CASE("ways are ranked by value and each tells what the next better one is worth") {
  Land land = coastal_land();
  land.alternatives = {way("dear", 600, 500), way("cheap", 600, 200), way("middling", 600, 300)};
  const PlantSolution solution = compared(land);
  REQUIRE(solution.ranking == std::vector<std::size_t>{1, 2, 0});
  CHECK(solution.alternatives[1].rank == 1u);
  CHECK(solution.alternatives[1].loss_against_best == dollars_per_acre(0));
  CHECK_FALSE(solution.alternatives[1].next_better);
  CHECK(solution.alternatives[0].next_better == 2u);
  const double gain = value_of(solution.alternatives[2]) - value_of(solution.alternatives[0]);
  CHECK(solution.alternatives[0].gain_of_next_better->in(dollars_per_acre) == gain);
  CHECK(gain > 200.0);
}

TEST_CASE("ways that tie stand in the order of the file") {
  Land land = coastal_land();
  land.alternatives = {way("first", 600, 250), way("again", 600, 250), way("better", 600, 249)};
  CHECK(compared(land).ranking == std::vector<std::size_t>{2, 0, 1});
}

TEST_CASE("a way that costs more and gains less never wins") {
  const support::TaggedSeed seed("dominated ways");
  for (std::uint64_t number = 0; number < 30; ++number) {
    CAPTURE(number);
    RandomStream random = seed.stream(number);
    Land land = random_land(random, 3);
    EstablishmentAlternative worse = land.alternatives[0];
    worse.name = "worse";
    worse.practices.push_back({"more", age(0), dollars_per_acre(between(random, 1, 100))});
    worse.response.years_gained -= 0.5 * (1.0 + static_cast<double>(random.next_below(4)));
    land.alternatives.insert(land.alternatives.begin(), worse);
    const PlantSolution solution = compared(land);
    CHECK(solution.ranking.front() != 0);
    CHECK(*solution.alternatives[0].rank > *solution.alternatives[1].rank);
  }
}

TEST_CASE("a better response for nothing never lowers the value") {
  const support::TaggedSeed seed("free responses");
  for (std::uint64_t number = 0; number < 40; ++number) {
    RandomStream random = seed.stream(number);
    const Land land = random_land(random, 1);
    EstablishmentAlternative years = land.alternatives[0], site = land.alternatives[0];
    double by_years = solved(land, years), by_site = by_years;
    for (int step = 1; step <= 4; ++step) {
      CAPTURE(number, step);
      years.response.years_gained += 0.5;
      site.site_index_shift += feet(1);
      const double more_years = solved(land, years), better_site = solved(land, site);
      CHECK(more_years >= by_years);
      CHECK(better_site >= by_site);
      by_years = more_years;
      by_site = better_site;
    }
  }
}

TEST_CASE("hardwoods only ever lower the value") {
  Land land = upland_land();
  EstablishmentAlternative alternative = way("sweetgum", 600, 250);
  double before = solved(land, alternative);
  for (const double percent : {5.0, 15.0, 40.0}) {
    alternative.response.hardwood_percent = percent;
    const double after = solved(land, alternative);
    CHECK(after < before);
    before = after;
  }
}

TEST_CASE("at its break-even a way is worth what the best one is") {
  Land land = coastal_land();
  land.alternatives = {way("bare", 600, 200), way("sprayed", 600, 330, 2.5),
                       way("taller", 600, 300)};
  land.alternatives[2].site_index_shift = feet(2);
  const PlantSolution solution = compare_establishments(land.problem());
  REQUIRE(solution.ranking.size() == 3);
  for (std::size_t place = 0; place < 3; ++place) {
    const AlternativeAnswer& answer = solution.alternatives[solution.ranking[place]];
    CAPTURE(answer.alternative.name);
    REQUIRE(answer.break_even);
    REQUIRE(answer.break_even->value);
    EstablishmentAlternative other = answer.alternative;
    if (answer.break_even->key == "years_gained") {
      other.response.years_gained = *answer.break_even->value;
    } else {
      CHECK(answer.alternative.name == "taller");
      other.site_index_shift = feet(*answer.break_even->value);
    }
    const std::size_t rival = solution.ranking[place == 0 ? 1 : 0];
    CHECK(solved(land, other) ==
          support::within(value_of(solution.alternatives[rival]), support::half_cent));
    CHECK((*answer.break_even->value > answer.break_even->today) == (place != 0));
  }
}

TEST_CASE("a break-even beyond what a way may claim has a reason instead of a value") {
  Land land = coastal_land();
  land.alternatives = {way("cheap", 600, 100), way("absurd", 600, 5000)};
  const PlantSolution solution = compare_establishments(land.problem());
  REQUIRE(solution.alternatives[1].break_even);
  CHECK_FALSE(solution.alternatives[1].break_even->value);
  CHECK(solution.alternatives[1].break_even->reason ==
        "still worth less than the other at 10.0 years");
}

TEST_CASE("the only way has no break-even and says why") {
  Land land = coastal_land();
  land.alternatives = {way("only", 600, 250)};
  const PlantSolution solution = compare_establishments(land.problem());
  REQUIRE(solution.alternatives[0].break_even);
  CHECK(solution.alternatives[0].break_even->reason == "there is no other alternative to equal");
}

TEST_CASE("a limit that leaves no regime is the reason of an alternative without a rank") {
  Land land = coastal_land();
  land.alternatives = {way("only", 600, 250)};
  land.lattice.final_from = age(46);
  const PlantSolution solution = compare_establishments(land.problem());
  CHECK(solution.ranking.empty());
  CHECK_FALSE(solution.alternatives[0].best);
  CHECK_FALSE(solution.alternatives[0].shut);
  CHECK(solution.alternatives[0].reason.find("final-harvest age") != std::string::npos);
}

TEST_CASE("storms lower every way and tall ways keep their rank by the same search") {
  Land land = coastal_land();
  land.alternatives = {way("bare", 600, 200), way("sprayed", 600, 330, 2.5)};
  const PlantSolution calm = compared(land);
  Peril gale;
  gale.name = "gale";
  gale.annual_probability = 0.01;
  gale.constant_share = 0.5;
  land.hazard.perils = {gale};
  const PlantSolution stormy = compared(land);
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(value_of(stormy.alternatives[i]) < value_of(calm.alternatives[i]));
    CHECK(value_of(stormy.alternatives[i]) == solved(land, land.alternatives[i]));
  }
}

TEST_CASE("what leans beyond the studies is told") {
  Land land = coastal_land();
  land.alternatives = {way("thick", 3000, 100), way("bold", 600, 100, 6.0)};
  const PlantSolution solution = compared(land);
  const auto tells = [&](std::size_t i, const std::string& what) {
    for (const Extrapolation& far : solution.alternatives[i].extrapolations) {
      if (far.what == what) return true;
    }
    return false;
  };
  CHECK(tells(0, "planted_tpa"));
  CHECK_FALSE(tells(1, "planted_tpa"));
  CHECK(tells(1, "years_gained"));
  CHECK_FALSE(tells(0, "years_gained"));
}

TEST_CASE("taxes leave the order and tell the same losses after them") {
  Land land = coastal_land();
  land.alternatives = {way("bare", 600, 200), way("sprayed", 600, 330, 2.5)};
  const PlantSolution before = compared(land);
  land.tax = TaxRules{};
  const PlantSolution taxed = compared(land);
  CHECK(taxed.ranking == before.ranking);
  const auto after = [&](std::size_t i) { return *taxed.alternatives[i].after_tax; };
  const std::size_t best = taxed.ranking[0], second = taxed.ranking[1];
  CHECK(after(second).loss_against_best ==
        after(best).plan.value.objective - after(second).plan.value.objective);
  CHECK(after(second).establishment < taxed.alternatives[second].establishment);
}

TEST_CASE("the number of threads changes no figure") {
  Land land = coastal_land();
  land.alternatives = {way("bare", 600, 200), way("sprayed", 600, 330, 2.5), way("few", 400, 180)};
  PlantOptions one, four;
  one.threads = 1;
  four.threads = 4;
  const PlantSolution a = compare_establishments(land.problem(), one);
  const PlantSolution b = compare_establishments(land.problem(), four);
  CHECK(a.ranking == b.ranking);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(value_of(a.alternatives[i]) == value_of(b.alternatives[i]));
    CHECK(a.alternatives[i].break_even->value == b.alternatives[i].break_even->value);
  }
}

}  // namespace staddle::plant_tests
