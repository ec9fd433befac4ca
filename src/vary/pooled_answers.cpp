// SPDX-License-Identifier: GPL-3.0-or-later
#include "vary/pooled_answers.h"

#include <algorithm>
#include <optional>

#include "growth/growth_kernel.h"
#include "staddle/base/parallel.h"
#include "staddle/optimise/regime_pool.h"

namespace staddle {
namespace {

constexpr std::size_t answers_a_chunk = 128;
constexpr std::size_t chunks_a_telling = 8;

bool same_rate(const Circumstances& a, const Circumstances& b) {
  return a.rate == b.rate && a.annual_cost == b.annual_cost;
}

// The answers that share a rate and yearly costs, by their places.
std::vector<std::vector<std::size_t>> by_rate(const std::vector<const Circumstances*>& asked) {
  std::vector<std::vector<std::size_t>> groups;
  for (std::size_t i = 0; i < asked.size(); ++i) {
    // Cells come rate by rate, so the latest group is tried first.
    const auto group = std::find_if(groups.rbegin(), groups.rend(), [&](const auto& places) {
      return same_rate(*asked[places.front()], *asked[i]);
    });
    if (group == groups.rend()) {
      groups.push_back({i});
    } else {
      group->push_back(i);
    }
  }
  return groups;
}

}  // namespace

std::size_t count_rates(const std::vector<const Circumstances*>& asked) {
  return by_rate(asked).size();
}

bool pool_is_less_work(const StandProblem& problem, std::size_t answers, std::size_t rates) {
  // Microseconds, measured once on one machine; only their proportions matter.
  constexpr double to_enumerate = 0.25, to_price = 0.06, to_answer = 4.0;
  constexpr double to_search = 0.02, to_search_at_most = 5000.0, to_search_plainly = 0.4;
  const double regimes = RegimePool::lattice_regimes(problem);
  const bool plain = problem.stand_case.growth.kernel().from_table();
  const double by_search = plain ? to_search_plainly * regimes
                                 : std::min(to_answer + to_search * regimes, to_search_at_most);
  const double by_pool = regimes * (to_enumerate + to_price * static_cast<double>(rates));
  return by_pool < static_cast<double>(answers) * std::max(0.0, by_search - to_answer) &&
         RegimePool::can_hold(problem);
}

std::vector<PricedRegime> best_by_pool(const StandProblem& problem,
                                       const std::vector<const Circumstances*>& asked,
                                       const std::vector<MoneyPerAcre>& land_values,
                                       unsigned threads,
                                       const std::function<void(std::size_t)>& told) {
  const RegimePool pool(problem);
  const std::vector<std::vector<std::size_t>> groups = by_rate(asked);
  std::vector<std::optional<PricedPool>> priced(groups.size());
  std::vector<PriceVector> vectors;
  for (std::size_t i = 0; i < asked.size(); ++i) {
    vectors.push_back({asked[i]->prices, asked[i]->establishment,
                       land_values.empty() ? MoneyPerAcre() : land_values[i]});
  }
  std::vector<std::size_t> group_of(asked.size());
  for_each_chunk(groups.size(), threads, [&](std::size_t g) {
    Costs costs = problem.stand_case.costs;
    costs.rate = asked[groups[g].front()]->rate;
    costs.annual_cost = asked[groups[g].front()]->annual_cost;
    std::vector<PriceVector> own;
    for (const std::size_t i : groups[g]) {
      own.push_back(vectors[i]);
      group_of[i] = g;
    }
    priced[g] = pool.priced(costs, own);
  });
  std::vector<PricedRegime> found(asked.size());
  constexpr std::size_t batch = answers_a_chunk * chunks_a_telling;
  for (std::size_t from = 0; from < asked.size(); from += batch) {
    const std::size_t to = std::min(from + batch, asked.size());
    const std::size_t chunks = (to - from + answers_a_chunk - 1) / answers_a_chunk;
    for_each_chunk(chunks, threads, [&](std::size_t chunk) {
      const std::size_t first = from + chunk * answers_a_chunk;
      for (std::size_t i = first; i < std::min(first + answers_a_chunk, to); ++i) {
        found[i] = priced[group_of[i]]->best(vectors[i]);
      }
    });
    told(to - from);
  }
  return found;
}

}  // namespace staddle
