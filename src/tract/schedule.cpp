// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/schedule.h"

#include <algorithm>
#include <cmath>

#include "staddle/base/parallel.h"
#include "staddle/base/tolerance.h"
#include "tract/column_generation.h"
#include "tract/exact_pricer.h"
#include "tract/whole_stands.h"

namespace staddle {
namespace {

using End = ColumnGeneration::End;
using Stage = Master::Stage;
using Status = TractSolution::Status;

class Scheduler {
 public:
  Scheduler(const std::vector<StandModel>& models, const Limits& limits, bool whole_stands,
            const TractOptions& options)
      : models_(models),
        limits_(limits),
        whole_stands_(whole_stands),
        options_(options),
        pricer_(models, limits, ExactPricer::most_bytes, options.threads, options.stop),
        master_(models, limits),
        generation_(models, limits, master_, pricer_, options) {}

  Schedule run() {
    fill_pool();
    const End end = solve_linear();
    tell_point(end);
    if (whole_stands_ && master_.has_point()) make_whole();
    schedule_.rounds = generation_.rounds();
    schedule_.columns = master_.columns().size();
    return std::move(schedule_);
  }

 private:
  // Each stand's own best first, so that a master without a point still names a plan.
  void fill_pool() {
    for (std::size_t s = 0; s < models_.size(); ++s) {
      master_.add(column_of(models_, s, limits_, models_[s].own_best.regime));
    }
    const bool all = options_.method == TractOptions::Method::enumerate;
    std::vector<std::vector<TractColumn>> found(models_.size());
    const bool done = for_each_chunk(
        models_.size(), options_.threads,
        [&](std::size_t s) {
          if (all) {
            for (const Regime& regime : pricer_.all_regimes(s)) {
              found[s].push_back(column_of(models_, s, limits_, regime));
            }
          } else if (!limits_.rows.empty()) {
            for (const PricedRegime& priced : models_[s].own_by_count) {
              found[s].push_back(column_of(models_, s, limits_, priced.regime));
            }
          }
        },
        options_.stop);
    if (!done) return;
    for (std::vector<TractColumn>& columns : found) {
      for (TractColumn& column : columns) master_.add(std::move(column));
    }
  }

  // First with a price on what limits give way; only where some still do, whether that can
  // be helped at all.
  End solve_linear() {
    End end = generation_.run(TractProgress::Stage::schedule);
    bound_ = std::min(bound_, generation_.bound());
    if (end != End::proved || master_.keeps_limits()) return end;
    generation_.forget_bound();
    master_.set_stage(Stage::relaxing);
    end = generation_.run(TractProgress::Stage::relaxation);
    if (end != End::proved) return end;
    infeasible_ = !master_.keeps_limits();
    relaxation_ = master_.given_way();
    std::vector<double> allowed(relaxation_.size());
    for (std::size_t r = 0; r < allowed.size(); ++r) {
      // What the linear program's audit lets pass, or the least relaxation would be none.
      const double passes =
          std::min(tolerance::lp_absolute + tolerance::lp_relative * master_.scale_of(r),
                   tolerance::limit_kept * master_.scale_of(r));
      allowed[r] = (infeasible_ ? std::max(0.0, relaxation_[r]) : 0.0) + passes;
    }
    generation_.forget_bound();
    master_.allow_to_give_way(allowed);
    master_.set_stage(Stage::settled);
    end = generation_.run(TractProgress::Stage::schedule);
    // Without the limits no plan is worth more, and with relaxed ones none is worth less.
    bound_ = std::min(infeasible_ ? unlimited() : bound_, generation_.bound());
    return end;
  }

  double unlimited() const {
    double value = 0.0;
    for (const StandModel& model : models_) value += model.acres * model.own_value;
    return value;
  }

  void tell_point(End end) {
    schedule_.scales.clear();
    for (std::size_t r = 0; r < limits_.rows.size(); ++r) {
      schedule_.scales.push_back(master_.scale_of(r));
    }
    schedule_.keeps_limits = master_.has_point() && master_.keeps_limits();
    schedule_.bound = bound_;
    schedule_.given_way = infeasible_ ? relaxation_ : master_.given_way();
    const bool finished = end == End::proved || end == End::gap_met;
    // Those that prove the bound; the master's own may not, where a gap was enough.
    if (finished && master_.stage() != Stage::relaxing) {
      schedule_.worths = generation_.bound_worths();
    }
    schedule_.status = !finished     ? Status::limit_reached
                       : infeasible_ ? Status::infeasible
                                     : Status::optimal;
    if (end == End::gave_up) schedule_.message = generation_.message();
    std::vector<double> acres = master_.acres();
    acres.resize(master_.columns().size(), 0.0);
    if (!master_.has_point()) {
      for (std::size_t s = 0; s < models_.size(); ++s) acres[s] = models_[s].acres;
    }
    take_plan(acres);
    schedule_.split_present_value = schedule_.present_value;
  }

  // Acres by column.
  void take_plan(const std::vector<double>& acres) {
    schedule_.shares.assign(models_.size(), {});
    schedule_.uses.assign(limits_.rows.size(), 0.0);
    schedule_.present_value = schedule_.ending_value = 0.0;
    for (std::size_t c = 0; c < acres.size(); ++c) {
      const TractColumn& column = master_.columns()[c];
      // Crumbs of the simplex method are no management unit.
      if (acres[c] <= tolerance::tract_crumb * models_[column.stand].acres) continue;
      schedule_.shares[column.stand].push_back({column.regime, acres[c]});
      schedule_.present_value += acres[c] * column.value;
      schedule_.ending_value += acres[c] * column.ending_value;
      for (const lp::Term& use : column.uses) schedule_.uses[use.index] += acres[c] * use.value;
    }
    for (std::size_t s = 0; s < models_.size(); ++s) {
      std::vector<Share>& shares = schedule_.shares[s];
      std::stable_sort(shares.begin(), shares.end(),
                       [](const Share& a, const Share& b) { return a.acres > b.acres; });
      double missing = models_[s].acres;
      for (const Share& share : shares) missing -= share.acres;
      shares.front().acres += missing;
    }
  }

  void make_whole() {
    WholeStands whole(models_, limits_, master_, pricer_, generation_, options_);
    const WholeStands::Outcome outcome = whole.search();
    if (outcome.found) take_plan(outcome.acres);
    schedule_.keeps_limits = schedule_.keeps_limits && outcome.found;
    schedule_.bound = std::min(schedule_.bound, outcome.bound);
    if (schedule_.status == Status::optimal && !outcome.proved) {
      schedule_.status = Status::limit_reached;
    }
    if (!outcome.message.empty()) schedule_.message = outcome.message;
  }

  const std::vector<StandModel>& models_;
  const Limits& limits_;
  bool whole_stands_;
  const TractOptions& options_;
  ExactPricer pricer_;
  Master master_;
  ColumnGeneration generation_;
  bool infeasible_ = false;
  double bound_ = unlimited();
  std::vector<double> relaxation_;
  Schedule schedule_;
};

}  // namespace

Schedule make_schedule(const std::vector<StandModel>& models, const Limits& limits,
                       bool whole_stands, const TractOptions& options) {
  return Scheduler(models, limits, whole_stands, options).run();
}

}  // namespace staddle
