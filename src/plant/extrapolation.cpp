// SPDX-License-Identifier: GPL-3.0-or-later
#include "plant/extrapolation.h"

#include "staddle/growth/growth_model.h"

namespace staddle {
namespace {

// Woody control in 14 trials, age 20: gains of 0.7 to 5.1 years; one site lost (South &
// Miller, an abstract was read). Nothing is gained where nothing was done.
constexpr double least_printed_gain_yr = 0.0, most_printed_gain_yr = 5.1;

}  // namespace

std::vector<Extrapolation> extrapolations_of(const PlantProblem& problem,
                                             const AlternativeAnswer& answer) {
  std::vector<Extrapolation> outside;
  if (!problem.equations) return outside;
  const EquationSet& equations = *problem.equations;
  const EstablishmentAlternative& alternative = answer.alternative;
  const auto note = [&](const char* what, double value, double low, double high) {
    if (value < low || value > high) outside.push_back({what, value, low, high});
  };
  const GrowthModel growth = problem.stand(alternative).stand_case.growth;
  note("planted_tpa", growth.planted_stand_trees(age(0)).in(trees_per_acre),
       equations.fitted_tpa.low, equations.fitted_tpa.high);
  note("site_index_ft", (problem.site_index.value() + alternative.site_index_shift).in(feet),
       equations.fitted_site_index_ft.low, equations.fitted_site_index_ft.high);
  const double gained = alternative.response.years_gained;
  note("years_gained", gained, least_printed_gain_yr, most_printed_gain_yr);
  note("age_yr", equation_age(answer.best->regime.final_harvest.in(years), gained),
       equations.fitted_age_yr.low, equations.fitted_age_yr.high);
  return outside;
}

}  // namespace staddle
