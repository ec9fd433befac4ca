// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>

// Every tolerance of the project, with the inequality it enters. No literal
// tolerance stands anywhere else outside tests.
namespace staddle::tolerance {

// A limit is kept when value >= limit - limit_slack (or the mirror image): every
// limit of the decision lattice passes within it. In the limit's own unit.
inline constexpr double limit_slack = 1e-9;

// Two regimes tie when |a - b| <= tie * max(1, |a|); dollars per acre. Which of many ties
// is taken: base/best_of_ties.h.
inline constexpr double tie = 1e-9;
inline double tie_width(double value) { return tie * std::max(1.0, std::fabs(value)); }

// A step of a range "from + i step" is kept up to `to` within this.
inline constexpr double range_end = 1e-9;

// A stated site index and a stated height agree when their heights differ by at
// most this; feet.
inline constexpr double height_agreement_ft = 0.5;

// A regime is pruned when upper bound + slack(bound) < threshold. The slack must
// exceed the tie tolerance, or exact ties would be pruned; it also covers the
// rounding of the vector arithmetic that computes the bounds. Dollars per acre.
inline constexpr double prune_absolute = 1e-6;
inline constexpr double prune_relative = 2e-9;
inline double prune_slack(double bound) {
  return prune_absolute + prune_relative * std::fabs(bound);
}

inline bool values_tie(double a, double b) {
  return std::fabs(a - b) <= tie_width(a);
}

// A linear program's answer passes its audit when every row, bound, dual and
// complementary product of the original data is off by at most
// lp_absolute + lp_relative * (largest magnitude that enters it).
inline constexpr double lp_absolute = 1e-6;
inline constexpr double lp_relative = 1e-9;

// Two methods that solve one stand problem agree when their values differ by at most
// proof_agreement * max(1, |value|); dollars per acre. The linear program's simplex works
// to 1e-7 of its own.
inline constexpr double proof_agreement = 1e-6;

// A tract is solved when bound - value <= tract_proof * max(1, |value|), dollars: the sum of
// what the linear program's audit and the search of every stand let pass.
inline constexpr double tract_proof = 1e-7;

// A limit of a tract is kept when it gives way by at most limit_kept times its scale: what
// it asks, or for a difference of two periods what the tract would use unlimited, at least 1.
inline constexpr double limit_kept = 1e-7;

// Tons and dollars that an acre uses of a tract's limit count when they are more than this;
// shares of an acre when they are more than limit_slack.
inline constexpr double use_crumb = 1e-7;

// Acres of a stand under a regime that are at most tract_crumb times the stand's are no
// management unit: they are told with its other acres.
inline constexpr double tract_crumb = 1e-6;

// Roots (rates of return, break-evens) are narrowed until the bracket is at most
// root * max(1, |root|) wide.
inline constexpr double root = 1e-12;

}  // namespace staddle::tolerance
