// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/futures/simulate_futures.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <thread>

#include "futures/future_table.h"
#include "numeric/descriptive.h"
#include "staddle/base/contract.h"
#include "staddle/base/random.h"
#include "staddle/base/tolerance.h"
#include "staddle/regime/simulate.h"

namespace staddle {
namespace {

// Futures of one chunk of work. The result does not depend on it.
constexpr std::size_t chunk_futures = 4096;

// The loss of one storm and where it struck.
struct Strike {
  double loss_usd_ac = 0;
  std::size_t year = 0, peril = 0;

  bool worse_than(const Strike& other) const {
    if (loss_usd_ac != other.loss_usd_ac) return loss_usd_ac > other.loss_usd_ac;
    return year != other.year ? year < other.year : peril < other.peril;
  }
};

// What one chunk of futures counts.
struct Tally {
  std::size_t half_lost = 0, cleared = 0;
  Strike worst;
};

// All futures of one regime.
class RegimeDraws {
 public:
  RegimeDraws(const CaseKernel& kernel, const FutureTable& table, const FuturesOptions& options)
      : table_(table), options_(options), values_(options.futures) {
    if (options.choices) choice_values_.resize(options.futures);
    for (const PerilKernel& peril : kernel.perils()) {
      chances_.push_back((chances_.empty() ? 0.0 : chances_.back()) + peril.annual_probability);
    }
    tallies_.resize((values_.size() + chunk_futures - 1) / chunk_futures);
  }

  std::size_t chunks() const { return tallies_.size(); }

  void draw_chunk(std::size_t chunk) {
    const std::size_t from = chunk * chunk_futures;
    const std::size_t to = std::min(from + chunk_futures, values_.size());
    for (std::size_t i = from; i < to; ++i) draw(i, tallies_[chunk]);
  }

  RegimeFutures summary(const Hazard& hazard) const {
    RegimeFutures result;
    const double mean = numeric::mean(values_);
    const double error = standard_error(values_);
    result.mean = dollars_per_acre(mean);
    result.standard_error = dollars_per_acre(error);
    const auto quantile = [&](double fraction) {
      return dollars_per_acre(numeric::quantile(values_, fraction));
    };
    result.quantiles = {quantile(0.05), quantile(0.25), quantile(0.50), quantile(0.75),
                        quantile(0.95)};
    Tally sum;
    for (const Tally& tally : tallies_) {
      sum.half_lost += tally.half_lost;
      sum.cleared += tally.cleared;
      if (tally.worst.worse_than(sum.worst)) sum.worst = tally.worst;
    }
    const double count = static_cast<double>(values_.size());
    result.chance_half_lost = static_cast<double>(sum.half_lost) / count;
    if (sum.worst.loss_usd_ac > 0.0) {
      result.worst_event = {age(table_.years()[sum.worst.year].age_yr),
                            hazard.perils[sum.worst.peril].name,
                            dollars_per_acre(sum.worst.loss_usd_ac)};
    }
    if (options_.choices) {
      result.choices = {dollars_per_acre(numeric::mean(choice_values_)),
                        dollars_per_acre(standard_error(choice_values_)),
                        static_cast<double>(sum.cleared) / count};
    }
    return result;
  }

 private:
  static double standard_error(const std::vector<double>& values) {
    return std::sqrt(numeric::sample_variance(values) / static_cast<double>(values.size()));
  }

  // The peril that this year's draw means; as many as there are perils: a calm year.
  std::size_t peril_of(double draw) const {
    if (chances_.empty() || draw >= chances_.back()) return chances_.size();
    return static_cast<std::size_t>(
        std::upper_bound(chances_.begin(), chances_.end(), draw) - chances_.begin());
  }

  void draw(std::size_t future, Tally& tally) {
    RandomStream random(options_.seed, future);
    double value = table_.calm_value();
    double standing = 1.0;
    bool cleared = false;
    for (std::size_t year = 0; year < table_.years().size(); ++year) {
      const std::size_t peril = peril_of(random.next_uniform());
      if (peril == chances_.size()) continue;
      const Blow& blow = table_.blow(year, peril);
      if (blow.share == 0.0) continue;
      const Strike strike{standing * blow.loss_usd_ac, year, peril};
      if (strike.worse_than(tally.worst)) tally.worst = strike;
      value -= standing * blow.share * blow.cost_usd_ac;
      standing *= 1.0 - blow.share;
      if (options_.choices && !cleared && is_cleared(table_.years()[year], standing)) {
        cleared = true;
        choice_values_[future] = value - standing * table_.years()[year].clearing_cost_usd_ac;
      }
    }
    values_[future] = value;
    if (options_.choices && !cleared) choice_values_[future] = value;
    tally.half_lost += standing <= 0.5 + tolerance::limit_slack;
    tally.cleared += cleared;
  }

  static bool is_cleared(const FutureYear& year, double standing) {
    if (!year.may_clear || standing == 0.0) return false;
    return year.clearing_pays || standing * year.basal_area_ft2_ac <
                                     cleared_below_ft2_ac - tolerance::limit_slack;
  }

  const FutureTable& table_;
  const FuturesOptions& options_;
  std::vector<double> chances_;  // of a peril or one before it
  std::vector<double> values_, choice_values_;
  std::vector<Tally> tallies_;
};

// Tells the caller's progress function from the caller's thread only.
class Reporter {
 public:
  Reporter(const Progress& progress, std::size_t all)
      : progress_(progress), all_(static_cast<double>(all)) {}

  void one_more() {
    const double part = static_cast<double>(++done_) / all_;
    if (progress_ && std::this_thread::get_id() == caller_) progress_(part);
  }

 private:
  const Progress& progress_;
  double all_;
  std::thread::id caller_ = std::this_thread::get_id();
  std::atomic<std::size_t> done_{0};
};

std::vector<YearlyLossShare> annual_losses(const StandCase& stand_case, const FutureTable& table) {
  std::vector<YearlyLossShare> result;
  for (const FutureYear& year : table.years()) {
    result.push_back({age(year.age_yr), year.expected_share, std::nullopt});
  }
  if (result.empty() || !stand_case.tabled_cuts.empty()) return result;
  const std::vector<YearRecord> unthinned = grow_unthinned(stand_case, result.back().at);
  for (std::size_t i = 0; i < result.size(); ++i) {
    // The record of the present, which no storm has met, stands first.
    result[i].unthinned = unthinned[i + 1].expected_loss_share;
  }
  return result;
}

}  // namespace

FuturesSolution simulate_futures(const FuturesProblem& problem, const FuturesOptions& options) {
  require(options.futures >= FuturesOptions::least_futures &&
              options.futures <= FuturesOptions::most_futures,
          "the number of futures lies within its limits");
  const CaseKernel kernel(problem.stand_case);
  FuturesSolution solution;
  const std::size_t chunks = (options.futures + chunk_futures - 1) / chunk_futures;
  Reporter reporter(options.progress, chunks * problem.regimes.size());
  for (const Regime& regime : problem.regimes) {
    const FutureTable table(kernel, problem.stand_case, regime);
    RegimeDraws draws(kernel, table, options);
    const auto work = [&](std::size_t chunk) {
      draws.draw_chunk(chunk);
      reporter.one_more();
    };
    if (!for_each_chunk(draws.chunks(), options.threads, work, options.stop)) {
      solution.status = FuturesSolution::Status::stopped;
      return solution;
    }
    RegimeFutures result = draws.summary(problem.stand_case.hazard);
    result.expected_value = evaluate(problem.stand_case, regime).objective;
    if (result.standard_error > dollars_per_acre(0)) {
      result.difference_in_standard_errors =
          (result.mean - result.expected_value) / result.standard_error;
    }
    result.annual_loss = annual_losses(problem.stand_case, table);
    solution.regimes.push_back(std::move(result));
  }
  if (options.progress) options.progress(1.0);
  return solution;
}

}  // namespace staddle
