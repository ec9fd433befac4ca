// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "optimise/candidates.h"
#include "optimise/exact_limits.h"
#include "optimise/last_cuts.h"

namespace staddle {

// The highest approximate value met by first thinning and by final harvest; -infinity
// where none was.
struct HighestByAge {
  std::vector<double> first, final;
  // `cut_yr` 0: without a cut.
  void note(const HarvestValues& values, int cut_yr);
};

// Good regimes quickly, with no claim: one cut more is put where it earns most, then ages
// and removals move by a step or two as long as that earns more. The proof of an optimum
// does not rest on it; a high start only prunes more.
class LocalSearch {
 public:
  LocalSearch(const CaseKernel& kernel, const LatticeRules& rules, const SearchTables& tables,
              const ExactLimits& limits, const StandOptions& options, HighestByAge& by_age);

  // Offers the best found of every count of thinnings; notes all values that were met.
  void run(Candidates& candidates);

 private:
  // The highest value over final harvests; -infinity where a cut is not admissible.
  double value_of(LatticeRegime& plan);
  bool accept_if_better(LatticeRegime trial, LatticeRegime& plan, double& value);
  void add_cut(const LatticeRegime& before, LatticeRegime& plan, double& value);
  void climb(LatticeRegime& plan, double& value);

  const CaseKernel& kernel_;
  const LatticeRules& rules_;
  const SearchTables& tables_;
  const ExactLimits& limits_;
  const StandOptions& options_;
  HighestByAge& by_age_;
  const VectorKernels& vectors_;
  const CutKernels& cut_kernels_;
  Trajectory stand_;
  CutOptions cuts_;
};

}  // namespace staddle
