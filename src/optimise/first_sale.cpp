// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/lattice_rules.h"
#include "staddle/optimise/solve.h"

namespace staddle {

std::optional<Age> first_age_of_a_sale(const StandProblem& problem) {
  const DecisionLattice& lattice = problem.lattice;
  const bool limited = lattice.min_removal > tons_per_acre(0) || lattice.min_sale > tons(0);
  if (!limited || lattice.max_thinnings == 0) return std::nullopt;
  const CaseKernel kernel(problem.stand_case);
  const LatticeRules rules(problem, kernel);
  StandPoint point = kernel.start();
  Measured measured;
  Cut cut;
  for (; point.age_yr <= rules.cut_to(); kernel.advance(point, measured)) {
    const std::size_t allowed = rules.removals_allowed(point.age_yr);
    kernel.measure_tons(point, measured);
    if (!measured.timber || allowed == 0) continue;
    const double largest = rules.removals()[allowed - 1];
    if (!rules.leaves_trees(largest, point.entries)) continue;
    kernel.work_out_cut(point, measured, largest, cut);
    if (!rules.makes_a_sale(cut)) continue;
    if (point.age_yr == kernel.present_yr()) return std::nullopt;
    return age(point.age_yr);
  }
  return std::nullopt;
}

}  // namespace staddle
