// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <vector>

#include "optimise/champions.h"
#include "optimise/lattice_rules.h"

namespace staddle {

// One stretch of a stand's lattice, from a cut (or the present) to the last final harvest
// without another cut, and what the evaluator's own steps say of it. All per acre still
// standing; years count from the stand's present.
struct RegimeStretch {
  LatticeRegime regime;  // the cuts up to here
  int from_year = 0;
  int final_from_year = 0;  // the first final harvest; beyond `to_year` where there is none
  int to_year = 0;
  const double* cut = nullptr;  // revenue, then tons by measure; null at the present
  // From final_from_year on, one row a year: revenue, then tons by measure.
  const double* harvests = nullptr;
  // With storms, one row a year from from_year on: the share that the year loses, dollars
  // of salvage and of clean-up per acre that entered it.
  const double* storms = nullptr;
  // Where asked, one a year from from_year on: open at its end, without further cut.
  const char* open = nullptr;
};

using StretchVisitor = std::function<void(const RegimeStretch&)>;

// What of a stand is written down.
struct TreeQuestion {
  std::vector<std::vector<std::size_t>> tons;  // by measure: products of the stand
  std::optional<BasalArea> open_below;
};

// Tells every stretch, depth first: each after the one that it continues.
// The pointers hold during the call.
void visit_stretches(const CaseKernel& kernel, const LatticeRules& rules,
                     const TreeQuestion& question, const StretchVisitor& visit);

// All stretches of a lattice, kept.
class RegimeTree {
 public:
  RegimeTree(const CaseKernel& kernel, const LatticeRules& rules, const TreeQuestion& question);
  void visit(const StretchVisitor& visit) const;

  double bytes() const;
  // A generous guess of what the tree of a lattice takes, before guards.
  static double most_bytes(const CaseKernel& kernel, const LatticeRules& rules,
                           const TreeQuestion& question);

 private:
  struct Places {
    std::size_t cut = 0, harvests = 0, storms = 0, open = 0;
  };
  std::vector<RegimeStretch> stretches_;
  std::vector<Places> places_;
  std::vector<double> cuts_, harvests_, storms_;
  std::vector<char> open_;
};

}  // namespace staddle
