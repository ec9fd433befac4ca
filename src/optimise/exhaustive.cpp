// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/exhaustive.h"

namespace staddle {
namespace {

class ExhaustiveSearch {
 public:
  ExhaustiveSearch(const CaseKernel& kernel, const LatticeRules& rules,
                   const StandOptions& options)
      : kernel_(kernel),
        rules_(rules),
        options_(options),
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
    while (outcome_.finished || point.entries == 0) {
      const bool cut_asked_first = options_.first_thinning_at && point.entries == 0;
      if (!cut_asked_first && point.age_yr >= final_from && point.age_yr <= rules_.final_to()) {
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
  LatticeRegime regime_;
  SearchOutcome outcome_;
};

}  // namespace

SearchOutcome search_exhaustively(const CaseKernel& kernel, const LatticeRules& rules,
                                  const StandOptions& options) {
  return ExhaustiveSearch(kernel, rules, options).run();
}

}  // namespace staddle
