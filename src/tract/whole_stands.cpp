// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/whole_stands.h"

#include <algorithm>
#include <cmath>

#include "staddle/base/parallel.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

constexpr std::size_t first_regimes_of_a_stand = 40;
constexpr std::size_t most_regimes = 20'000;  // of all stands
constexpr int most_rounds = 6;
// Of the distance between the linear program and nothing: regimes tried before a plan of
// whole stands is known.
constexpr double first_loss_fraction = 0.002;

}  // namespace

WholeStands::WholeStands(const std::vector<StandModel>& models, const Limits& limits,
                         Master& master, PricingOracle& oracle, const ColumnGeneration& generation,
                         const TractOptions& options)
    : models_(models),
      limits_(limits),
      master_(master),
      oracle_(oracle),
      generation_(generation),
      options_(options) {
  outcome_.bound = generation.bound();
}

double WholeStands::gap_allowed(double value) const {
  return std::max(options_.max_gap, tolerance::tract_proof) * std::max(1.0, std::fabs(value));
}

double WholeStands::loss_of(const TractColumn& column) const {
  const double worth = worth_of(column, generation_.bound_worths());
  return models_[column.stand].acres * (best_worth_[column.stand] - worth);
}

bool WholeStands::add_regimes_within(double loss, std::size_t most) {
  std::vector<std::vector<WeighedRegime>> found(models_.size());
  for_each_chunk(models_.size(), options_.threads, [&](std::size_t s) {
    found[s] =
        oracle_.best(s, weights_of(limits_, generation_.bound_worths(), models_[s].group), most);
  });
  best_worth_.clear();
  bool all = true;
  for (std::size_t s = 0; s < models_.size(); ++s) {
    best_worth_.push_back(found[s].front().worth);
    const double floor = found[s].front().worth - loss / models_[s].acres;
    if (found[s].size() == most && found[s].back().worth >= floor) all = false;
    for (const WeighedRegime& weighed : found[s]) {
      if (weighed.worth < floor || master_.knows(s, weighed.regime)) continue;
      master_.add(column_of(models_, s, limits_, weighed.regime));
    }
  }
  return all;
}

void WholeStands::solve_over_columns(double most_loss) {
  lp::LinearProgram program{lp::Direction::maximise};
  for (std::size_t s = 0; s < models_.size(); ++s) program.add_row({1.0, 1.0});
  for (std::size_t r = 0; r < limits_.rows.size(); ++r) {
    const LimitRow& row = limits_.rows[r];
    const double slack = master_.allowed()[r];
    program.add_row(row.is_floor ? lp::Row{row.bound - slack, lp::infinity}
                                 : lp::Row{-lp::infinity, row.bound + slack});
  }
  std::vector<std::size_t> of_master;
  for (std::size_t c = 0; c < master_.columns().size(); ++c) {
    const TractColumn& column = master_.columns()[c];
    if (loss_of(column) > most_loss) continue;
    const double acres = models_[column.stand].acres;
    std::vector<lp::Term> terms = {{column.stand, 1.0}};
    for (const lp::Term& use : column.uses) {
      terms.push_back({models_.size() + use.index, acres * use.value});
    }
    program.add_column({.cost = acres * column.value, .upper = 1.0, .whole = true}, terms);
    of_master.push_back(c);
  }
  lp::Options options;
  options.stop = options_.stop;
  options.relative_gap = std::max(options_.max_gap, tolerance::tract_proof);
  options.seconds =
      std::max(1e-3, std::min(generation_.seconds_left(), TractOptions::whole_stands_seconds));
  const lp::Solution solution = lp::solve(program, options);
  solved_ = solution.status == lp::Status::optimal || solution.status == lp::Status::infeasible;
  if (!solution.has_point()) return;
  if (outcome_.found && solution.value <= value_) return;
  outcome_.found = true;
  value_ = solution.value;
  outcome_.acres.assign(master_.columns().size(), 0.0);
  for (std::size_t i = 0; i < of_master.size(); ++i) {
    const std::size_t stand = master_.columns()[of_master[i]].stand;
    outcome_.acres[of_master[i]] = std::round(solution.columns[i]) * models_[stand].acres;
  }
}

void WholeStands::tell(int round) const {
  if (!options_.progress) return;
  TractProgress progress{TractProgress::Stage::whole_stands, round + 1, master_.columns().size()};
  progress.value = outcome_.found ? value_ : -std::numeric_limits<double>::infinity();
  progress.bound = outcome_.bound;
  options_.progress(progress);
}

bool WholeStands::take_plan_that_is_whole() {
  const std::vector<double>& acres = master_.acres();
  for (std::size_t c = 0; c < acres.size(); ++c) {
    const double whole = models_[master_.columns()[c].stand].acres;
    const double split = std::min(acres[c], whole - acres[c]);
    if (split > tolerance::limit_kept * whole) return false;
  }
  outcome_.found = outcome_.proved = true;
  outcome_.acres = acres;
  outcome_.acres.resize(master_.columns().size(), 0.0);
  return true;
}

WholeStands::Outcome WholeStands::search() {
  const double linear = generation_.bound();
  if (take_plan_that_is_whole()) return outcome_;
  double loss = first_loss_fraction * std::max(1.0, std::fabs(linear));
  std::size_t most = first_regimes_of_a_stand;
  for (int round = 0; round < most_rounds; ++round) {
    if (round > 0 && generation_.time_is_up()) break;
    const bool all = add_regimes_within(loss, most);
    tell(round);
    solve_over_columns(loss);
    if (outcome_.found && linear - value_ <= gap_allowed(value_)) {
      outcome_.proved = true;
      break;
    }
    const bool all_that_matter = outcome_.found && linear - value_ <= loss;
    if (all && solved_ && all_that_matter) {
      outcome_.proved = true;
      outcome_.bound = std::min(linear, value_ + gap_allowed(value_));
      break;
    }
    if (!solved_) break;  // what took too long will not be quicker with more regimes
    // Plans were found: a little more than their distance, so that rounding leaves none out.
    loss = outcome_.found ? (linear - value_) * (1.0 + tolerance::tract_proof) : 8.0 * loss;
    if (!all && most * models_.size() < most_regimes) most *= 4;
  }
  outcome_.acres.resize(master_.columns().size(), 0.0);
  if (!outcome_.found) {
    outcome_.message =
        "no plan of whole stands within the limits was found; the plan shown splits stands";
  } else if (!outcome_.proved) {
    outcome_.message = "the best plan of whole stands that was found; a better one may exist";
  }
  return outcome_;
}

}  // namespace staddle
