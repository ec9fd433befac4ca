// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "optimise/champions.h"
#include "optimise/search_tables.h"

namespace staddle {

Regime regime_of(const LatticeRegime& found, const LatticeRules& rules);

// Regimes that a search by approximate values cannot tell from the best of their count
// of thinnings. Each approximate value is within half a slack of the plain evaluator's,
// so the best regime is always among those within a slack of the highest value met;
// settle() gives them their exact values and lets the tie rule choose.
class Candidates {
 public:
  Candidates(const CaseKernel& kernel, const LatticeRules& rules, const SearchTables& tables);

  // Values of this count that are not above it need not be offered.
  double floor(int cuts) const { return floor_[static_cast<std::size_t>(cuts)]; }
  void offer(double value, const LatticeRegime& regime);
  // Exact values for all that is still within the slack.
  void settle();
  // The highest value met; -infinity before the first.
  double highest(int cuts) const { return highest_[static_cast<std::size_t>(cuts)]; }
  std::optional<Champion> champion(int cuts) const { return champions_.with_cuts(cuts); }
  std::optional<Champion> best() const { return champions_.best(); }

 private:
  struct Candidate {
    double value;
    LatticeRegime regime;
  };
  static constexpr std::size_t most_waiting = 1024;
  void drop_beaten();

  const CaseKernel& kernel_;
  const LatticeRules& rules_;
  const SearchTables& tables_;
  std::vector<double> highest_, floor_;
  std::vector<Candidate> waiting_;
  Champions champions_;
};

}  // namespace staddle
