// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <vector>

#include "staddle/growth/equation_set.h"
#include "staddle/growth/establishment_response.h"
#include "staddle/growth/yield_table.h"

namespace staddle {

// The trees of one stretch between cuts. What it holds does not change while the
// stand grows, so the number at any later age is one closed form.
struct TreeTrack {
  bool held = false;     // too few for the survival equation: the number stays
  double invariant = 0;  // held: trees/ac; equations: (N-100)^-e - G(a); table: N / N_t(a)
};

// Coefficients of one whole age. Feet, trees and square feet per acre, green tons.
struct AgeRow {
  bool known = false;   // inside the model's ages
  bool timber = false;  // basal area and tons can be above zero
  double height_ft = 0;
  double survival_term = 0;       // equations: G(a); table: N_t(a)
  double log_basal_constant = 0;  // ln Bu = constant + exponent ln N
  double log_basal_exponent = 0;
  double log_tons_constant = 0;  // ln Y = constant + trees ln N + basal ln B
  double log_tons_trees = 0;
  double log_tons_basal = 0;
  bool tons = false;       // false: no weight at this age, whatever B
  double crown_slope = 0;  // ln(1 - CR) = slope x Dq / H
};

// Growth at whole ages as plain numbers, for the evaluator's inner loop. The typed
// face is GrowthModel.
class GrowthKernel {
 public:
  GrowthKernel(const EquationSet& equations, double site_index_ft, double planted_tpa,
               const EstablishmentResponse& response);
  explicit GrowthKernel(const YieldTable& table);
  explicit GrowthKernel(const TabledRegime& regime);

  int first_age() const { return first_age_; }
  int last_age() const { return static_cast<int>(rows_.size()) - 1; }
  const AgeRow& row(int age) const { return rows_[static_cast<std::size_t>(age)]; }
  double recovery_per_yr() const { return recovery_per_yr_; }
  bool from_table() const { return from_table_; }
  // The cuts are in the rows: nothing is ever computed for a thinned stand.
  bool cuts_tabled() const { return cuts_tabled_; }
  // Of the survival equation; a table has none.
  double survival_floor_tpa() const { return survival_floor_tpa_; }
  double survival_exponent() const { return survival_exponent_; }

  TreeTrack track(double tpa, int age) const {
    if (from_table_) return {false, tpa / row(age).survival_term};
    if (tpa <= survival_floor_tpa_) return {true, tpa};
    return {false,
            std::pow(tpa - survival_floor_tpa_, -survival_exponent_) - row(age).survival_term};
  }
  double trees_at(const TreeTrack& track, int age) const {
    if (track.held) return track.invariant;
    const double term = row(age).survival_term;
    if (from_table_) return track.invariant * term;
    return survival_floor_tpa_ + std::pow(track.invariant + term, -1.0 / survival_exponent_);
  }
  // The trees of the stand that was planted and never cut.
  const TreeTrack& planted_track() const { return planted_; }

  double log_unthinned_basal_area(const AgeRow& row, double log_tpa) const {
    return row.log_basal_constant + row.log_basal_exponent * log_tpa;
  }

 private:
  struct TabledMeasures {
    double height_ft, tpa, basal_area_ft2_ac, total_tons;
  };
  void thin_young_stand(const PrecommercialThinning& thinning);
  void add_tabled_row(int age_yr, const TabledMeasures& measures, double density_exponent);

  bool from_table_ = false;
  bool cuts_tabled_ = false;
  int first_age_ = 0;
  double recovery_per_yr_ = 0;
  double survival_floor_tpa_ = 0, survival_exponent_ = 1;
  TreeTrack planted_;
  std::vector<AgeRow> rows_;  // index: whole age
};

// Exponent of the crown equation at an age: ln(1 - CR) = (a + b/A) Dq/H (Dyer &
// Burkhart 1987, from memory, unverified).
inline constexpr double crown_asymptote = -1.35243, crown_per_inverse_age = -33.54194;
double crown_slope(double age_yr);

}  // namespace staddle
