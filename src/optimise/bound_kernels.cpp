// SPDX-License-Identifier: GPL-3.0-or-later
#ifdef STADDLE_HAVE_HIGHWAY
#include "optimise/bound_kernels.h"

#include <cmath>

// Highway compiles what follows once for each instruction set and chooses when it runs.
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "optimise/bound_kernels.cpp"
#define STADDLE_MOST_LANES 16  // a row of the grid
#include "hwy/foreach_target.h"
//
#include "optimise/lanes.h"

HWY_BEFORE_NAMESPACE();
namespace staddle {
namespace HWY_NAMESPACE {
namespace {

// Single precision is good to some 1e-5 here; bends are stretched by more.
constexpr double rounded_up = 1.001;

// A stand of one age in the terms of the yield equations.
struct Terms {
  Lanes log_tons, top_factor, dbh_factor;
};

HWY_INLINE Terms terms_of(const SearchTables& tables, std::size_t t, Lanes n, Lanes w) {
  const Lanes log_diameter =
      hn::MulAdd(set(0.5), w,
                 hn::MulAdd(set(tables.diameter_n[t]), n, set(tables.diameter_constant[t])));
  return {hn::MulAdd(set(tables.tons_w[t]), w,
                     hn::MulAdd(set(tables.tons_n[t]), n, set(tables.tons_constant[t]))),
          exp_of(hn::Mul(set(-tables.top_power), log_diameter)),
          exp_of(hn::MulSub(set(tables.tree_power), n,
                            hn::Mul(set(tables.dbh_power), log_diameter)))};
}

// One term: M = exp(ln Y - x1 - x2).
struct Reduced {
  Lanes m, x1, x2;
};
HWY_INLINE Reduced reduced(const SearchTables& tables, std::size_t j, const Terms& terms) {
  const Lanes x1 = hn::Mul(set(-tables.top_term[j]), terms.top_factor);
  const Lanes x2 = hn::Mul(set(-tables.dbh_term[j]), terms.dbh_factor);
  return {exp_of(hn::Sub(hn::Sub(terms.log_tons, x1), x2)), x1, x2};
}

// Along C: L, -L' and L'' of one term.
struct Slopes {
  Lanes first, second, third;
};
HWY_INLINE Slopes slopes_of(const SearchTables& tables, std::size_t t, const Reduced& term) {
  const Lanes p1 = set(0.5 * tables.top_power), p2 = set(0.5 * tables.dbh_power);
  const Lanes a1 = hn::Mul(p1, term.x1), a2 = hn::Mul(p2, term.x2);
  const Lanes b1 = hn::Mul(p1, a1), b2 = hn::Mul(p2, a2);
  return {hn::Add(set(tables.tons_w[t]), hn::Add(a1, a2)), hn::Add(b1, b2),
          hn::Add(hn::Mul(p1, b1), hn::Mul(p2, b2))};
}

// The bound on |M_CCC| r^3 / M, from the largest L, -L' and L''.
HWY_INLINE Lanes third_of(const Slopes& s) {
  const Lanes one = set(1.0);
  const Lanes less_one = hn::Sub(s.first, one);
  const Lanes cubic = hn::Mul(hn::Mul(s.first, less_one), hn::Sub(s.first, set(2.0)));
  // Between 0 and 2 the cubic stays within .385; below 0 it is never, for L > 0.
  return hn::Add(hn::Add(hn::Max(set(0.385), cubic), s.third),
                 hn::Mul(hn::Mul(set(3.0), hn::Max(one, less_one)), s.second));
}

Bend along_competition(const SearchTables& tables, const LaneArray& weights, int age_yr,
                       double log_tpa, const CompetitionGrid& grid, Lane* value) {
  const auto t = static_cast<std::size_t>(age_yr);
  const Lanes n = set(log_tpa);
  for (std::size_t j = 0; j < CompetitionGrid::nodes; j += hn::Lanes(Tag())) {
    const Terms terms = terms_of(tables, t, n, load(grid.node_density, j));
    Lanes sum = zero();
    for (std::size_t term = 0; term < tables.terms; ++term) {
      sum = hn::MulAdd(set(weights[term]), reduced(tables, term, terms).m, sum);
    }
    hn::StoreU(sum, Tag(), value + j);
  }
  Lanes curve = zero(), slope = zero();
  const Lanes half = set(0.5 * grid.step / CompetitionGrid::parts);
  for (std::size_t k = 0; k < CompetitionGrid::intervals; k += hn::Lanes(Tag())) {
    const Terms low = terms_of(tables, t, n, load(grid.end_density, k));
    const Terms middle = terms_of(tables, t, n, load(grid.middle_density, k));
    const Terms high = terms_of(tables, t, n, load(grid.end_density, k + 1));
    const Lanes inverse = hn::Div(set(1.0), load(grid.middle_left, k));
    const Lanes most_inverse = hn::Div(set(1.0), load(grid.end_left, k + 1));
    const Lanes most_cubed = hn::Mul(hn::Mul(most_inverse, most_inverse), most_inverse);
    Lanes down = zero(), steep = zero(), change = zero();
    for (std::size_t term = 0; term < tables.terms; ++term) {
      const Lanes weight = set(weights[term]);
      const Reduced here = reduced(tables, term, middle);
      const Slopes s = slopes_of(tables, t, here);
      const Lanes m = hn::Mul(hn::Mul(weight, here.m), inverse);
      steep = hn::MulAdd(m, s.first, steep);
      const Lanes bend = hn::Add(hn::NegMulAdd(s.first, s.first, s.first), s.second);
      down = hn::MulAdd(hn::Mul(m, inverse), bend, down);
      const Slopes most = slopes_of(tables, t, reduced(tables, term, high));
      const Lanes most_m = hn::Mul(hn::Abs(weight), reduced(tables, term, low).m);
      change = hn::MulAdd(hn::Mul(most_m, most_cubed), third_of(most), change);
    }
    const Lanes drift = hn::Mul(half, change);
    curve = hn::Max(curve, hn::Add(down, drift));
    slope = hn::Max(slope, hn::MulAdd(half, hn::Add(hn::Abs(down), drift), hn::Abs(steep)));
  }
  return {rounded_up * largest_of(curve), rounded_up * largest_of(slope)};
}

// weight x (a value between low and high).
HWY_INLINE Lanes most_of(Lanes weight, Lanes low, Lanes high) {
  return hn::Max(hn::Mul(weight, low), hn::Mul(weight, high));
}

Bend along_trees(const SearchTables& tables, const LaneArray& weights, int age_yr,
                 double low_log_tpa, double high_log_tpa, const CompetitionGrid& grid) {
  const auto t = static_cast<std::size_t>(age_yr);
  const double spread = -wide(tables.diameter_n[t]);  // (1 - e)/2: Dq falls so with n
  const Lanes q1 = set(tables.top_power * spread);
  const Lanes q2 = set(tables.tree_power + tables.dbh_power * spread);
  const Lanes tons_n = set(tables.tons_n[t]);
  const Lanes gap = set(high_log_tpa - low_log_tpa);
  Lanes curve = zero(), slope = zero();
  for (std::size_t k = 0; k < CompetitionGrid::intervals; k += hn::Lanes(Tag())) {
    const Lanes dense = load(grid.end_density, k), thin = load(grid.end_density, k + 1);
    const Terms least = terms_of(tables, t, set(low_log_tpa), dense);   // of x1, x2
    const Terms most = terms_of(tables, t, set(high_log_tpa), thin);
    // ln Y rises with w, and with n where its coefficient is positive.
    const Lanes along = hn::Mul(gap, tons_n);
    const Lanes high_tons = hn::Add(least.log_tons, hn::Max(zero(), along));
    const Lanes low_tons = hn::Sub(most.log_tons, hn::Max(zero(), along));
    Lanes down = zero(), rise = zero(), fall = zero();
    for (std::size_t j = 0; j < tables.terms; ++j) {
      const Lanes weight = set(weights[j]);
      const Lanes a = set(-tables.top_term[j]), b = set(-tables.dbh_term[j]);
      const Lanes x1_low = hn::Mul(a, least.top_factor), x2_low = hn::Mul(b, least.dbh_factor);
      const Lanes x1_high = hn::Mul(a, most.top_factor), x2_high = hn::Mul(b, most.dbh_factor);
      const Lanes m_high = exp_of(hn::Sub(hn::Sub(high_tons, x1_low), x2_low));
      const Lanes m_low = exp_of(hn::Sub(hn::Sub(low_tons, x1_high), x2_high));
      const Lanes l_high = hn::NegMulAdd(q1, x1_low, hn::NegMulAdd(q2, x2_low, tons_n));
      const Lanes l_low = hn::NegMulAdd(q1, x1_high, hn::NegMulAdd(q2, x2_high, tons_n));
      const Lanes square_high = hn::Max(hn::Mul(l_low, l_low), hn::Mul(l_high, l_high));
      const Lanes nearest = hn::Max(zero(), hn::Max(l_low, hn::Neg(l_high)));
      const Lanes g_high = hn::Sub(hn::MulAdd(hn::Mul(q1, q1), x1_high,
                                              hn::Mul(hn::Mul(q2, q2), x2_high)),
                                   hn::Mul(nearest, nearest));
      const Lanes g_low = hn::Sub(hn::MulAdd(hn::Mul(q1, q1), x1_low,
                                             hn::Mul(hn::Mul(q2, q2), x2_low)), square_high);
      down = hn::Add(down, most_of(weight, hn::Min(hn::Mul(m_low, g_low), hn::Mul(m_high, g_low)),
                                   hn::Max(hn::Mul(m_low, g_high), hn::Mul(m_high, g_high))));
      const Lanes s_low = hn::Min(hn::Mul(m_low, l_low), hn::Mul(m_high, l_low));
      const Lanes s_high = hn::Max(hn::Mul(m_low, l_high), hn::Mul(m_high, l_high));
      rise = hn::Add(rise, most_of(weight, s_low, s_high));
      fall = hn::Add(fall, most_of(hn::Neg(weight), s_low, s_high));
    }
    curve = hn::Max(curve, down);
    slope = hn::Max(slope, hn::Max(rise, fall));
  }
  return {rounded_up * largest_of(curve), rounded_up * largest_of(slope)};
}

void raise(const CompetitionGrid& grid, const Lane* lines, double decay,
           const std::vector<PlanTerms>& terms, Lane* values) {
  const hn::RebindToSigned<Tag> integers;
  const Lanes inverse_step = set(1.0 / grid.step);
  for (std::size_t j = 0; j < CompetitionGrid::nodes; j += hn::Lanes(Tag())) {
    const Lanes start = hn::Abs(load(grid.node, j));
    const Lanes competition = hn::Mul(load(grid.node, j), set(decay));
    const Lanes at = hn::Max(zero(), hn::Mul(hn::Sub(competition, set(grid.low)), inverse_step));
    const Lanes cell = hn::Min(hn::Floor(at), set(CompetitionGrid::nodes - 2.0));
    const Lanes along = hn::Sub(at, cell);
    const auto index = hn::ConvertTo(integers, cell);
    const auto next = hn::Add(index, hn::Set(integers, 1));
    for (std::size_t i = 0; i < terms.size(); ++i) {
      const Lane* line = lines + i * CompetitionGrid::nodes;
      const Lanes low = picked<CompetitionGrid::nodes>(line, index);
      const Lanes high = picked<CompetitionGrid::nodes>(line, next);
      const Lanes allowance = hn::MulAdd(hn::MulAdd(set(terms[i].square), start,
                                                    set(terms[i].linear)),
                                         start, set(terms[i].constant));
      const Lanes sum = hn::Add(between(low, high, along), allowance);
      Lane* value = values + i * CompetitionGrid::nodes + j;
      hn::StoreU(hn::Max(sum, hn::LoadU(Tag(), value)), Tag(), value);
    }
  }
}

}  // namespace

const BoundKernels& kernels_of_bounds() {
  static const BoundKernels table{along_competition, along_trees, raise};
  return table;
}

}  // namespace HWY_NAMESPACE
}  // namespace staddle
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace staddle {

HWY_EXPORT(kernels_of_bounds);

const BoundKernels& bound_kernels() { return HWY_DYNAMIC_DISPATCH(kernels_of_bounds)(); }

CompetitionGrid::CompetitionGrid(double lowest, double highest)
    : low(lowest), step((highest - lowest) / static_cast<double>(nodes - 1)) {
  const auto fine = [&](double k) { return low + step * k / static_cast<double>(parts); };
  for (std::size_t j = 0; j < nodes + lane_padding; ++j) {
    const double c = low + step * static_cast<double>(std::min(j, nodes - 1));
    node.push_back(static_cast<Lane>(c));
    node_density.push_back(static_cast<Lane>(std::log1p(-c)));
  }
  for (std::size_t k = 0; k <= intervals + lane_padding; ++k) {
    const double at = static_cast<double>(std::min(k, intervals));
    const double middle = std::min(at + 0.5, static_cast<double>(intervals) - 0.5);
    end_density.push_back(static_cast<Lane>(std::log1p(-fine(at))));
    end_left.push_back(static_cast<Lane>(1.0 - fine(at)));
    middle_density.push_back(static_cast<Lane>(std::log1p(-fine(middle))));
    middle_left.push_back(static_cast<Lane>(1.0 - fine(middle)));
  }
}

}  // namespace staddle
#endif  // HWY_ONCE
#endif  // STADDLE_HAVE_HIGHWAY
