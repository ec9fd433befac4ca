// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/next_cut_bounds.h"

#include <algorithm>
#include <cmath>

namespace staddle {
namespace {

constexpr std::size_t row = CompetitionGrid::nodes;

// Where no removal leads anywhere; finite, so that means of it are.
constexpr Lane no_cut = -1e30F;

}  // namespace

NextCutBounds::NextCutBounds(const LatticeRules& rules, const SearchTables& tables,
                             const ExactLimits& limits, const BoundTable& later) {
  const std::size_t tracks = later.tracks();
  const std::size_t ages =
      static_cast<std::size_t>(std::max(0, later.last_age_yr() - later.first_age_yr() + 1));
  table_.first_age_yr = later.first_age_yr();
  table_.rates = later.rates();
  table_.tracks = tracks;
  table_.low = later.competition().low;
  table_.inverse_step = 1.0 / later.competition().step;
  table_.stride = tables.discount.size();
  table_.log_tpa.assign(tracks * table_.stride, 0);
  table_.inverse_gap.assign(tracks * table_.stride, 0);
  table_.value.assign(ages * table_.rates * tracks * row + lane_padding, no_cut);
  worth_.assign(table_.rates * tracks * row + lane_padding, 0);
  scratch_.assign((tracks + 4) * row + lane_padding, 0);
  image_.allowances = later.allowances();
  const RemovalFactors& factors = tables.removals_at(rules.max_thinnings() - 1);
  for (int at = later.first_age_yr(); at <= later.last_age_yr(); ++at) {
    for (std::size_t i = 0; i < tracks; ++i) {
      const std::size_t place = i * table_.stride + static_cast<std::size_t>(at);
      table_.log_tpa[place] = static_cast<Lane>(later.log_tpa(i, at));
      if (i + 1 == tracks) continue;
      table_.inverse_gap[place] =
          static_cast<Lane>(1.0 / (later.log_tpa(i + 1, at) - later.log_tpa(i, at)));
    }
    const std::size_t allowed = limits.removals_allowed(at);
    if (allowed > 0) find_worth(tables, later, at);
    for (std::size_t f = 0; f < allowed; ++f) {
      if (factors.leaves_trees[f]) lead(factors, later, at, f);
    }
  }
}

void NextCutBounds::find_worth(const SearchTables& tables, const BoundTable& later, int age_yr) {
  const BoundKernels& kernels = bound_kernels();
  const CompetitionGrid& grid = later.competition();
  const std::size_t tracks = later.tracks();
  LaneArray unsold = tables.thinning_weight;  // -S: what is left is not sold now
  for (Lane& weight : unsold) weight = -weight;
  const double scale = wide(tables.discount[static_cast<std::size_t>(age_yr)]) * tables.net_share;
  std::vector<double> of_trees(tracks + 1, 0.0);  // of the cell below each node
  for (std::size_t i = 0; i + 1 < tracks; ++i) {
    const double low = later.log_tpa(i, age_yr), high = later.log_tpa(i + 1, age_yr);
    const double curve = kernels.along_trees(tables, unsold, age_yr, low, high, grid).curve;
    of_trees[i + 1] = curve * (high - low) * (high - low) / 8.0;
  }
  const LaneArray& leave = later.at(age_yr).value;
  LaneArray standing(row + lane_padding, 0);
  for (std::size_t i = 0; i < tracks; ++i) {
    const Bend bend = kernels.along_competition(tables, unsold, age_yr, later.log_tpa(i, age_yr),
                                                grid, standing.data());
    const double allowance =
        bend.curve * grid.step * grid.step / 8.0 + std::max(of_trees[i], of_trees[i + 1]);
    for (std::size_t m = 0; m < table_.rates; ++m) {
      const std::size_t at = (m * tracks + i) * row;
      for (std::size_t j = 0; j < row; ++j) {
        worth_[at + j] =
            leave[at + j] +
            static_cast<Lane>(scale * (wide(standing[j]) + later.allowances() * allowance));
      }
    }
  }
}

void NextCutBounds::lead(const RemovalFactors& factors, const BoundTable& later, int age_yr,
                         std::size_t removal) {
  const std::size_t tracks = later.tracks();
  const auto t = static_cast<std::size_t>(age_yr);
  const auto node = [&](std::size_t i) { return later.log_tpa(i, age_yr); };
  const double shift = wide(factors.log_trees[removal]);
  // As the exact test of the limit: in doubt the removal stays.
  const double least = std::log(fewest_trees_left - ExactLimits::doubt);
  image_.density_left = wide(factors.density_left[t * factors.row + removal]);
  image_.nodes.assign(tracks, {});
  image_.between.clear();
  std::size_t cell = 0, kink = 0;
  for (std::size_t i = 0; i < tracks; ++i) {
    NodeImage& image = image_.nodes[i];
    const double to = node(i) + shift;
    image.dropped = node(std::min(i + 1, tracks - 1)) + shift < least;
    image.inside = to >= node(0);
    if (!image.inside) continue;
    while (cell + 2 < tracks && node(cell + 1) <= to) ++cell;
    image.cell = cell;
    image.along = (to - node(cell)) / (node(cell + 1) - node(cell));
    if (i + 1 == tracks) break;
    const double next = node(i + 1) + shift;
    while (node(kink) <= to) ++kink;
    for (; node(kink) < next; ++kink) {
      image_.between.push_back({i, kink, (node(kink) - to) / (next - to)});
    }
  }
  const std::size_t size = tracks * row;
  const std::size_t slice =
      static_cast<std::size_t>(age_yr - table_.first_age_yr) * table_.rates * size;
  for (std::size_t m = 0; m < table_.rates; ++m) {
    next_cut_kernels().raise_by_cut(later.competition(), image_, worth_.data() + m * size,
                                    table_.value.data() + slice + m * size, scratch_);
  }
}

}  // namespace staddle
