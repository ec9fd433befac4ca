// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/lattice_rules.h"

#include <algorithm>
#include <limits>
#include <numeric>

#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

bool at_least(double value, double limit) { return value >= limit - tolerance::limit_slack; }
bool at_most(double value, double limit) { return value <= limit + tolerance::limit_slack; }

double sum_of(const ProductTons& tons, std::size_t products) {
  return std::accumulate(tons.begin(), tons.begin() + static_cast<std::ptrdiff_t>(products), 0.0);
}

}  // namespace

Guards default_guards() {
  return {1.0 / 3.0,
          DenseStandNow{square_feet_per_acre(140), 0.5},
          square_feet_per_acre(60),
          feet(40),
          inches(6),
          0.30};
}

LatticeRules::LatticeRules(const StandProblem& problem, const CaseKernel& kernel)
    : products_(kernel.products()),
      kernel_(kernel),
      lattice_(problem.lattice),
      acres_(problem.acres.in(acres)),
      max_thinnings_(problem.lattice.max_thinnings),
      gap_yr_(problem.lattice.years_between_entries),
      removals_(problem.lattice.removal_fractions) {
  std::sort(removals_.begin(), removals_.end());
  const int present = kernel.present_yr();
  const int first_known = std::max({present, kernel.growth().first_age(), 1});
  const int last_known = kernel.last_age_yr();
  final_from_ = std::max(problem.lattice.final_from.whole(), first_known);
  final_to_ = std::min(problem.lattice.final_to.whole(), last_known);
  // A stand older than the upper limit can only be cut now.
  if (kernel.standing() && present > problem.lattice.final_to.whole()) {
    final_from_ = final_to_ = present;
  }
  cut_from_ = std::max(problem.lattice.thinning_from.whole(), first_known);
  cut_to_ = std::min(problem.lattice.thinning_to.whole(), final_to_ - gap_yr_);
  const auto& dense = problem.lattice.guards.dense_stand_now;
  dense_now_ = dense && kernel.standing() &&
               at_least(problem.stand_case.standing->basal_area.in(square_feet_per_acre),
                        dense->basal_area.in(square_feet_per_acre));
}

int LatticeRules::next_cut_from(const StandPoint& point) const {
  if (point.memories == 0) return cut_from_;
  const CutMemory& last = point.memory[static_cast<std::size_t>(point.memories - 1)];
  return std::max(cut_from_, last.age_yr + gap_yr_);
}

int LatticeRules::next_final_from(const StandPoint& point) const {
  if (point.entries == 0) return final_from_;
  return std::max(final_from_, point.stretch_from_yr + gap_yr_);
}

double LatticeRules::largest_removal(int age_yr) const {
  const Guards& guards = lattice_.guards;
  if (!guards.max_removal_fraction) return std::numeric_limits<double>::infinity();
  if (dense_now_ && age_yr == kernel_.present_yr()) {
    return std::max(*guards.max_removal_fraction, guards.dense_stand_now->max_removal_fraction);
  }
  return *guards.max_removal_fraction;
}

std::size_t LatticeRules::removals_allowed(int age_yr) const {
  const double largest = largest_removal(age_yr);
  const auto beyond = std::find_if_not(removals_.begin(), removals_.end(),
                                       [&](double removal) { return at_most(removal, largest); });
  return static_cast<std::size_t>(beyond - removals_.begin());
}

bool LatticeRules::stand_may_be_cut(const Measured& measured) const {
  if (!measured.timber) return false;
  const Guards& guards = lattice_.guards;
  if (guards.min_height && !at_least(measured.row->height_ft, guards.min_height->in(feet))) {
    return false;
  }
  if (guards.min_qmd && !at_least(measured.diameter_in, guards.min_qmd->in(inches))) return false;
  return !guards.min_live_crown_ratio ||
         at_least(measured.crown_ratio, *guards.min_live_crown_ratio);
}

bool LatticeRules::leaves_trees(double removal, int entry) const {
  const double q = kernel_.cut_diameter_ratio(entry);
  return removal < 1.0 && removal < q * q;
}

bool LatticeRules::breaks_one_ton_rule(const Cut& cut) const {
  return std::any_of(cut.tons.begin(), cut.tons.begin() + static_cast<std::ptrdiff_t>(products_),
                     [](double tons) { return !at_least(tons, -most_rise_of_a_product); });
}

double LatticeRules::residual_basal_area_floor() const {
  const auto& guard = lattice_.guards.min_residual_basal_area;
  return std::max(guard ? guard->in(square_feet_per_acre) : 0.0,
                  lattice_.min_residual_basal_area.in(square_feet_per_acre));
}

double LatticeRules::least_tons_cut() const {
  // The slack of a limit on the whole sale is spread over its acres.
  return std::max(lattice_.min_removal.in(tons_per_acre) - tolerance::limit_slack,
                  (lattice_.min_sale.in(tons) - tolerance::limit_slack) / acres_);
}

bool LatticeRules::keeps_all_but_one_ton_rule(const Cut& cut) const {
  return at_least(cut.tpa, fewest_trees_left) &&
         at_least(cut.basal_area, residual_basal_area_floor()) && makes_a_sale(cut);
}

bool LatticeRules::makes_a_sale(const Cut& cut) const {
  const double tons_cut = sum_of(cut.tons, products_);
  return at_least(tons_cut, lattice_.min_removal.in(tons_per_acre)) &&
         at_least(tons_cut * acres_, lattice_.min_sale.in(tons));
}

bool LatticeRules::cut_may_be_taken(const Cut& cut) const {
  return keeps_all_but_one_ton_rule(cut) && !breaks_one_ton_rule(cut);
}

double LatticeRules::count_regimes() const {
  const auto finals_after = [&](int earliest) {
    return std::max(0, final_to_ - std::max(final_from_, earliest) + 1);
  };
  double total = finals_after(final_from_);
  if (cut_to_ < cut_from_ || max_thinnings_ == 0) return total;
  StandPoint fresh = kernel_.start();
  const int first_cut = next_cut_from(fresh);
  // ways[a]: plans whose latest cut is at age a.
  std::vector<double> ways(static_cast<std::size_t>(cut_to_) + 1, 0.0);
  for (int at = first_cut; at <= cut_to_; ++at) {
    ways[static_cast<std::size_t>(at)] = static_cast<double>(removals_allowed(at));
  }
  for (int cuts = 1; cuts <= max_thinnings_; ++cuts) {
    std::vector<double> more(ways.size(), 0.0);
    for (int at = cut_from_; at <= cut_to_; ++at) {
      total += ways[static_cast<std::size_t>(at)] * finals_after(at + gap_yr_);
      for (int later = at + gap_yr_; later <= cut_to_; ++later) {
        more[static_cast<std::size_t>(later)] +=
            ways[static_cast<std::size_t>(at)] * static_cast<double>(removals_allowed(later));
      }
    }
    ways = more;
  }
  return total;
}

void LatticeRules::note_broken(const ThinningRecord& thinning, int entry,
                               std::vector<BrokenLimit>& broken) const {
  const Guards& guards = lattice_.guards;
  const auto floor_of = [&](const char* limit, double value, double allowed) {
    if (!at_least(value, allowed)) broken.push_back({limit, value, allowed});
  };
  const double largest = largest_removal(thinning.at.whole());
  if (!at_most(thinning.removal_fraction, largest)) {
    broken.push_back({"guards/max_removal_fraction", thinning.removal_fraction, largest});
  }
  if (guards.min_height) {
    floor_of("guards/min_height_ft", thinning.before.dominant_height.in(feet),
             guards.min_height->in(feet));
  }
  if (guards.min_qmd) {
    floor_of("guards/min_qmd_in", thinning.before.quadratic_mean_diameter.in(inches),
             guards.min_qmd->in(inches));
  }
  if (guards.min_live_crown_ratio && thinning.before.live_crown_ratio) {
    floor_of("guards/min_live_crown_ratio", *thinning.before.live_crown_ratio,
             *guards.min_live_crown_ratio);
  }
  const double basal_left = thinning.after.basal_area.in(square_feet_per_acre);
  if (guards.min_residual_basal_area) {
    floor_of("guards/min_residual_basal_area_ft2_ac", basal_left,
             guards.min_residual_basal_area->in(square_feet_per_acre));
  }
  floor_of("min_residual_basal_area_ft2_ac", basal_left,
           lattice_.min_residual_basal_area.in(square_feet_per_acre));
  floor_of("fewest trees left per acre", thinning.after.trees.in(trees_per_acre),
           fewest_trees_left);
  double tons_cut = 0.0;
  for (const Yield& yield : thinning.tons) {
    tons_cut += yield.in(tons_per_acre);
    floor_of("one-ton rule", yield.in(tons_per_acre), -most_rise_of_a_product);
  }
  floor_of("min_removal_tons_ac", tons_cut, lattice_.min_removal.in(tons_per_acre));
  floor_of("min_sale_tons", tons_cut * acres_, lattice_.min_sale.in(tons));
  if (entry >= max_thinnings_) {
    broken.push_back({"max_thinnings", entry + 1.0, static_cast<double>(max_thinnings_)});
  }
}

}  // namespace staddle
