// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/bound_table.h"

#include <algorithm>
#include <cmath>

namespace staddle {
namespace {

// Beyond these the equations bend too far for one table; states there are not pruned.
constexpr double highest_competition = 0.75, lowest_competition = -0.6;

// Where no harvest counts; finite, so that means of it are.
constexpr Lane no_plan = -1e30F;

}  // namespace

bool BoundTable::is_proved_for(const SearchTables& tables) {
  if (tables.has_offsets || !tables.perils.empty()) return false;
  for (std::size_t j = 0; j < tables.terms; ++j) {
    if (tables.top_term[j] > 0 || tables.dbh_term[j] > 0) return false;
  }
  for (int at = tables.earliest_cut_yr; at <= tables.last_yr; ++at) {
    const auto t = static_cast<std::size_t>(at);
    const double spread = -wide(tables.diameter_n[t]);
    const bool usual = spread > 0.0 && tables.tree_power + tables.dbh_power * spread > 0.0 &&
                       tables.top_power > 0.0 && tables.dbh_power > 0.0 && tables.tons_w[t] > 0;
    if (!usual) return false;
  }
  return true;
}

std::optional<BoundTable> BoundTable::make(const CaseKernel& kernel, const LatticeRules& rules,
                                           const SearchTables& tables, double land,
                                           const std::vector<bool>& final_counts,
                                           const BoundGrid& grid) {
  if (!is_proved_for(tables)) return std::nullopt;
  BoundTable table;
  table.land_ = land;
  table.fineness_ = grid;
  table.first_age_yr_ = tables.earliest_cut_yr;
  table.last_age_yr_ = rules.cut_to();
  table.make_grid(kernel, tables);
  table.price_lines(tables, final_counts);
  for (int at = table.first_age_yr_; at <= table.last_age_yr_; ++at) {
    table.fill(rules, tables, final_counts, at);
  }
  return table;
}

void BoundTable::make_grid(const CaseKernel& kernel, const SearchTables& tables) {
  const GrowthKernel& growth = kernel.growth();
  const StandPoint start = kernel.start();
  const double floor = tables.survival_floor;
  const double most = growth.trees_at(start.trees, first_age_yr_);
  const auto add_between = [&](double low, double high) {
    const double range = std::log(high / low);
    const auto cells = static_cast<std::size_t>(std::ceil(range / fineness_.spacing_of_log_tpa));
    for (std::size_t i = tracks_.empty() ? 0 : 1; i <= cells; ++i) {
      const double share = static_cast<double>(i) / static_cast<double>(cells);
      // The highest node is the start's own track: no stand has more trees.
      const bool top = i == cells && high == most;
      tracks_.push_back(top ? start.trees
                            : growth.track(low * std::exp(range * share), first_age_yr_));
    }
  };
  constexpr double a_little_fewer = 0.999;
  const double least = a_little_fewer * std::min(fewest_trees_left, most / 2.0);
  if (least < floor) {
    add_between(least, std::min(floor, most));
    if (most <= floor) tracks_.back() = {true, most};
    else tracks_.back() = {true, floor};
  }
  if (most > floor) add_between(std::max(floor, least), most);
  trees_.assign((static_cast<std::size_t>(tables.last_yr) + 1) * tracks_.size(), 0.0);
  log_tpa_ = trees_;
  for (int at = first_age_yr_; at <= tables.last_yr; ++at) {
    for (std::size_t i = 0; i < tracks_.size(); ++i) {
      const std::size_t place = static_cast<std::size_t>(at) * tracks_.size() + i;
      trees_[place] = growth.trees_at(tracks_[i], at);
      log_tpa_[place] = std::log(trees_[place]);
    }
  }
  constexpr double margin = 1e-3;
  const double high = 1.0 - std::exp(tables.least_log_density) + margin;
  const double low = 1.0 - std::exp(tables.most_log_density) - margin;
  grid_ = CompetitionGrid(std::max(low, lowest_competition),
                          std::min(high, highest_competition));
  rate_step_ = tables.recovery_per_yr / static_cast<double>(fineness_.rates - 1);
}

void BoundTable::price_lines(const SearchTables& tables, const std::vector<bool>& final_counts) {
  const BoundKernels& kernels = bound_kernels();
  lines_.resize((static_cast<std::size_t>(tables.last_yr) + 1) * tracks_.size());
  line_values_.assign(lines_.size() * CompetitionGrid::nodes + lane_padding, 0);
  for (int at = first_age_yr_; at <= tables.last_yr; ++at) {
    const auto t = static_cast<std::size_t>(at);
    if (!final_counts[t]) continue;
    const double scale = wide(tables.discount[t]) * tables.net_share;
    for (std::size_t i = 0; i < tracks_.size(); ++i) {
      Line& line = lines_[t * tracks_.size() + i];
      Lane* values = line_values_.data() + (t * tracks_.size() + i) * CompetitionGrid::nodes;
      const Bend bend =
          kernels.along_competition(tables, tables.final_weight, at, log_tpa(i, at), grid_, values);
      for (std::size_t j = 0; j < CompetitionGrid::nodes; ++j) {
        values[j] *= static_cast<Lane>(scale);
      }
      line.competition_curve = scale * bend.curve;
      line.competition_slope = scale * bend.slope;
      if (i + 1 == tracks_.size()) continue;
      const Bend across = kernels.along_trees(tables, tables.final_weight, at, log_tpa(i, at),
                                              log_tpa(i + 1, at), grid_);
      line.trees_curve = scale * across.curve;
      line.trees_slope = scale * across.slope;
    }
  }
}

double BoundTable::allowance_of_trees(const SearchTables& tables, int age_yr, int final_yr,
                                      std::size_t cell) const {
  const Line& below = line(final_yr, cell);
  const double low = trees(cell, age_yr), high = trees(cell + 1, age_yr);
  const double low_left = trees(cell, final_yr), high_left = trees(cell + 1, final_yr);
  const double gap_then = log_tpa(cell + 1, final_yr) - log_tpa(cell, final_yr);
  double deviation = 0.0;
  if (high > tables.survival_floor) {
    const double floor = tables.survival_floor;
    const double power = 1.0 + tables.survival_exponent;
    const auto survivors = [&](double now, double then) {
      return now > floor ? std::pow((then - floor) / (now - floor), power) : 1.0;
    };
    const double steepest = survivors(low, low_left) * high / high_left;
    const double flattest = survivors(high, high_left) * low / low_left;
    const double gap_now = log_tpa(cell + 1, age_yr) - log_tpa(cell, age_yr);
    deviation = gap_now * std::max(0.0, steepest - flattest) / 4.0;
  }
  return below.trees_curve * gap_then * gap_then / 8.0 + below.trees_slope * deviation;
}

void BoundTable::raise_by_plan(const SearchTables& tables, int age_yr, int final_yr,
                               BoundSlice& slice) {
  const BoundKernels& kernels = bound_kernels();
  const auto t = static_cast<std::size_t>(final_yr);
  const auto a = static_cast<std::size_t>(age_yr);
  const double money =
      wide(tables.discount[t]) * (tables.net_share * wide(tables.other_timber[t]) -
                                  tables.final_sale_cost + tables.delay_money) +
      wide(tables.summed_after[t]) - wide(tables.summed_after[a]) +
      land_ * wide(tables.land_discount[t]);
  std::vector<double> of_trees(tracks_.size() + 1, 0.0);  // of the cell below each node
  for (std::size_t i = 0; i + 1 < tracks_.size(); ++i) {
    of_trees[i + 1] = allowance_of_trees(tables, age_yr, final_yr, i);
  }
  const double years = final_yr - age_yr;
  const double share_of_step = grid_.step * grid_.step / 8.0;
  const double share_of_rate = rate_step_ * rate_step_ / 8.0 * years * years;
  const bool one_rate = slice.rates == 1;
  terms_.resize(tracks_.size());
  for (std::size_t m = 0; m < slice.rates; ++m) {
    const double here = one_rate ? tables.recovery_per_yr : rate(m);
    // A node belongs to the cell below it too.
    const double slowest = one_rate ? here : rate(m == 0 ? 0 : m - 1);
    const double widest = std::exp(-slowest * years);
    const double of_rate = one_rate ? 0.0 : fineness_.allowances * share_of_rate * widest;
    for (std::size_t i = 0; i < tracks_.size(); ++i) {
      const Line& bends = line(final_yr, i);
      const double of_competition =
          bends.competition_curve * share_of_step * (1.0 + widest * widest);
      const double allowance = of_competition + std::max(of_trees[i], of_trees[i + 1]);
      terms_[i] = {static_cast<Lane>(money + fineness_.allowances * allowance),
                   static_cast<Lane>(of_rate * bends.competition_slope),
                   static_cast<Lane>(of_rate * widest * bends.competition_curve)};
    }
    const std::size_t size = tracks_.size() * CompetitionGrid::nodes;
    kernels.raise(grid_, line_values_.data() + t * size, std::exp(-here * years), terms_,
                  slice.value.data() + m * size);
  }
}

void BoundTable::fill(const LatticeRules& rules, const SearchTables& tables,
                      const std::vector<bool>& final_counts, int age_yr) {
  BoundSlice slice;
  slice.rates = tables.crown_limited ? fineness_.rates : 1;
  slice.tracks = tracks_.size();
  slice.low = grid_.low;
  slice.inverse_step = 1.0 / grid_.step;
  slice.inverse_rate_step = rate_step_ > 0.0 ? 1.0 / rate_step_ : 0.0;
  for (std::size_t i = 0; i < tracks_.size(); ++i) {
    slice.log_tpa.push_back(static_cast<Lane>(log_tpa(i, age_yr)));
    const double gap =
        i + 1 < tracks_.size() ? log_tpa(i + 1, age_yr) - log_tpa(i, age_yr) : 1.0;
    slice.inverse_gap.push_back(static_cast<Lane>(1.0 / gap));
  }
  slice.value.assign(slice.rates * slice.tracks * CompetitionGrid::nodes + lane_padding, no_plan);
  for (int at = std::max(rules.final_from(), age_yr + rules.gap_yr()); at <= rules.final_to();
       ++at) {
    if (final_counts[static_cast<std::size_t>(at)]) raise_by_plan(tables, age_yr, at, slice);
  }
  slices_.push_back(std::move(slice));
}

}  // namespace staddle
