// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/column_generation.h"

#include <algorithm>
#include <cmath>

#include "staddle/base/parallel.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

// How much of the prices searched is of the best bound, the rest of the master program
// (Wentges 1997, Int. Trans. Oper. Res. 4:151): the master's own swing widely.
constexpr double smoothing = 0.7;

// Regimes of a slow stand that a search tells.
constexpr std::size_t remembered = 24;

}  // namespace

ColumnGeneration::ColumnGeneration(const std::vector<StandModel>& models, const Limits& limits,
                                   Master& master, PricingOracle& oracle,
                                   const TractOptions& options)
    : models_(models),
      limits_(limits),
      master_(master),
      oracle_(oracle),
      options_(options),
      known_(models.size()) {
  for (std::size_t s = 0; s < models.size(); ++s) any_slow_ = any_slow_ || oracle.is_slow(s);
}

void ColumnGeneration::forget_bound() {
  bound_ = std::numeric_limits<double>::infinity();
  bound_worths_.clear();
}

double ColumnGeneration::seconds_left() const {
  constexpr double no_limit = 1e6;
  return options_.seconds_left ? std::min(no_limit, options_.seconds_left()) : no_limit;
}

bool ColumnGeneration::time_is_up() const {
  return options_.stop.stop_requested() || seconds_left() <= 0.0;
}

bool ColumnGeneration::gap_is_met() const {
  if (master_.stage() == Master::Stage::relaxing) return false;
  // Once it is settled what limits give way, the plan may make use of it.
  if (master_.stage() == Master::Stage::penalised && !master_.keeps_limits()) return false;
  const double allowed = std::max(options_.max_gap, tolerance::tract_proof);
  return bound_ - master_.value() <= allowed * std::max(1.0, std::fabs(master_.value()));
}

void ColumnGeneration::tell(TractProgress::Stage told_as) const {
  if (!options_.progress) return;
  const bool has_value =
      master_.has_point() && master_.keeps_limits() && master_.stage() != Master::Stage::relaxing;
  TractProgress progress{told_as, rounds_, master_.columns().size()};
  progress.value = has_value ? master_.present_value() : -std::numeric_limits<double>::infinity();
  progress.bound =
      master_.stage() == Master::Stage::relaxing ? std::numeric_limits<double>::infinity() : bound_;
  options_.progress(progress);
}

// The evaluator's own figures decide whether a column is wanted.
bool ColumnGeneration::earns(const TractColumn& column) const {
  const bool relaxing = master_.stage() == Master::Stage::relaxing;
  const double worth = worth_of(column, master_.worths()) - (relaxing ? column.value : 0.0);
  const double price = master_.price_of_acre(column.stand);
  return worth - price > tolerance::prune_slack(price);
}

ColumnGeneration::Search ColumnGeneration::search_stand(std::size_t stand,
                                                        const std::vector<double>& worths) const {
  PlanWeights weights = weights_of(limits_, worths, models_[stand].group);
  if (master_.stage() == Master::Stage::relaxing) weights.present_value = 0.0;
  Search search;
  const std::vector<WeighedRegime> best =
      oracle_.best(stand, weights, oracle_.is_slow(stand) ? remembered : 1);
  search.best_worth = best.front().worth;
  for (const WeighedRegime& weighed : best) {
    if (master_.knows(stand, weighed.regime)) continue;
    TractColumn column = column_of(models_, stand, limits_, weighed.regime);
    const bool is_best = &weighed == &best.front();
    if (is_best && earns(column)) {
      search.columns.push_back(std::move(column));
    } else if (!is_best) {
      search.others.push_back(std::move(column));
    }
  }
  return search;
}

ColumnGeneration::Search ColumnGeneration::try_known(std::size_t stand) const {
  if (!oracle_.is_slow(stand)) return search_stand(stand, master_.worths());
  Search search;
  const TractColumn* best = nullptr;
  for (const TractColumn& column : known_[stand]) {
    if (!earns(column) || master_.knows(stand, column.regime)) continue;
    const bool better =
        best == nullptr || worth_of(column, master_.worths()) > worth_of(*best, master_.worths());
    if (better) best = &column;
  }
  if (best != nullptr) search.columns.push_back(*best);
  return search;
}

bool ColumnGeneration::for_all_stands(const std::function<void(std::size_t)>& work) const {
  constexpr std::size_t per_chunk = 8;
  const std::size_t chunks = (models_.size() + per_chunk - 1) / per_chunk;
  return for_each_chunk(
      chunks, options_.threads,
      [&](std::size_t chunk) {
        const std::size_t end = std::min(models_.size(), (chunk + 1) * per_chunk);
        for (std::size_t s = chunk * per_chunk; s < end; ++s) work(s);
      },
      options_.stop);
}

std::size_t ColumnGeneration::add(std::vector<Search>& searches) {
  std::size_t added = 0;
  for (Search& search : searches) {
    for (TractColumn& column : search.columns) {
      if (master_.add(std::move(column))) ++added;
    }
  }
  return added;
}

bool ColumnGeneration::search_known(std::size_t& added) {
  std::vector<Search> searches(models_.size());
  if (!for_all_stands([&](std::size_t s) { searches[s] = try_known(s); })) return false;
  added = add(searches);
  return true;
}

bool ColumnGeneration::search(const std::vector<double>& worths, std::size_t& added) {
  std::vector<Search> searches(models_.size());
  if (!for_all_stands([&](std::size_t s) { searches[s] = search_stand(s, worths); })) return false;
  std::vector<double> best_worth;
  for (std::size_t s = 0; s < searches.size(); ++s) {
    best_worth.push_back(searches[s].best_worth);
    if (!searches[s].others.empty()) known_[s] = std::move(searches[s].others);
  }
  const double bound = master_.bound_at(worths, best_worth);
  if (bound < bound_) {
    bound_ = bound;
    bound_worths_ = worths;
  }
  added = add(searches);
  return true;
}

ColumnGeneration::End ColumnGeneration::run(TractProgress::Stage told_as) {
  bool finished = false;
  while (true) {
    const End end = one_round(finished);
    tell(told_as);
    if (finished) return end;
  }
}

ColumnGeneration::End ColumnGeneration::one_round(bool& finished) {
  finished = true;
  if (master_.has_point() && time_is_up()) return End::stopped;
  ++rounds_;
  lp::Options options;
  options.stop = options_.stop;
  options.seconds = std::max(1e-3, seconds_left());
  const lp::Status status = master_.solve(options);
  if (status == lp::Status::limit_reached) return End::stopped;
  if (status != lp::Status::optimal) {
    message_ = master_.message();
    return End::gave_up;
  }
  if (gap_is_met()) return End::gap_met;
  if (any_slow_ && !bound_worths_.empty()) {
    std::size_t added = 0;
    if (!search_known(added)) return End::stopped;
    finished = added == 0;
    if (!finished) return End::proved;
  }
  for (double share = bound_worths_.empty() ? 0.0 : smoothing;; share = 0.0) {
    std::vector<double> worths = master_.worths();
    for (std::size_t r = 0; r < worths.size() && share > 0.0; ++r) {
      worths[r] = share * bound_worths_[r] + (1.0 - share) * worths[r];
    }
    std::size_t added = 0;
    if (!search(worths, added)) return End::stopped;
    if (gap_is_met()) return End::gap_met;
    if (added > 0) break;
    if (share == 0.0) return End::proved;
  }
  finished = false;
  return End::proved;
}

}  // namespace staddle
