// SPDX-License-Identifier: GPL-3.0-or-later
#ifdef STADDLE_HAVE_HIGHWAY
#include "optimise/last_harvest_kernels.h"

#include <algorithm>

// Highway compiles what follows once for each instruction set and chooses when it runs.
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "optimise/last_harvest_kernels.cpp"
#define STADDLE_MOST_LANES 16
#include "hwy/foreach_target.h"
//
#include "optimise/lanes.h"

HWY_BEFORE_NAMESPACE();
namespace staddle {
namespace HWY_NAMESPACE {
namespace {

// The same number for all ages of one stand. What runs over its end is overwritten by the
// next stand.
HWY_INLINE void spread(Lane value, std::size_t ages, LaneArray& out, std::size_t at) {
  for (std::size_t k = 0; k < ages; k += hn::Lanes(Tag())) store(set(value), out, at + k);
}

HWY_INLINE void lay_out(const LastStands& stands, const HarvestRows& rows, LastHarvests& out) {
  const Lanes rate = set(-stands.recovery_per_yr);
  for (std::size_t k = 0; k < rows.ages; k += hn::Lanes(Tag())) {
    const auto years = static_cast<double>(rows.first_yr - stands.age_yr) + static_cast<double>(k);
    store(exp_of(hn::Mul(rate, counted_from(years))), out.curve, k);
  }
  for (std::size_t i = 0; i < stands.count; ++i) {
    const std::size_t at = i * rows.ages;
    spread(stands.invariant[i], rows.ages, out.invariant, at);
    spread(stands.held_tpa[i], rows.ages, out.held_tpa, at);
    spread(stands.money[i], rows.ages, out.money, at);
    spread(stands.offset_value[i], rows.ages, out.offset_value, at);
    const Lanes competition = set(stands.competition[i]);
    for (std::size_t k = 0; k < rows.ages; k += hn::Lanes(Tag())) {
      store(hn::Mul(competition, load(out.curve, k)), out.competition, at + k);
    }
  }
}

// One step of the arithmetic for all vectors, then the next step: so the long chains of
// one vector overlap those of the others.
template <class Step>
HWY_INLINE void for_rows(std::size_t size, const Step& step) {
  for (std::size_t at = 0; at < size; at += hn::Lanes(Tag())) step(at);
}

// n and w, as VectorKernels::follow has them.
HWY_INLINE void grow(const SearchTables& tables, const HarvestRows& rows, std::size_t size,
                     LastHarvests& work) {
  const Lanes power = set(-1.0 / tables.survival_exponent), floor = set(tables.survival_floor);
  for_rows(size, [&](std::size_t at) HWY_ATTR {
    const Lanes term = log_of(hn::Add(load(work.invariant, at), load(rows.survival, at)));
    const Lanes grown = hn::Add(floor, exp_of(hn::Mul(power, term)));
    const Lanes held = load(work.held_tpa, at);
    store(log_of(hn::IfThenElse(hn::Gt(held, zero()), held, grown)), work.log_tpa, at);
  });
  for_rows(size, [&](std::size_t at) HWY_ATTR {
    store(log_of(hn::Sub(set(1.0), load(work.competition, at))), work.log_density, at);
  });
}

// ln Y, X1 and X2.
HWY_INLINE void measure(const SearchTables& tables, const HarvestRows& rows, std::size_t size,
                        LastHarvests& work) {
  const Lanes half = set(0.5), top_power = set(-tables.top_power),
              dbh_power = set(tables.dbh_power), tree_power = set(tables.tree_power);
  for_rows(size, [&](std::size_t at) HWY_ATTR {
    const Lanes n = load(work.log_tpa, at), w = load(work.log_density, at);
    const Lanes log_diameter = hn::MulAdd(
        half, w, hn::MulAdd(load(rows.diameter_n, at), n, load(rows.diameter_constant, at)));
    store(hn::MulAdd(load(rows.tons_w, at), w,
                     hn::MulAdd(load(rows.tons_n, at), n, load(rows.tons_constant, at))),
          work.log_tons, at);
    store(exp_of(hn::Mul(top_power, log_diameter)), work.top_factor, at);
    store(exp_of(hn::MulSub(tree_power, n, hn::Mul(dbh_power, log_diameter))), work.dbh_factor, at);
  });
}

HWY_INLINE void sell(const SearchTables& tables, const HarvestRows& rows, std::size_t size,
                     LastHarvests& work) {
  for_rows(size, [&](std::size_t at) HWY_ATTR {
    const Lanes log_tons = load(work.log_tons, at), top = load(work.top_factor, at),
                dbh = load(work.dbh_factor, at);
    Lanes stumpage = load(work.offset_value, at);
    for (std::size_t j = 0; j < tables.terms; ++j) {
      stumpage = hn::MulAdd(set(tables.final_weight[j]),
                            merchantable(tables, j, log_tons, top, dbh), stumpage);
    }
    const Lanes money =
        hn::MulAdd(load(rows.scale, at), load(work.money, at), load(rows.fixed, at));
    store(hn::MulAdd(load(rows.gain, at), stumpage, money), work.objective, at);
  });
}

void value(const SearchTables& tables, const LastStands& stands, const HarvestRows& rows,
           LastHarvests& out) {
  lay_out(stands, rows, out);
  const std::size_t size = stands.count * rows.ages;
  grow(tables, rows, size, out);
  measure(tables, rows, size, out);
  sell(tables, rows, size, out);
  for (std::size_t i = 0; i < stands.count; ++i) {
    Lanes best = set(minus_infinity);
    for (std::size_t k = 0; k < rows.ages; k += hn::Lanes(Tag())) {
      const auto valid = hn::FirstN(Tag(), rows.ages - k);
      best = hn::Max(
          best, hn::IfThenElse(valid, load(out.objective, i * rows.ages + k), set(minus_infinity)));
    }
    out.highest[i] = largest_of(best);
  }
}

}  // namespace

const LastHarvestKernels& kernels_of_last_harvests() {
  static const LastHarvestKernels table{value};
  return table;
}

}  // namespace HWY_NAMESPACE
}  // namespace staddle
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace staddle {

HWY_EXPORT(kernels_of_last_harvests);

const LastHarvestKernels& last_harvest_kernels() {
  return HWY_DYNAMIC_DISPATCH(kernels_of_last_harvests)();
}

LastStands::LastStands() {
  for (auto* array : {&invariant, &held_tpa, &competition, &money, &offset_value}) {
    array->assign(most + lane_padding, 0);
  }
}

HarvestRows::HarvestRows(const SearchTables& tables, int cut_yr, const StretchPlan& plan)
    : first_yr(plan.final_from), ages(static_cast<std::size_t>(plan.to - plan.final_from + 1)) {
  const std::size_t size = LastStands::most * ages + lane_padding;
  const std::size_t cut = static_cast<std::size_t>(cut_yr);
  const auto lay = [&](LaneArray& out, const auto& number_of_age) {
    out.reserve(size);
    for (std::size_t k = 0; k < ages; ++k) {
      out.push_back(static_cast<Lane>(number_of_age(static_cast<std::size_t>(first_yr) + k)));
    }
    out.resize(size);
    for (std::size_t k = ages; k < size; k += ages) {
      std::copy_n(out.data(), std::min(ages, size - k), out.data() + k);
    }
  };
  const auto copy = [&](LaneArray& out, const LaneArray& by_age) {
    lay(out, [&](std::size_t t) { return by_age[t]; });
  };
  copy(survival, tables.survival);
  copy(diameter_constant, tables.diameter_constant);
  copy(diameter_n, tables.diameter_n);
  copy(tons_constant, tables.tons_constant);
  copy(tons_n, tables.tons_n);
  copy(tons_w, tables.tons_w);
  copy(scale, tables.land_factor);
  lay(gain, [&](std::size_t t) {
    return wide(tables.land_factor[t]) * wide(tables.discount[t]) * tables.net_share;
  });
  lay(fixed, [&](std::size_t t) {
    const double sold = wide(tables.other_timber[t]) * tables.net_share - tables.final_sale_cost +
                        tables.delay_money;
    double sum = wide(tables.discount[t]) * sold + wide(tables.summed_after[t]) -
                 wide(tables.summed_after[cut]);
    if (tables.standing) sum += wide(tables.land_discount[t]) * tables.land_value;
    return wide(tables.land_factor[t]) * sum;
  });
}

LastHarvests::LastHarvests(const SearchTables& tables) {
  const std::size_t ages = tables.discount.size();
  curve.assign(ages, 0);
  for (auto* array : {&invariant, &held_tpa, &competition, &money, &offset_value, &log_tpa,
                      &log_density, &log_tons, &top_factor, &dbh_factor, &objective}) {
    array->assign(LastStands::most * ages, 0);
  }
}

}  // namespace staddle
#endif  // HWY_ONCE
#endif  // STADDLE_HAVE_HIGHWAY
