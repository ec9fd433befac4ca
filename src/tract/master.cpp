// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/master.h"

#include <algorithm>
#include <cmath>

#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

using Measure = LimitRow::Measure;

// What a limit without an amount of its own is measured by: a period's share of what the
// tract uses when every stand follows its own best plan, and never next to nothing.
std::vector<double> scales_of(const std::vector<StandModel>& models, const Limits& limits) {
  std::vector<double> scales;
  std::vector<double> free_use(limits.rows.size(), 0.0);
  for (std::size_t s = 0; s < models.size(); ++s) {
    const TractColumn own = column_of(models, s, limits, models[s].own_best.regime);
    for (const lp::Term& use : own.uses) {
      free_use[use.index] += std::fabs(use.value) * models[s].acres;
    }
  }
  double mean = 0.0;
  for (const double use : free_use) mean += use / static_cast<double>(free_use.size());
  for (std::size_t r = 0; r < limits.rows.size(); ++r) {
    const double bound = std::fabs(limits.rows[r].bound);
    scales.push_back(std::max({bound, limits.rows[r].is_relative ? free_use[r] : 0.0,
                               limits.rows[r].is_relative ? mean : 0.0, 1.0}));
  }
  return scales;
}

// Dollars of present value for a unit that a limit gives way: far above what any unit can
// earn, and not so far that the other figures drown in it.
std::vector<double> penalties_of(const std::vector<StandModel>& models, const Limits& limits) {
  constexpr double times_worth = 20.0;
  double acre = 1000.0;
  double ton = 10.0;
  for (const StandModel& model : models) {
    acre = std::max(acre, std::fabs(model.own_value));
    for (const ProductPrice& price : model.problem.stand_case.prices) {
      ton = std::max(ton, price.stumpage.in(dollars_per_ton));
    }
  }
  std::vector<double> penalties;
  for (const LimitRow& row : limits.rows) {
    const double unit = row.is_of_acres() ? acre : row.measure == Measure::tons ? ton : 1.0;
    penalties.push_back(times_worth * unit);
  }
  return penalties;
}

lp::LinearProgram empty_program(const std::vector<StandModel>& models, const Limits& limits) {
  lp::LinearProgram program{lp::Direction::maximise};
  for (const StandModel& model : models) program.add_row({model.acres, model.acres});
  for (const LimitRow& row : limits.rows) {
    program.add_row(row.is_floor ? lp::Row{row.bound, lp::infinity}
                                 : lp::Row{-lp::infinity, row.bound});
  }
  return program;
}

}  // namespace

Master::Master(const std::vector<StandModel>& models, const Limits& limits)
    : models_(models),
      limits_(limits),
      scales_(scales_of(models, limits)),
      penalties_(penalties_of(models, limits)),
      allowed_(limits.rows.size(), 0.0),
      of_stand_(models.size()),
      solver_(empty_program(models, limits)) {
  // As dear as land, so that tolerances of dollars an acre are small beside it.
  constexpr double usd_ac = 1000.0;
  for (const StandModel& model : models) share_cost_ += usd_ac * model.acres;
  for (std::size_t r = 0; r < limits.rows.size(); ++r) {
    solver_.add_column(slack_column(r),
                       {{models.size() + r, limits.rows[r].is_floor ? 1.0 : -1.0}});
  }
}

lp::Column Master::slack_column(std::size_t row) const {
  switch (stage_) {
    case Stage::penalised:
      return {.cost = -penalties_[row]};
    case Stage::relaxing:
      return {.cost = -share_cost_ / scales_[row]};
    case Stage::settled:
      return {.cost = 0.0, .upper = allowed_[row]};
  }
  return {};
}

void Master::set_stage(Stage stage) {
  stage_ = stage;
  for (std::size_t r = 0; r < limits_.rows.size(); ++r) solver_.set_column(r, slack_column(r));
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    solver_.set_column(limits_.rows.size() + c, {.cost = value_of_column(columns_[c])});
  }
}

void Master::allow_to_give_way(const std::vector<double>& by_row) { allowed_ = by_row; }

bool Master::knows(std::size_t stand, const Regime& regime) const {
  return std::any_of(of_stand_[stand].begin(), of_stand_[stand].end(),
                     [&](std::size_t c) { return same_regime(columns_[c].regime, regime); });
}

bool Master::add(TractColumn column) {
  if (knows(column.stand, column.regime)) return false;
  std::vector<lp::Term> terms = {{column.stand, 1.0}};
  for (const lp::Term& use : column.uses) terms.push_back({models_.size() + use.index, use.value});
  solver_.add_column({.cost = value_of_column(column)}, terms);
  of_stand_[column.stand].push_back(columns_.size());
  columns_.push_back(std::move(column));
  return true;
}

lp::Status Master::solve(const lp::Options& options) {
  lp::Solution solution = solver_.solve(options);
  if (solution.status == lp::Status::numerical_trouble) {
    // From nothing, by the other method: where it came from may be the trouble.
    solver_ = lp::LinearProgramSolver(solver_.program());
    lp::Options afresh = options;
    afresh.simplex = lp::Simplex::dual;
    solution = solver_.solve(afresh);
  }
  message_ = solution.message;
  if (solution.status != lp::Status::optimal) return solution.status;
  const auto slacks = static_cast<std::ptrdiff_t>(limits_.rows.size());
  const auto stands = static_cast<std::ptrdiff_t>(models_.size());
  value_ = solution.value;
  given_way_.assign(solution.columns.begin(), solution.columns.begin() + slacks);
  acres_.assign(solution.columns.begin() + slacks, solution.columns.end());
  price_of_acre_.assign(solution.duals.begin(), solution.duals.begin() + stands);
  worths_.clear();
  for (std::size_t r = 0; r < limits_.rows.size(); ++r) {
    // A rounding on the wrong side of nothing is nothing.
    const double worth = -solution.duals[models_.size() + r];
    worths_.push_back(limits_.rows[r].is_floor ? std::max(0.0, worth) : std::min(0.0, worth));
  }
  return solution.status;
}

double Master::present_value() const {
  double value = 0.0;
  for (std::size_t c = 0; c < acres_.size(); ++c) value += acres_[c] * columns_[c].value;
  return value;
}

bool Master::keeps_limits() const {
  for (std::size_t r = 0; r < given_way_.size(); ++r) {
    if (given_way_[r] > tolerance::limit_kept * scales_[r]) return false;
  }
  return true;
}

double Master::bound_at(const std::vector<double>& worths,
                        const std::vector<double>& best_worth) const {
  double bound = 0.0;
  for (std::size_t s = 0; s < models_.size(); ++s) bound += models_[s].acres * best_worth[s];
  for (std::size_t r = 0; r < worths.size(); ++r) {
    bound -= worths[r] * limits_.rows[r].bound;
    if (stage_ == Stage::settled) bound += std::fabs(worths[r]) * allowed_[r];
  }
  return bound;
}

}  // namespace staddle
