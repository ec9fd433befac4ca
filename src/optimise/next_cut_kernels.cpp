// SPDX-License-Identifier: GPL-3.0-or-later
#ifdef STADDLE_HAVE_HIGHWAY
#include "optimise/next_cut_kernels.h"

#include <algorithm>

// Highway compiles what follows once for each instruction set and chooses when it runs.
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "optimise/next_cut_kernels.cpp"
#define STADDLE_MOST_LANES 16  // a row of the grid
#include "hwy/foreach_target.h"
//
#include "optimise/lanes.h"

HWY_BEFORE_NAMESPACE();
namespace staddle {
namespace HWY_NAMESPACE {
namespace {

constexpr std::size_t row = CompetitionGrid::nodes;

template <class Step>
HWY_INLINE void for_row(const Step& step) {
  for (std::size_t j = 0; j < row; j += hn::Lanes(Tag())) step(j);
}

HWY_INLINE Lanes load(const Lane* numbers) { return hn::LoadU(Tag(), numbers); }

HWY_INLINE auto index_of(Lanes whole) { return hn::ConvertTo(hn::RebindToSigned<Tag>(), whole); }

// In cells from the lowest node: where the nodes j, j + 1, ... of C come to lie.
HWY_INLINE Lanes image_of(const CompetitionGrid& grid, double rho, std::size_t j) {
  const double start = (1.0 - rho - grid.low * (1.0 - rho)) / grid.step;
  return hn::MulAdd(set(rho), counted_from(static_cast<double>(j)), set(start));
}

// The most by which a row exceeds the mean of two others; none below zero.
HWY_INLINE double excess(const Lane* numbers, const Lane* low, const Lane* high, double along) {
  Lanes most = zero();
  for_row([&](std::size_t j) HWY_ATTR {
    const Lanes mean = between(load(low + j), load(high + j), set(along));
    most = hn::Max(most, hn::Sub(load(numbers + j), mean));
  });
  return largest_of(most);
}

// Along C at one node of n: its line at the images, and by how much the line, bent at its
// own nodes, exceeds the chord above each node.
HWY_INLINE void look_up_line(const CompetitionGrid& grid, double rho, const Lane* line, Lane* image,
                             Lane* above_chord) {
  const Lanes last_cell = set(static_cast<double>(row) - 2.0);
  const auto one = hn::Set(hn::RebindToSigned<Tag>(), 1);
  for_row([&](std::size_t j) HWY_ATTR {
    const Lanes at = image_of(grid, rho, j);
    const Lanes cell = hn::Min(hn::Max(hn::Floor(at), zero()), last_cell);
    const auto index = index_of(cell);
    const Lanes value = between(picked<row>(line, index), picked<row>(line, hn::Add(index, one)),
                                hn::Sub(at, cell));
    hn::StoreU(value, Tag(), image + j);
  });
  image[row] = image[row - 1];
  const Lanes inverse = set(1.0 / rho), last_node = set(static_cast<double>(row) - 1.0);
  const int kinks = rho > 1.0 ? 2 : 1;  // between two images, at most
  for_row([&](std::size_t j) HWY_ATTR {
    const Lanes at = image_of(grid, rho, j), next = hn::Add(at, set(rho));
    Lanes most = zero();
    for (int kink = 1; kink <= kinks; ++kink) {
      const Lanes node = hn::Add(hn::Floor(at), set(kink));
      const auto counts =
          hn::And(hn::And(hn::Lt(node, next), hn::Ge(node, zero())), hn::Le(node, last_node));
      const Lanes held = hn::Min(hn::Max(node, zero()), last_node);
      const Lanes chord =
          between(load(image + j), load(image + j + 1), hn::Mul(hn::Sub(node, at), inverse));
      const Lanes over = hn::Sub(picked<row>(line, index_of(held)), chord);
      most = hn::Max(most, hn::IfThenElseZero(counts, over));
    }
    // The last node has no chord above it.
    const auto inner = hn::Lt(counted_from(static_cast<double>(j)), last_node);
    hn::StoreU(hn::IfThenElseZero(inner, most), Tag(), above_chord + j);
  });
}

void raise_by_cut(const CompetitionGrid& grid, const CutImage& cut, const Lane* worth, Lane* value,
                  LaneArray& scratch) {
  const std::size_t tracks = cut.nodes.size();
  Lane* lines = scratch.data();        // at the images of the nodes of n, along C
  Lane* image = lines + tracks * row;  // one longer than a row, as is the next
  Lane* above = image + 2 * row;       // by node; the number before it is zero
  above[row - 1] = 0;
  Lane* above_chord = above + row;
  for (std::size_t i = 0; i < tracks; ++i) {
    const NodeImage& node = cut.nodes[i];
    if (!node.inside) continue;
    const Lane* low = worth + node.cell * row;
    for_row([&](std::size_t j) HWY_ATTR {
      hn::StoreU(between(load(low + j), load(low + row + j), set(node.along)), Tag(),
                 lines + i * row + j);
    });
  }
  const Lanes last_node = set(static_cast<double>(row) - 1.0);
  auto kink = cut.between.begin();
  double below = 0.0;  // what the lines exceed their means by, between this node and the last
  for (std::size_t i = 0; i < tracks; ++i) {
    double here = 0.0;
    for (; kink != cut.between.end() && kink->below == i; ++kink) {
      here = std::max(here, excess(worth + kink->node * row, lines + i * row, lines + (i + 1) * row,
                                   kink->along));
    }
    const Lanes nearby = set(cut.allowances * std::max(below, here));
    below = here;
    if (cut.nodes[i].dropped) continue;
    Lane* out = value + i * row;
    if (!cut.nodes[i].inside) {
      std::fill(out, out + row, no_bound);
      continue;
    }
    look_up_line(grid, cut.density_left, lines + i * row, image, above_chord);
    for_row([&](std::size_t j) HWY_ATTR {
      const Lanes at = image_of(grid, cut.density_left, j);
      const auto inside = hn::And(hn::Ge(at, zero()), hn::Le(at, last_node));
      const Lanes chord = hn::Max(load(above_chord + j), load(above_chord + j - 1));
      const Lanes sum = hn::Add(load(image + j), hn::MulAdd(set(cut.allowances), chord, nearby));
      const Lanes bound = hn::IfThenElse(inside, sum, set(no_bound));
      hn::StoreU(hn::Max(bound, load(out + j)), Tag(), out + j);
    });
  }
}

// The trilinear mean's two outer steps; `corner` in cells of the table.
template <class Index>
HWY_INLINE Lanes mean_of(const Lane* table, Index corner, Lanes along_n, Lanes along_c) {
  const Lanes low = between(hn::GatherIndex(Tag(), table, corner),
                            hn::GatherIndex(Tag(), table + 1, corner), along_c);
  const Lanes high = between(hn::GatherIndex(Tag(), table + row, corner),
                             hn::GatherIndex(Tag(), table + row + 1, corner), along_c);
  return between(low, high, along_n);
}

void bound_next_cut(const SearchTables& tables, const NextCutTable& table, const Trajectory& stand,
                    int from, int to, LaneArray& bound) {
  const auto first = static_cast<std::size_t>(from), last = static_cast<std::size_t>(to);
  // A stand stays between its two nodes as long as it is not cut.
  std::size_t node = 0;
  while (node + 2 < table.tracks &&
         table.log_tpa[(node + 1) * table.stride + first] <= stand.log_tpa[first]) {
    ++node;
  }
  const std::size_t nodes = node * table.stride;
  const std::size_t size = table.tracks * row;
  const double steps = static_cast<double>(table.rates) - 1.0;
  for (std::size_t t = first; t <= last; t += hn::Lanes(Tag())) {
    const Lanes along_n = hn::Mul(hn::Sub(load(stand.log_tpa, t), load(table.log_tpa, nodes + t)),
                                  load(table.inverse_gap, nodes + t));
    const Lanes c = hn::Mul(hn::Sub(hn::Sub(set(1.0), load(stand.density, t)), set(table.low)),
                            set(table.inverse_step));
    const Lanes cell = clamped(hn::Floor(c), 0.0, static_cast<double>(row) - 2.0);
    const Lanes along_c = hn::Sub(c, cell);
    const Lanes year =
        counted_from(static_cast<double>(t) - static_cast<double>(table.first_age_yr));
    Lanes corner = hn::MulAdd(year, set(static_cast<double>(table.rates * size)),
                              hn::Add(cell, set(static_cast<double>(node * row))));
    // Ages after the last are not looked up.
    const auto counts = hn::Le(counted_from(static_cast<double>(t)), set(to));
    Lanes later;
    if (table.rates < 2) {
      corner = hn::IfThenElseZero(counts, corner);
      later = mean_of(table.value.data(), index_of(corner), along_n, along_c);
    } else {
      const Lanes crown = hn::Mul(hn::Sub(load(stand.crown_ratio, t), set(crown_without_response)),
                                  set(1.0 / crown_range_of_response));
      const Lanes rate = hn::Mul(clamped(crown, 0.0, 1.0), set(steps));
      const Lanes slow = hn::Min(hn::Floor(rate), set(steps - 1.0));
      corner = hn::MulAdd(slow, set(static_cast<double>(size)), corner);
      const auto index = index_of(hn::IfThenElseZero(counts, corner));
      const Lane* slower = table.value.data();
      later = between(mean_of(slower, index, along_n, along_c),
                      mean_of(slower + size, index, along_n, along_c), hn::Sub(rate, slow));
    }
    Lanes worth = zero();
    for (std::size_t j = 0; j < tables.terms; ++j) {
      worth = hn::MulAdd(set(tables.thinning_weight[j]), load(stand.merchantable[j], t), worth);
    }
    const Lanes sold = hn::MulSub(worth, set(tables.net_share), set(tables.thinning_sale_cost));
    const Lanes sum =
        hn::Add(later, hn::MulAdd(load(tables.discount, t), sold, load(stand.money, t)));
    // The rounding of n may carry a stand past the node whose trees it has.
    constexpr double rounding = 2e-5;
    const auto inside =
        hn::And(hn::And(hn::Ge(along_n, set(-rounding)), hn::Le(along_n, set(1.0 + rounding))),
                hn::And(hn::Ge(along_c, zero()), hn::Le(along_c, set(1.0))));
    store(hn::IfThenElse(inside, sum, set(no_bound)), bound, t);
  }
}

}  // namespace

const NextCutKernels& kernels_of_next_cuts() {
  static const NextCutKernels table{raise_by_cut, bound_next_cut};
  return table;
}

}  // namespace HWY_NAMESPACE
}  // namespace staddle
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace staddle {

HWY_EXPORT(kernels_of_next_cuts);

const NextCutKernels& next_cut_kernels() { return HWY_DYNAMIC_DISPATCH(kernels_of_next_cuts)(); }

}  // namespace staddle
#endif  // HWY_ONCE
#endif  // STADDLE_HAVE_HIGHWAY
