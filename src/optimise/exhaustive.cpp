// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/exhaustive.h"

#include <algorithm>
#include <cmath>

#include "optimise/search_answer.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

class ExhaustiveSearch {
 public:
  ExhaustiveSearch(const CaseKernel& kernel, const LatticeRules& rules,
                   const StandOptions& options, const TableBounds* bounds = nullptr)
      : kernel_(kernel),
        rules_(rules),
        options_(options),
        bounds_(bounds),
        bounds_of_entry_(static_cast<std::size_t>(rules.max_thinnings()) + 1,
                         std::vector<double>(static_cast<std::size_t>(rules.final_to()) + 1)),
        outcome_{Champions(rules.max_thinnings(), kernel.last_age_yr()), 0, true} {}

  SearchOutcome run() {
    follow(kernel_.start());
    return std::move(outcome_);
  }

 private:
  // One stretch between cuts: every final harvest and every next cut from it.
  void follow(StandPoint point) {
    Measured measured;
    const int cut_from = rules_.next_cut_from(point);
    const int final_from = rules_.next_final_from(point);
    const bool may_cut_again = point.entries < rules_.max_thinnings();
    if (is_bounded(point) && !bound_harvests(point, final_from) && !may_cut_again) return;
    while (outcome_.finished || point.entries == 0) {
      const bool cut_asked_first = options_.first_thinning_at && point.entries == 0;
      if (!cut_asked_first && point.age_yr >= final_from && point.age_yr <= rules_.final_to() &&
          may_be_asked_for(point)) {
        value_harvest(point, measured);
      }
      const bool cut_age_asked =
          !cut_asked_first || point.age_yr == options_.first_thinning_at->whole();
      if (may_cut_again && cut_age_asked && point.age_yr >= cut_from &&
          point.age_yr <= rules_.cut_to()) {
        try_cuts(point, measured);
      }
      if (point.age_yr >= rules_.final_to()) return;
      kernel_.advance(point, measured);
      // The stretch without cuts is always followed, so that a stopped search has an answer.
      if (options_.stop.stop_requested() && point.entries > 0) outcome_.finished = false;
    }
  }

  bool is_bounded(const StandPoint& point) const {
    return bounds_ != nullptr && point.entries > 0;
  }

  // False where no harvest of the stretch can be any that is asked for.
  bool bound_harvests(const StandPoint& point, int final_from) {
    std::vector<double>& bounds = bounds_of_entry_[static_cast<std::size_t>(point.entries)];
    const int from = std::max(final_from, point.age_yr);
    bounds_->bound(point, from, bounds);
    const double least = least_asked_for();
    for (int at = from; at <= rules_.final_to(); ++at) {
      if (bounds[static_cast<std::size_t>(at)] >= least) return true;
    }
    return false;
  }

  bool may_be_asked_for(const StandPoint& point) const {
    return !is_bounded(point) ||
           bounds_of_entry_[static_cast<std::size_t>(point.entries)]
                           [static_cast<std::size_t>(point.age_yr)] >= least_asked_for();
  }

  // No regime with as many cuts as this one can take part in the answer below it.
  double least_asked_for() const {
    const double best = outcome_.champions.highest();
    double least =
        options_.by_count ? outcome_.champions.highest_with_cuts(regime_.cuts) : best;
    if (std::isinf(least)) return -HUGE_VAL;
    if (options_.windows) least = std::min(least, best - near_best_tolerance_usd_ac(best));
    return least - tolerance::prune_slack(least);
  }

  void value_harvest(const StandPoint& point, Measured& measured) {
    kernel_.measure_tons(point, measured);
    regime_.final_yr = point.age_yr;
    outcome_.champions.offer(kernel_.objective(kernel_.harvest(point, measured)), regime_);
    ++outcome_.regimes_valued;
  }

  void try_cuts(const StandPoint& point, Measured& measured) {
    kernel_.measure_tons(point, measured);
    if (!rules_.stand_may_be_cut(measured)) return;
    const std::size_t allowed = rules_.removals_allowed(point.age_yr);
    const auto entry = static_cast<std::size_t>(regime_.cuts);
    Cut cut;
    for (std::size_t i = 0; i < allowed; ++i) {
      const double removal = rules_.removals()[i];
      if (point.entries == 0 && !first_removal_asked(options_, removal)) continue;
      if (!rules_.leaves_trees(removal, point.entries)) continue;
      kernel_.work_out_cut(point, measured, removal, cut);
      if (!rules_.cut_may_be_taken(cut)) continue;
      StandPoint child = point;
      kernel_.take_cut(child, measured, cut);
      regime_.age_yr[entry] = point.age_yr;
      regime_.removal[entry] = static_cast<int>(i);
      ++regime_.cuts;
      follow(child);
      --regime_.cuts;
    }
  }

  const CaseKernel& kernel_;
  const LatticeRules& rules_;
  const StandOptions& options_;
  const TableBounds* bounds_;  // may be absent
  std::vector<std::vector<double>> bounds_of_entry_;  // [entries][age], of this stretch
  LatticeRegime regime_;
  SearchOutcome outcome_;
};

}  // namespace

SearchOutcome search_exhaustively(const CaseKernel& kernel, const LatticeRules& rules,
                                  const StandOptions& options) {
  return ExhaustiveSearch(kernel, rules, options).run();
}

SearchOutcome search_by_table_bounds(const CaseKernel& kernel, const LatticeRules& rules,
                                     const StandOptions& options) {
  const TableBounds bounds(kernel, rules);
  return ExhaustiveSearch(kernel, rules, options, &bounds).run();
}

}  // namespace staddle
