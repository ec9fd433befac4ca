// SPDX-License-Identifier: GPL-3.0-or-later
// Short names for Highway's vectors, once per instruction set. Each file that includes it
// has set HWY_TARGET_INCLUDE, STADDLE_MOST_LANES, and included hwy/foreach_target.h before.
#if defined(STADDLE_OPTIMISE_LANES_H) == defined(HWY_TARGET_TOGGLE)
#ifdef STADDLE_OPTIMISE_LANES_H
#undef STADDLE_OPTIMISE_LANES_H
#else
#define STADDLE_OPTIMISE_LANES_H
#endif

#include <limits>

#include "hwy/contrib/math/math-inl.h"
#include "hwy/highway.h"
#include "optimise/search_tables.h"

HWY_BEFORE_NAMESPACE();
namespace staddle {
namespace HWY_NAMESPACE {
// Unnamed: files with different lanes must not share these.
namespace {

namespace hn = hwy::HWY_NAMESPACE;
using Tag = hn::CappedTag<Lane, STADDLE_MOST_LANES>;
using Lanes = hn::Vec<Tag>;

constexpr double minus_infinity = -std::numeric_limits<double>::infinity();

HWY_INLINE Lanes set(Lane value) { return hn::Set(Tag(), value); }
HWY_INLINE Lanes set(double value) { return set(static_cast<Lane>(value)); }
HWY_INLINE Lanes set(int value) { return set(static_cast<Lane>(value)); }
HWY_INLINE Lanes zero() { return hn::Zero(Tag()); }
HWY_INLINE Lanes counted_from(double first) { return hn::Iota(Tag(), static_cast<Lane>(first)); }
HWY_INLINE Lanes load(const LaneArray& array, std::size_t at) {
  return hn::LoadU(Tag(), array.data() + at);
}
HWY_INLINE void store(Lanes value, LaneArray& array, std::size_t at) {
  hn::StoreU(value, Tag(), array.data() + at);
}
HWY_INLINE Lanes exp_of(Lanes x) { return hn::Exp(Tag(), x); }
HWY_INLINE Lanes log_of(Lanes x) { return hn::Log(Tag(), x); }
HWY_INLINE Lanes clamped(Lanes x, double low, double high) {
  return hn::Min(hn::Max(x, set(low)), set(high));
}
HWY_INLINE double largest_of(Lanes x) { return wide(hn::GetLane(hn::MaxOfLanes(Tag(), x))); }

// The numbers of a row at the places `index`: from a register where one holds the row.
template <std::size_t row, class Index>
HWY_INLINE Lanes picked(const Lane* numbers, Index index) {
  if constexpr (hn::MaxLanes(Tag()) == row) {
    return hn::TableLookupLanes(hn::LoadU(Tag(), numbers), hn::IndicesFromVec(Tag(), index));
  } else {
    return hn::GatherIndex(Tag(), numbers, index);
  }
}
// The mean of a and b, `share` of the way.
HWY_INLINE Lanes between(Lanes a, Lanes b, Lanes share) {
  return hn::MulAdd(share, hn::Sub(b, a), a);
}

// M_j of one term.
HWY_INLINE Lanes merchantable(const SearchTables& tables, std::size_t term, Lanes log_tons,
                              Lanes top_factor, Lanes dbh_factor) {
  return exp_of(hn::MulAdd(set(tables.top_term[term]), top_factor,
                           hn::MulAdd(set(tables.dbh_term[term]), dbh_factor, log_tons)));
}

}  // namespace
}  // namespace HWY_NAMESPACE
}  // namespace staddle
HWY_AFTER_NAMESPACE();

#endif
