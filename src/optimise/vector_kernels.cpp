// SPDX-License-Identifier: GPL-3.0-or-later
#ifdef STADDLE_HAVE_HIGHWAY
#include "optimise/vector_kernels.h"

#include <cmath>

// Highway compiles what follows once for each instruction set and chooses when it runs.
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "optimise/vector_kernels.cpp"
#define STADDLE_MOST_LANES 16
#include "hwy/foreach_target.h"
//
#include "optimise/lanes.h"

HWY_BEFORE_NAMESPACE();
namespace staddle {
namespace HWY_NAMESPACE {
namespace {

// One step of the arithmetic for all ages of a plan, then the next step: so the long
// chains of one vector overlap those of the others.
template <class Step>
HWY_INLINE void for_ages(const StretchPlan& plan, const Step& step) {
  const auto to = static_cast<std::size_t>(plan.to);
  for (auto t = static_cast<std::size_t>(plan.from); t <= to; t += hn::Lanes(Tag())) step(t);
}

// n at all ages of the plan.
HWY_INLINE void grow_trees(const SearchTables& tables, const SearchState& state,
                           const StretchPlan& plan, Trajectory& out) {
  const Lanes invariant = set(state.trees.invariant);
  if (state.trees.held) {
    const Lanes n = set(std::log(state.trees.invariant));
    for_ages(plan, [&](std::size_t t) HWY_ATTR {
      store(n, out.log_tpa, t);
      store(invariant, out.tpa, t);
    });
    return;
  }
  const Lanes power = set(-1.0 / tables.survival_exponent), floor = set(tables.survival_floor);
  for_ages(plan, [&](std::size_t t) HWY_ATTR {
    const Lanes term = log_of(hn::Add(invariant, load(tables.survival, t)));
    const Lanes tpa = hn::Add(floor, exp_of(hn::Mul(power, term)));
    store(tpa, out.tpa, t);
    store(log_of(tpa), out.log_tpa, t);
  });
}

// w at all ages of the plan.
HWY_INLINE void recover(const SearchState& state, const StretchPlan& plan, Trajectory& out) {
  if (state.competition == 0.0) {
    for_ages(plan, [&](std::size_t t) HWY_ATTR {
      store(zero(), out.log_density, t);
      store(set(1.0), out.density, t);
    });
    return;
  }
  const Lanes years = counted_from(plan.from - state.age_yr);
  Lanes competition =
      hn::Mul(set(state.competition), exp_of(hn::Mul(set(-state.recovery_per_yr), years)));
  const Lanes decay =
      set(std::exp(-state.recovery_per_yr * static_cast<double>(hn::Lanes(Tag()))));
  for_ages(plan, [&](std::size_t t) HWY_ATTR {
    const Lanes density = hn::Sub(set(1.0), competition);
    store(density, out.density, t);
    store(log_of(density), out.log_density, t);
    competition = hn::Mul(competition, decay);
  });
}

// ln Y, ln Dq, X1 and X2 at all ages of the plan.
HWY_INLINE void measure(const SearchTables& tables, const StretchPlan& plan, Trajectory& out) {
  const Lanes half = set(0.5), top_power = set(-tables.top_power),
              dbh_power = set(tables.dbh_power), tree_power = set(tables.tree_power);
  for_ages(plan, [&](std::size_t t) HWY_ATTR {
    const Lanes n = load(out.log_tpa, t), w = load(out.log_density, t);
    const Lanes log_diameter =
        hn::MulAdd(half, w,
                   hn::MulAdd(load(tables.diameter_n, t), n, load(tables.diameter_constant, t)));
    store(hn::MulAdd(load(tables.tons_w, t), w,
                     hn::MulAdd(load(tables.tons_n, t), n, load(tables.tons_constant, t))),
          out.log_tons, t);
    store(log_diameter, out.diameter_in, t);
    store(exp_of(hn::Mul(top_power, log_diameter)), out.top_factor, t);
    store(exp_of(hn::MulSub(tree_power, n, hn::Mul(dbh_power, log_diameter))), out.dbh_factor, t);
  });
}

// The worth of what stands, and its tons where cuts follow.
HWY_INLINE void appraise(const SearchTables& tables, const SearchState& state,
                         const StretchPlan& plan, Trajectory& out) {
  double offset_value = 0.0;
  for (std::size_t i = 0; i < tables.products; ++i) {
    offset_value += state.offset[i] * wide(tables.final_price[i]);
  }
  for_ages(plan, [&](std::size_t t) HWY_ATTR {
    const Lanes log_tons = load(out.log_tons, t), top_factor = load(out.top_factor, t),
                dbh_factor = load(out.dbh_factor, t);
    Lanes value = hn::Add(load(tables.other_timber, t), set(offset_value));
    for (std::size_t j = 0; j < tables.terms; ++j) {
      const Lanes m = merchantable(tables, j, log_tons, top_factor, dbh_factor);
      value = hn::MulAdd(set(tables.final_weight[j]), m, value);
      if (plan.cuts_follow) store(m, out.merchantable[j], t);
    }
    store(value, out.stumpage, t);
  });
}

// Diameter and crown, for limits, storms and the response to a cut.
HWY_INLINE void measure_crowns(const SearchTables& tables, const StretchPlan& plan,
                               Trajectory& out) {
  for_ages(plan, [&](std::size_t t) HWY_ATTR {
    const Lanes diameter = exp_of(load(out.diameter_in, t));
    store(diameter, out.diameter_in, t);
    const Lanes crown = hn::Sub(set(1.0 + tables.crown_offset),
                                exp_of(hn::Mul(load(tables.crown_slope, t), diameter)));
    store(clamped(crown, 0.0, 1.0), out.crown_ratio, t);
  });
}

// The damage share of a peril at the ages t, t+1, ...
HWY_INLINE Lanes damage(const SearchTables& tables, const PerilKernel& peril, std::size_t t,
                        Lanes slenderness, Lanes opening) {
  if (peril.constant) return set(peril.constant_share);
  const Lanes height = load(tables.height_ft, t);
  const Lanes tall = clamped(hn::Mul(hn::Sub(height, set(20.0)), set(0.1)), 0.0, 1.0);
  Lanes reach = set(1.0);
  if (peril.wind) {
    reach = clamped(hn::Mul(hn::Sub(height, set(30.0)), set(1.0 / 35.0)), 0.0, 1.3);
  }
  Lanes log_odds = hn::MulAdd(set(peril.height_slope_per_ft),
                              hn::Sub(height, set(peril.reference_height_ft)),
                              set(peril.base_log_odds));
  log_odds = hn::MulAdd(set(peril.slenderness_slope),
                        hn::Max(zero(), hn::Sub(slenderness, set(slenderness_threshold))),
                        log_odds);
  log_odds = hn::MulAdd(hn::Mul(set(peril.log_odds_ratio), opening), reach, log_odds);
  return hn::Div(tall, hn::Add(set(1.0), exp_of(hn::Neg(log_odds))));
}

// What storms take at the ages t, t+1, ..., per acre that enters the year.
HWY_INLINE void meet_storms(const SearchTables& tables, const SearchState& state, std::size_t t,
                            Trajectory& out) {
  const Lanes age = counted_from(static_cast<double>(t));
  const Lanes cap = set(slenderness_cap);
  Lanes slenderness = hn::Min(
      cap, hn::Div(hn::Mul(set(12.0), load(tables.height_ft, t)), load(out.diameter_in, t)));
  Lanes opening = zero();
  const Lanes recovery = set(tables.storm_recovery_yr);
  for (int i = 0; i < state.memories; ++i) {
    const CutMemory& cut = state.memory[static_cast<std::size_t>(i)];
    const Lanes since = hn::Sub(age, set(cut.age_yr + 1.0));
    const Lanes left = hn::Max(zero(), hn::Sub(set(1.0), hn::Div(since, recovery)));
    opening = hn::Max(opening, hn::Mul(set(cut.opening), left));
    const auto recent = hn::Lt(since, recovery);
    slenderness = hn::IfThenElse(recent, hn::Max(slenderness, set(cut.slenderness)), slenderness);
  }
  const Lanes value = load(out.stumpage, t);
  Lanes loss = zero(), money = zero();
  for (const PerilKernel& peril : tables.perils) {
    const Lanes lost = hn::Mul(set(peril.annual_probability),
                               damage(tables, peril, t, slenderness, opening));
    loss = hn::Add(loss, lost);
    money = hn::MulAdd(lost, hn::Sub(hn::Mul(set(peril.salvage_share), value),
                                     set(peril.cleanup_usd_ac)), money);
  }
  store(loss, out.loss, t);
  store(hn::MulAdd(loss, set(tables.delay_money), money), out.loss_money, t);
}

// Money, land weight and standing acres year by year, where storms link the years.
HWY_INLINE void pass_years(const SearchTables& tables, const SearchState& state,
                           const StretchPlan& plan, Trajectory& out) {
  const LaneArray& yearly =
      state.first_thinning_past ? tables.yearly_after : tables.yearly_before;
  double money = state.money, land_weight = state.land_weight, alive = state.alive;
  for (auto t = static_cast<std::size_t>(plan.from); t <= static_cast<std::size_t>(plan.to); ++t) {
    if (static_cast<int>(t) > state.age_yr) {
      const double now = wide(tables.discount[t]) * alive;
      money += now * (wide(out.loss_money[t]) + wide(yearly[t]));
      land_weight += now * tables.delay_discount * wide(out.loss[t]);
      alive *= 1.0 - wide(out.loss[t]);
      money += wide(tables.discount[t]) * alive * wide(tables.practices[t]);
    }
    out.money[t] = static_cast<Lane>(money);
    out.land_weight[t] = static_cast<Lane>(land_weight);
    out.alive[t] = static_cast<Lane>(alive);
  }
}

// The worth of selling at the ages t, t+1, ...; returns it where a sale is allowed.
template <bool storms>
HWY_INLINE Lanes sell(const SearchTables& tables, const SearchState& state, std::size_t t,
                      const StretchPlan& plan, Trajectory& out) {
  const Lanes net = hn::Add(
      hn::MulSub(load(out.stumpage, t), set(tables.net_share), set(tables.final_sale_cost)),
      set(tables.delay_money));
  Lanes objective;
  if constexpr (storms) {
    const Lanes now = hn::Mul(load(tables.discount, t), load(out.alive, t));
    const Lanes money = hn::MulAdd(now, net, load(out.money, t));
    const Lanes land = hn::MulAdd(now, set(tables.delay_discount), load(out.land_weight, t));
    objective = tables.standing ? hn::MulAdd(land, set(tables.land_value), money)
                                : hn::Div(money, hn::Sub(set(1.0), land));
  } else {
    const LaneArray& summed =
        state.first_thinning_past ? tables.summed_after : tables.summed_before;
    const auto start = static_cast<std::size_t>(state.age_yr);
    const Lanes before = hn::Add(load(summed, t), set(state.money - wide(summed[start])));
    if (plan.cuts_follow) store(before, out.money, t);
    objective = hn::MulAdd(load(tables.discount, t), net, before);
    if (tables.standing) {
      objective = hn::MulAdd(load(tables.land_discount, t), set(tables.land_value), objective);
    }
    objective = hn::Mul(objective, load(tables.land_factor, t));
  }
  const Lanes age = counted_from(static_cast<double>(t));
  const auto allowed = hn::And(hn::Ge(age, set(plan.final_from)), hn::Le(age, set(plan.to)));
  objective = hn::IfThenElse(allowed, objective, set(minus_infinity));
  store(objective, out.objective, t);
  return objective;
}

// Every final harvest of one stretch; returns the largest objective.
HWY_INLINE double sell_all(const SearchTables& tables, const SearchState& state,
                           const StretchPlan& plan, Trajectory& out) {
  Lanes best = set(minus_infinity);
  if (tables.perils.empty()) {
    for_ages(plan, [&](std::size_t t) HWY_ATTR {
      best = hn::Max(best, sell<false>(tables, state, t, plan, out));
    });
  } else {
    pass_years(tables, state, plan, out);
    for_ages(plan, [&](std::size_t t) HWY_ATTR {
      best = hn::Max(best, sell<true>(tables, state, t, plan, out));
    });
  }
  return largest_of(best);
}

void follow(const SearchTables& tables, const SearchState* states, std::size_t count,
            const StretchPlan& plan, Trajectory* stands, double* highest) {
  const bool storms = !tables.perils.empty();
  for (std::size_t i = 0; i < count; ++i) grow_trees(tables, states[i], plan, stands[i]);
  for (std::size_t i = 0; i < count; ++i) recover(states[i], plan, stands[i]);
  for (std::size_t i = 0; i < count; ++i) measure(tables, plan, stands[i]);
  for (std::size_t i = 0; i < count; ++i) appraise(tables, states[i], plan, stands[i]);
  if (plan.cuts_follow || storms) {
    for (std::size_t i = 0; i < count; ++i) measure_crowns(tables, plan, stands[i]);
  }
  if (storms) {
    for (std::size_t i = 0; i < count; ++i) {
      for_ages(plan, [&](std::size_t t) HWY_ATTR { meet_storms(tables, states[i], t, stands[i]); });
    }
  }
  for (std::size_t i = 0; i < count; ++i) {
    stands[i].from = plan.from;
    stands[i].to = plan.to;
    highest[i] = sell_all(tables, states[i], plan, stands[i]);
  }
}

}  // namespace

const VectorKernels& kernels() {
  static const VectorKernels table{follow};
  return table;
}

}  // namespace HWY_NAMESPACE
}  // namespace staddle
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace staddle {

HWY_EXPORT(kernels);

const VectorKernels& vector_kernels() { return HWY_DYNAMIC_DISPATCH(kernels)(); }

Trajectory::Trajectory(const SearchTables& tables) {
  const std::size_t size = tables.discount.size();
  for (auto* array : {&tpa, &log_tpa, &density, &log_density, &log_tons, &top_factor,
                      &dbh_factor, &diameter_in,
                      &crown_ratio, &stumpage, &money, &land_weight, &alive, &objective, &loss,
                      &loss_money}) {
    array->assign(size, 0);
  }
  std::fill(alive.begin(), alive.end(), Lane{1});
  merchantable.assign(tables.terms, LaneArray(size, 0));
}

}  // namespace staddle
#endif  // HWY_ONCE
#endif  // STADDLE_HAVE_HIGHWAY
