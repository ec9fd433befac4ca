// SPDX-License-Identifier: GPL-3.0-or-later
#ifdef STADDLE_HAVE_HIGHWAY
#include "optimise/cut_kernels.h"

#include <algorithm>
#include <cmath>

// Highway compiles what follows once for each instruction set and chooses when it runs.
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "optimise/cut_kernels.cpp"
// Most lattices have some eight removals: wider vectors would run half empty.
#define STADDLE_MOST_LANES 8
#include "hwy/foreach_target.h"
//
#include "optimise/lanes.h"

HWY_BEFORE_NAMESPACE();
namespace staddle {
namespace HWY_NAMESPACE {
namespace {

// Tons after the cuts f, f+1, ... and what they earn and break.
HWY_INLINE void cut_lanes(const SearchTables& tables, const SearchState& state,
                          const RemovalFactors& factors, const Trajectory& stand, std::size_t t,
                          std::size_t f, double basal_area, const CutLimits& limits,
                          CutOptions& out) {
  const Lanes log_trees = load(factors.log_trees, f), log_basal = load(factors.log_basal, f);
  const Lanes log_tons =
      hn::MulAdd(set(tables.tons_trees[t]), log_trees,
                 hn::MulAdd(set(tables.tons_basal[t]), log_basal, set(stand.log_tons[t])));
  const Lanes top = hn::Mul(set(stand.top_factor[t]), load(factors.top_factor, f));
  const Lanes dbh = hn::Mul(set(stand.dbh_factor[t]), load(factors.dbh_factor, f));
  for (std::size_t j = 0; j < tables.terms; ++j) {
    store(hn::Sub(set(stand.merchantable[j][t]), merchantable(tables, j, log_tons, top, dbh)),
          out.merchantable_cut[j], f);
  }
  Lanes value = zero(), tons = zero(), margin = set(-minus_infinity);
  for (std::size_t i = 0; i < tables.products; ++i) {
    Lanes plain_cut = zero();
    for (std::size_t j = 0; j < tables.terms; ++j) {
      const Lane coefficient = tables.coefficient[i * tables.terms + j];
      if (coefficient != 0) {
        plain_cut = hn::MulAdd(set(coefficient), load(out.merchantable_cut[j], f), plain_cut);
      }
    }
    const double plain = out.plain_before[i];
    if (tables.has_offsets) store(hn::Sub(set(plain), plain_cut), out.plain_after[i], f);
    // A cut takes the share of the multiplied tons that it takes of the plain ones.
    const double scale = tables.has_offsets && plain > 0.0
                             ? tables.growth_multiplier + state.offset[i] / plain
                             : tables.growth_multiplier;
    const Lanes cut = hn::Mul(plain_cut, set(scale));
    tons = hn::Add(tons, cut);
    value = hn::MulAdd(cut, set(tables.thinning_price[i]), value);
    margin = hn::Min(margin, hn::Add(cut, set(limits.rise)));
  }
  const Lanes tpa = hn::Mul(set(stand.tpa[t]), load(factors.trees_left, f));
  store(tpa, out.tpa, f);
  store(hn::Add(set(stand.log_tpa[t]), log_trees), out.log_tpa, f);
  const Lanes above = hn::Sub(tpa, set(tables.survival_floor));
  const Lanes log_above = log_of(hn::IfThenElse(hn::Gt(above, zero()), above, set(1.0)));
  store(
      hn::Sub(exp_of(hn::Mul(set(-tables.survival_exponent), log_above)), set(tables.survival[t])),
      out.invariant, f);
  if (limits.basal_area > 0.0) {
    const Lanes left = hn::Mul(set(basal_area), load(factors.basal_left, f));
    margin = hn::Min(margin, hn::Sub(left, set(limits.basal_area)));
  }
  margin = hn::Min(margin, hn::Sub(tpa, set(limits.trees)));
  margin = hn::Min(margin, hn::Sub(tons, set(limits.tons)));
  const Lanes density =
      hn::Mul(set(stand.density[t]), load(factors.density_left, t * factors.row + f));
  store(hn::Sub(set(1.0), density), out.competition, f);
  store(hn::MulSub(value, set(tables.net_share), set(tables.thinning_sale_cost)), out.revenue, f);
  store(margin, out.margin, f);
}

void work_out_cuts(const SearchTables& tables, const SearchState& state, const Trajectory& stand,
                   int age_yr, std::size_t count, const CutLimits& limits, CutOptions& out) {
  const auto t = static_cast<std::size_t>(age_yr);
  const RemovalFactors& factors = tables.removals_at(state.entries);
  out.count = count;
  for (std::size_t i = 0; tables.has_offsets && i < tables.products; ++i) {
    double plain = 0.0;
    for (std::size_t j = 0; j < tables.terms; ++j) {
      plain += wide(tables.coefficient[i * tables.terms + j]) * wide(stand.merchantable[j][t]);
    }
    out.plain_before[i] = plain;
  }
  double basal_area = 0.0;
  if (limits.basal_area > 0.0) {
    basal_area =
        std::exp(wide(tables.log_basal_constant[t]) +
                 wide(tables.log_basal_n[t]) * wide(stand.log_tpa[t]) + wide(stand.log_density[t]));
  }
  for (std::size_t f = 0; f < count; f += hn::Lanes(Tag())) {
    cut_lanes(tables, state, factors, stand, t, f, basal_area, limits, out);
  }
}

// The bilinear value at one rate.
template <class Index>
HWY_INLINE Lanes looked_up(const Lane* slice, Index corner, Lanes along_n, Lanes along_c) {
  constexpr std::size_t row = BoundSlice::row;
  const Lanes a = hn::GatherIndex(Tag(), slice, corner);
  const Lanes b = hn::GatherIndex(Tag(), slice + 1, corner);
  const Lanes c = hn::GatherIndex(Tag(), slice + row, corner);
  const Lanes d = hn::GatherIndex(Tag(), slice + row + 1, corner);
  return between(between(a, b, along_c), between(c, d, along_c), along_n);
}

double bound_cuts(const BoundSlice& slice, double rate, double money, double discount,
                  const CutOptions& cuts, LaneArray& bound) {
  const hn::RebindToSigned<Tag> integers;
  const double at_rate = rate * slice.inverse_rate_step;
  const std::size_t m =
      slice.rates < 2 ? 0 : std::min(static_cast<std::size_t>(at_rate), slice.rates - 2);
  const double along_rate = slice.rates < 2 ? 0.0 : at_rate - static_cast<double>(m);
  const std::size_t size = slice.tracks * BoundSlice::row;
  const Lane* slow = slice.value.data() + m * size;
  const Lane* fast = slice.rates < 2 ? slow : slow + size;
  // Removals rise, so trees fall: only the nodes between the last and the first matter.
  const auto inner = slice.log_tpa.begin() + 1,
             last = slice.log_tpa.begin() + static_cast<std::ptrdiff_t>(slice.tracks) - 1;
  const auto low_node = std::upper_bound(inner, last, cuts.log_tpa[cuts.count - 1]);
  const auto high_node = std::upper_bound(low_node, last, cuts.log_tpa[0]);
  const auto first = static_cast<std::size_t>(low_node - slice.log_tpa.begin());
  const auto end = static_cast<std::size_t>(high_node - slice.log_tpa.begin());
  Lanes largest = set(minus_infinity);
  for (std::size_t f = 0; f < cuts.count; f += hn::Lanes(Tag())) {
    const Lanes n = load(cuts.log_tpa, f);
    Lanes node = set(static_cast<double>(first) - 1.0);
    for (std::size_t i = first; i < end; ++i) {
      node = hn::Add(node, hn::IfThenElse(hn::Ge(n, set(slice.log_tpa[i])), set(1.0), zero()));
    }
    const auto i = hn::ConvertTo(integers, node);
    const Lanes along_n = hn::Mul(hn::Sub(n, hn::GatherIndex(Tag(), slice.log_tpa.data(), i)),
                                  hn::GatherIndex(Tag(), slice.inverse_gap.data(), i));
    const Lanes c =
        hn::Mul(hn::Sub(load(cuts.competition, f), set(slice.low)), set(slice.inverse_step));
    const Lanes cell = clamped(hn::Floor(c), 0.0, BoundSlice::row - 2.0);
    const Lanes along_c = hn::Sub(c, cell);
    const auto corner =
        hn::ConvertTo(integers, hn::MulAdd(node, set(static_cast<double>(BoundSlice::row)), cell));
    const Lanes low = looked_up(slow, corner, along_n, along_c);
    const Lanes high = looked_up(fast, corner, along_n, along_c);
    Lanes sum = hn::MulAdd(set(along_rate), hn::Sub(high, low), low);
    sum = hn::Add(sum, hn::MulAdd(set(discount), load(cuts.revenue, f), set(money)));
    const Lanes least = hn::Min(along_n, along_c), most = hn::Max(along_n, along_c);
    const auto inside = hn::And(hn::Ge(least, zero()), hn::Le(most, set(1.0)));
    const Lanes result = hn::IfThenElse(inside, sum, set(-minus_infinity));
    store(result, bound, f);
    const auto valid = hn::FirstN(Tag(), cuts.count - f);
    largest = hn::Max(largest, hn::IfThenElse(valid, result, set(minus_infinity)));
  }
  return largest_of(largest);
}

}  // namespace

const CutKernels& kernels_of_cuts() {
  static const CutKernels table{work_out_cuts, bound_cuts};
  return table;
}

}  // namespace HWY_NAMESPACE
}  // namespace staddle
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace staddle {

HWY_EXPORT(kernels_of_cuts);

const CutKernels& cut_kernels() { return HWY_DYNAMIC_DISPATCH(kernels_of_cuts)(); }

CutOptions::CutOptions(std::size_t removals) {
  const std::size_t size = removals + lane_padding;
  for (auto* array : {&log_tpa, &tpa, &competition, &invariant, &revenue, &margin}) {
    array->assign(size, 0);
  }
  plain_after.assign(max_products, LaneArray(size, 0));
  merchantable_cut.assign(2 * max_products, LaneArray(size, 0));
}

}  // namespace staddle
#endif  // HWY_ONCE
#endif  // STADDLE_HAVE_HIGHWAY
