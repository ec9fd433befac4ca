// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>

#include "optimise/candidates.h"
#include "optimise/describe.h"
#include "optimise/random_problem.h"
#include "optimise/search_answer.h"
#include "staddle/base/tolerance.h"
#include "staddle/optimise/regime_pool.h"
#include "support/seed.h"

namespace staddle::support {
namespace {

std::string champion_line(const std::optional<Champion>& champion, const LatticeRules& rules) {
  if (!champion) return "none";
  return describe(regime_of(champion->regime, rules)) + fmt::format(": {:.17g}", champion->value);
}

std::string ages_line(const WindowAges& ages) {
  return fmt::format("first {} to {}, final {} to {}", ages.first_low.value_or(-1),
                     ages.first_high.value_or(-1), ages.final_low, ages.final_high);
}

// Larger lattices than this are drawn again: the baseline values every regime.
constexpr double largest_lattice = 40000;

// Bounds are made from the start, and asked for one of the searches at a time.
void check_pruned(const StandProblem& problem) {
  const CaseKernel kernel(problem.stand_case);
  const LatticeRules rules(problem, kernel);
  if (kernel.growth().from_table() || rules.final_from() > rules.final_to()) return;
  for (const bool by_count : {false, true}) {
    StandOptions options;
    options.windows = true;
    options.by_count = by_count;
    const SearchAnswer plain = answer_exhaustively(kernel, rules, options);
    for (const bool bound_next_cuts : {false, true}) {
      const SearchAnswer pruned = answer_by_vectors(
          kernel, rules, options, {.patience = 0, .bound_next_cuts = bound_next_cuts});
      REQUIRE(pruned.finished);
      REQUIRE(champion_line(pruned.best, rules) == champion_line(plain.best, rules));
      REQUIRE(ages_line(*pruned.windows) == ages_line(*plain.windows));
      for (std::size_t cuts = 0; by_count && cuts < plain.by_count.size(); ++cuts) {
        REQUIRE(champion_line(pruned.by_count[cuts], rules) ==
                champion_line(plain.by_count[cuts], rules));
      }
    }
  }
}

StandSolution solve_by(StandOptions::Method method, const StandProblem& problem) {
  StandOptions options;
  options.method = method;
  options.windows = options.by_count = true;
  return solve(problem, options);
}

void check_twins(const std::string& tag, const ProblemKind& kind, std::size_t lattices) {
  const TaggedSeed seed(tag);
  std::size_t checked = 0;
  for (std::uint64_t number = 0; checked < lattices; ++number) {
    RandomStream random = seed.stream(number);
    const StandProblem problem = random_problem(random, kind);
    StandOptions stopped;
    std::stop_source source;
    source.request_stop();
    stopped.stop = source.get_token();
    if (solve(problem, stopped).certificate.lattice_regimes > largest_lattice) continue;
    ++checked;
    CAPTURE(number);
    const StandSolution plain = solve_by(StandOptions::Method::exhaustive, problem);
    const StandSolution fast = solve_by(StandOptions::Method::automatic, problem);
    REQUIRE(describe(fast) == describe(plain));
    REQUIRE(static_cast<double>(plain.certificate.regimes_valued) <=
            plain.certificate.lattice_regimes);
    check_pruned(problem);
  }
}

}  // namespace

TEST_CASE("the proved search answers as the exhaustive one without storms") {
  check_twins("twins without storms", {}, 200);
}

TEST_CASE("the proved search answers as the exhaustive one with storms") {
  check_twins("twins with storms", {.storms = true, .years = 12}, 100);
}

TEST_CASE("the proved search answers as the exhaustive one with three thinnings") {
  check_twins("twins of three", {.max_thinnings = 3, .just_so = true, .removals = 3, .years = 14},
              12);
  check_twins("stormy twins of three",
              {.storms = true, .max_thinnings = 3, .just_so = true, .removals = 2, .years = 12}, 6);
}

TEST_CASE("the proved search answers as the exhaustive one for stands that were established") {
  check_twins("twins of responses", {.responses = true}, 120);
  check_twins("stormy twins of responses", {.storms = true, .years = 12, .responses = true}, 40);
}

TEST_CASE("the bounded search of yield tables answers as the exhaustive one") {
  check_twins("twins of tables", {.tables = true}, 150);
  check_twins("tables of three", {.max_thinnings = 3, .just_so = true, .removals = 3, .years = 14,
                                  .tables = true}, 10);
}

// Every first cut of the lattice, by both methods; the best of them is that of any cut.
void check_first_cuts(const StandProblem& problem) {
  for (int at = problem.lattice.thinning_from.whole(); at <= problem.lattice.thinning_to.whole();
       ++at) {
    StandOptions options;
    options.first_thinning_at = age(at);
    const StandSolution any = solve(problem, options);
    std::vector<std::string> found;
    for (const double removal : problem.lattice.removal_fractions) {
      CAPTURE(at, removal);
      options.first_removal_fraction = removal;
      options.method = StandOptions::Method::automatic;
      const StandSolution fast = solve(problem, options);
      options.method = StandOptions::Method::exhaustive;
      REQUIRE(describe(fast) == describe(solve(problem, options)));
      if (fast.status == StandSolution::Status::no_regime) continue;
      const Thinning& first = fast.best.regime.thinnings.front();
      REQUIRE(first.at == age(at));
      REQUIRE(first.removal_fraction == removal);
      found.push_back(describe(fast.best));
    }
    REQUIRE(found.empty() == (any.status == StandSolution::Status::no_regime));
    if (!found.empty()) REQUIRE(std::ranges::count(found, describe(any.best)) == 1);
  }
}

TEST_CASE("the first cut asked for is the one made and the rest is the best after it") {
  const TaggedSeed seed("first cuts");
  for (std::uint64_t number = 0; number < 12; ++number) {
    RandomStream random = seed.stream(number);
    CAPTURE(number);
    check_first_cuts(
        random_problem(random, {.storms = number % 2 == 1, .removals = 3, .years = 8}));
  }
}

// Half of everything is discounted away each year: late harvests are worth the same.
StandProblem nearly_indifferent_problem() {
  StandProblem problem = plain_problem();
  StandCase& stand = problem.stand_case;
  for (ProductPrice& price : stand.prices) price.stumpage = dollars_per_ton(0);
  stand.costs.rate = DiscountRate::real(0.5);
  stand.costs.establishment = dollars_per_acre(900);
  problem.lattice.max_thinnings = 0;
  problem.lattice.final_from = age(22);
  problem.lattice.final_to = age(70);
  return problem;
}

TEST_CASE("of harvests that tie with the highest value every search takes the earliest") {
  const StandProblem problem = nearly_indifferent_problem();
  std::vector<double> values;
  for (int at = 22; at <= 70; ++at) {
    StandProblem alone = problem;
    alone.lattice.final_from = alone.lattice.final_to = age(at);
    values.push_back(solve(alone).best.value.objective.in(dollars_per_acre));
  }
  const double highest = *std::ranges::max_element(values);
  const auto tying = [highest](double value) { return tolerance::values_tie(highest, value); };
  const auto first = std::ranges::find_if(values, tying);
  // A chain: the earliest of those that tie itself ties with one that does not.
  REQUIRE(first != values.begin());
  REQUIRE(tolerance::values_tie(*first, *std::prev(first)));
  const Age earliest = age(22 + static_cast<int>(first - values.begin()));
  for (const auto method : {StandOptions::Method::exhaustive, StandOptions::Method::automatic}) {
    CHECK(solve_by(method, problem).best.regime.final_harvest == earliest);
  }
  const StandCase& stand = problem.stand_case;
  const PriceVector own{stand.prices, stand.costs.establishment, stand.land_value};
  const PricedPool pool = RegimePool(problem).priced(stand.costs, {own});
  CHECK(pool.best(own).regime.final_harvest == earliest);
}

TEST_CASE("the count of regimes is that of an exhaustive search without limits on the stand") {
  StandProblem problem = plain_problem();
  problem.lattice.guards = {};
  problem.lattice.removal_fractions = {0.05, 0.1, 0.2};
  StandOptions options;
  options.method = StandOptions::Method::exhaustive;
  for (int thinnings = 0; thinnings <= 3; ++thinnings) {
    problem.lattice.max_thinnings = thinnings;
    const StandSolution solution = solve(problem, options);
    CHECK(static_cast<double>(solution.certificate.regimes_valued) ==
          solution.certificate.lattice_regimes);
  }
}

}  // namespace staddle::support
