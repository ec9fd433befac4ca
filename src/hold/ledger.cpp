// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/hold/ledger.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "regime/case_kernel.h"
#include "staddle/base/best_of_ties.h"
#include "staddle/base/contract.h"
#include "staddle/optimise/solve.h"
#include "staddle/regime/after_tax.h"

namespace staddle {
namespace {

constexpr int years_to_wait = 3;

// The stand at the end of one year, and what a sale would bring.
struct Moment {
  StandPoint point;
  Measured measured;
  double value_usd_ac = 0.0;  // V
};

bool earlier(const LedgerRow* a, const LedgerRow* b) { return a->at < b->at; }

class Bookkeeper {
 public:
  explicit Bookkeeper(const StandCase& stand_case, Age last)
      : kernel_(stand_case),
        rate_(stand_case.costs.rate.per_year()),
        land_usd_ac_(stand_case.land_value.in(dollars_per_acre)),
        last_yr_(std::min(last.whole(), kernel_.last_age_yr())) {}

  Ledger keep(const std::optional<Thinning>& thinning) const {
    Moment now = thinning ? just_after(*thinning) : at(kernel_.start());
    Ledger ledger;
    while (true) {
      ledger.years.push_back(row_of(now));
      const bool last = now.point.age_yr >= last_yr_;
      if (now.point.age_yr == kernel_.last_age_yr()) break;
      now = pass_year(now, ledger.years.back());
      if (last) break;
    }
    compare(ledger);
    return ledger;
  }

  // Of the ledger without thinning.
  std::optional<Waiting> waiting(const Ledger& ledger) const {
    const int span = std::min(years_to_wait, static_cast<int>(ledger.years.size()) - 1);
    if (span < 1) return std::nullopt;
    Moment now = at(kernel_.start());
    const double start = now.value_usd_ac;
    double gain = 0.0;
    for (int year = 0; year < span; ++year) {
      const double before = now.value_usd_ac;
      StormYear storm;
      now = next_year(now, storm);
      gain += now.value_usd_ac - before + money_of_year(now, storm);
    }
    Waiting result;
    result.years = span;
    result.gain = dollars_per_acre(gain);
    if (start > 0.0 && start + gain > 0.0) {
      result.growth_per_yr = std::pow((start + gain) / start, 1.0 / span) - 1.0;
    }
    result.gain_today = ledger.years[static_cast<std::size_t>(span)].forest_value_if_cut -
                        ledger.years.front().forest_value_if_cut;
    return result;
  }

 private:
  Moment at(const StandPoint& point) const {
    Moment moment;
    moment.point = point;
    kernel_.measure_tons(moment.point, moment.measured);
    moment.value_usd_ac = kernel_.harvest_revenue(moment.point, moment.measured);
    return moment;
  }

  Moment just_after(const Thinning& thinning) const {
    StandPoint point = kernel_.start();
    Measured measured;
    while (point.age_yr < thinning.at.whole()) kernel_.advance(point, measured);
    kernel_.measure_tons(point, measured);
    Cut cut;
    kernel_.work_out_cut(point, measured, thinning.removal_fraction, cut);
    kernel_.take_cut(point, measured, cut);
    return at(point);
  }

  Moment next_year(const Moment& now, StormYear& storm) const {
    StandPoint point = now.point;
    Measured measured = now.measured;
    storm = kernel_.advance(point, measured);
    return at(point);
  }

  LedgerRow row_of(const Moment& now) const {
    LedgerRow row;
    row.at = age(now.point.age_yr);
    for (std::size_t i = 0; i < kernel_.products(); ++i) {
      row.tons.push_back(tons_per_acre(now.measured.tons[i]));
    }
    row.stumpage = dollars_per_acre(now.value_usd_ac);
    row.forest_value_if_cut =
        dollars_per_acre(kernel_.objective(kernel_.harvest(now.point, now.measured)));
    if (now.value_usd_ac > 0.0) {
      const double land_waiting =
          kernel_.land_discount(kernel_.present_yr()) * land_usd_ac_ + kernel_.delay_money();
      row.required = rate_ * (now.value_usd_ac + land_waiting) / now.value_usd_ac;
    }
    return row;
  }

  // Money of the year that ends at a moment, besides the timber's growth: flows less costs
  // less what storms are expected to take, per acre that entered it.
  double money_of_year(const Moment& end, const StormYear& storm) const {
    return kernel_.yearly_money(end.point.age_yr, end.point.first_thinning_past) +
           kernel_.practice_money(end.point.age_yr) + storm.salvage_usd_ac - storm.cleanup_usd_ac -
           storm.loss_share * end.value_usd_ac;
  }

  // Goes on by a year and writes what it brings into the row of the year before.
  Moment pass_year(const Moment& now, LedgerRow& row) const {
    StormYear storm;
    Moment next = next_year(now, storm);
    const double growth = next.value_usd_ac - now.value_usd_ac;
    const double volume = growth_by_volume(now, next);
    row.growth = LedgerRow::Growth{dollars_per_acre(volume), dollars_per_acre(growth - volume)};
    if (now.value_usd_ac > 0.0) {
      row.value_growth = (growth + money_of_year(next, storm)) / now.value_usd_ac;
    }
    return next;
  }

  // Where nothing stands yet there is no mix of products: all new wood is volume.
  double growth_by_volume(const Moment& now, const Moment& next) const {
    const auto total = [&](const Moment& moment) {
      return std::accumulate(
          moment.measured.tons.begin(),
          moment.measured.tons.begin() + static_cast<std::ptrdiff_t>(kernel_.products()), 0.0);
    };
    const double tons_now = total(now);
    const double other_now = kernel_.other_timber_value(now.point.age_yr);
    if (tons_now <= 0.0) return next.value_usd_ac - now.value_usd_ac;
    const double pine_now = kernel_.stumpage_value(now.measured, now.point.age_yr) - other_now;
    const double added_pine = (total(next) - tons_now) * pine_now / tons_now;
    const double added_other = kernel_.other_timber_value(next.point.age_yr) - other_now;
    return kernel_.net_share() * (added_pine + added_other);
  }

  static void compare(Ledger& ledger) {
    BestOfTies<const LedgerRow*, earlier> best;
    for (const LedgerRow& row : ledger.years) {
      best.offer(row.forest_value_if_cut.in(dollars_per_acre), &row);
    }
    const LedgerRow& mature = *best.best()->choice;
    ledger.matures_at = mature.at;
    const MoneyPerAcre most = mature.forest_value_if_cut;
    for (LedgerRow& row : ledger.years) row.loss_against_best = most - row.forest_value_if_cut;
  }

  CaseKernel kernel_;
  double rate_;
  double land_usd_ac_;
  int last_yr_;
};

std::optional<Thinning> best_thinning(const StandProblem& problem) {
  StandOptions options;
  options.by_count = true;
  const StandSolution solution = solve(problem, options);
  if (solution.by_count.size() < 2 || !solution.by_count[1]) return std::nullopt;
  return solution.by_count[1]->regime.thinnings.front();
}

}  // namespace

HoldAnswer hold_or_cut(const StandProblem& problem) {
  require(problem.stand_case.standing.has_value(), "hold or cut is asked of a standing stand");
  const Bookkeeper books(problem.stand_case, problem.lattice.final_to);
  HoldAnswer answer{books.keep(std::nullopt), std::nullopt, std::nullopt};
  answer.waiting = books.waiting(answer.ledger);
  if (const std::optional<Thinning> thinning = best_thinning(problem)) {
    answer.after_best_thinning = {*thinning, books.keep(*thinning)};
  }
  return answer;
}

HoldAnswer hold_after_tax(const StandProblem& problem, const HoldAnswer& before,
                          const TaxRules& rules, MoneyPerAcre land_value) {
  const AfterTax tax(problem.stand_case, rules, problem.acres, land_value);
  const Bookkeeper books(tax.stand_case(), problem.lattice.final_to);
  HoldAnswer answer{books.keep(std::nullopt), std::nullopt, std::nullopt};
  answer.waiting = books.waiting(answer.ledger);
  if (!before.after_best_thinning) return answer;
  const Thinning thinning = before.after_best_thinning->thinning;
  answer.after_best_thinning = {thinning, books.keep(thinning)};
  return answer;
}

}  // namespace staddle
