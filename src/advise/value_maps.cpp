// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/advise/value_maps.h"

#include <algorithm>

#include "staddle/optimise/solve.h"

namespace staddle {
namespace {

std::optional<PricedRegime> best_of(const StandProblem& problem, const StandOptions& options) {
  const StandSolution solution = solve(problem, options);
  if (solution.status != StandSolution::Status::optimal) return std::nullopt;
  return solution.best;
}

StandProblem ending_at(StandProblem problem, int final_yr, int most_thinnings) {
  problem.lattice.final_from = problem.lattice.final_to = age(final_yr);
  problem.lattice.max_thinnings = std::min(problem.lattice.max_thinnings, most_thinnings);
  return problem;
}

int first_open_age(const StandProblem& problem, Age from) {
  return std::max(from.whole(), problem.stand_case.present().whole());
}

// Rows and columns without a regime, from the edges inwards.
void trim(ValueMap& map) {
  const auto empty_row = [](const auto& row) {
    return std::ranges::none_of(row, [](const auto& cell) { return cell.has_value(); });
  };
  const auto empty_column = [&](std::size_t column) {
    return std::ranges::none_of(map.cells,
                                [&](const auto& row) { return row[column].has_value(); });
  };
  while (!map.cells.empty() && empty_row(map.cells.back())) {
    map.cells.pop_back();
    map.removals.pop_back();
  }
  while (!map.cells.empty() && empty_row(map.cells.front())) {
    map.cells.erase(map.cells.begin());
    map.removals.erase(map.removals.begin());
  }
  if (map.cells.empty()) map.ages.clear();
  const auto drop_column = [&](std::size_t column) {
    const auto offset = static_cast<std::ptrdiff_t>(column);
    map.ages.erase(map.ages.begin() + offset);
    for (auto& row : map.cells) row.erase(row.begin() + offset);
  };
  while (!map.ages.empty() && empty_column(map.ages.size() - 1)) drop_column(map.ages.size() - 1);
  while (!map.ages.empty() && empty_column(0)) drop_column(0);
}

}  // namespace

ValueByFinalAge value_by_final_age(const StandProblem& problem, const ValueMapOptions& options) {
  const int from = first_open_age(problem, problem.lattice.final_from);
  const int to =
      std::min(problem.lattice.final_to.whole(), problem.stand_case.growth.last_age().whole());
  ValueByFinalAge answer;
  for (int at = from; at <= std::max(from, to); ++at) answer.ages.push_back({age(at), {}, {}});
  StandOptions how;
  how.stop = options.stop;
  for_each_chunk(
      answer.ages.size(), options.threads,
      [&](std::size_t i) {
        const int at = answer.ages[i].final_harvest.whole();
        answer.ages[i].best = best_of(ending_at(problem, at, problem.lattice.max_thinnings), how);
        answer.ages[i].unthinned = best_of(ending_at(problem, at, 0), how);
      },
      options.stop);
  return answer;
}

ValueMap value_map(const StandProblem& problem, const ValueMapOptions& options) {
  ValueMap map;
  if (problem.lattice.max_thinnings == 0) return map;
  map.removals = problem.lattice.removal_fractions;
  const int from = first_open_age(problem, problem.lattice.thinning_from);
  for (int at = from; at <= problem.lattice.thinning_to.whole(); ++at) map.ages.push_back(age(at));
  map.cells.assign(map.removals.size(), std::vector<std::optional<PricedRegime>>(map.ages.size()));
  for_each_chunk(
      map.ages.size(), options.threads,
      [&](std::size_t column) {
        StandOptions how;
        how.stop = options.stop;
        how.first_thinning_at = map.ages[column];
        for (std::size_t row = 0; row < map.removals.size(); ++row) {
          how.first_removal_fraction = map.removals[row];
          map.cells[row][column] = best_of(problem, how);
        }
      },
      options.stop);
  trim(map);
  return map;
}

}  // namespace staddle
