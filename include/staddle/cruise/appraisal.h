// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "staddle/cruise/plots.h"
#include "staddle/growth/equation_set.h"
#include "staddle/growth/yield_table.h"
#include "staddle/products/assortment.h"
#include "staddle/products/price_list.h"
#include "staddle/regime/stand_case.h"
#include "staddle/signs/readiness.h"

// What the plots say of the stand, and how far it may be from the truth.
namespace staddle {

template <class Amount>
struct Interval {
  Amount low, high;
};

// The mean over the tract of one thing measured on every plot:
//   mean = sum over strata W m,  W the stratum's weight, m the mean of its plots
//   standard error = sqrt(sum W^2 s^2 / n),  s^2 the variance of its n plots
//   coefficient of variation = sqrt(sum W s^2) / mean: of single plots about the mean of
//     their stratum
//   interval = mean +- t standard error,  t of Student with the degrees of freedom of
//     Satterthwaite (Cochran 1977, Sampling Techniques, eq. 5.16), rounded down; with one
//     stratum they are n - 1
// The plots are taken as few among the many that the tract could hold: no correction for
// a finite population. Worked example: plots of 80, 100, 120 ft2/ac have mean 100,
// standard error 11.547, coefficient of variation 0.2, 90 percent interval 66.28 to 133.72.
template <class Amount>
struct Estimate {
  Amount mean;
  // Absent where a stratum has a single plot, which shows no variation.
  std::optional<Amount> standard_error;
  std::optional<double> coefficient_of_variation;  // absent also where the mean is 0
  std::optional<Interval<Amount>> interval_90, interval_95;
};

struct StratumSummary {
  std::string name;
  std::size_t plots = 0;
  std::optional<Area> acres;
  double weight = 0.0;  // the weights of all strata sum to 1
  BasalArea mean_basal_area;
};

// height = 4.5 + exp(intercept + slope / dbh), fitted by least squares to the logarithms
// of the measured heights above breast height (Curtis 1967, For. Sci. 13:365, from
// memory). Never falls with diameter: where the data say so the slope is 0.
struct HeightCurve {
  double intercept = 0.0;
  double slope_in = 0.0;     // inches, at most 0
  std::size_t measured = 0;  // trees it is fitted to
  std::size_t filled = 0;    // trees whose height it supplies

  Height at(Diameter dbh) const;
};

struct StandTableRow {
  int dbh_class_in = 0;  // from half an inch below up to just under half an inch above
  TreeDensity trees;
  BasalArea basal_area;
  std::vector<Yield> tons;  // by product; empty where tons are not known
  std::optional<MoneyPerAcre> stumpage;
};

// Why a figure is missing: its key in the result, and a sentence.
struct MissingFigure {
  std::string key;
  std::string reason;
};

struct AppraisalProblem {
  Tally tally;
  std::optional<Age> at;  // whole years, at least 1
  // What the stand grows by: nothing known, equations, or the owner's table. Single trees
  // are weighed, and the site index is told, by equations alone.
  std::variant<std::monostate, EquationSet, YieldTable> growth;
  std::vector<ProductLimit> products = default_products();
  std::optional<PriceList> prices;  // in the order of the products
  double error = 0.10;              // of mean basal area, for the plots needed
  double confidence = 0.90;
  ReadyLimits ready_limits = default_ready_limits();
  int years_between_entries = 5;
  Age look_ahead_to = age(45);  // for the ages at which signs come due
};

struct Appraisal {
  std::size_t plots = 0, plots_without_trees = 0, trees_tallied = 0;
  std::vector<StratumSummary> strata;  // in the order in which they appear; one where
                                       // the tally names none
  Estimate<BasalArea> basal_area;
  Estimate<TreeDensity> trees;
  std::vector<std::string> products;                 // largest first
  std::optional<std::vector<Estimate<Yield>>> tons;  // by product
  std::optional<Estimate<MoneyPerAcre>> stumpage;    // tons x final prices
  // By product: tons from the trees over tons from the equations for the same stand;
  // absent where the equations know none. The weight of all trees is that of the
  // equations, so this compares the split into products, not the total.
  std::optional<std::vector<std::optional<double>>> calibration;
  std::optional<Diameter> quadratic_mean_diameter, mean_diameter;  // absent without trees
  std::optional<Height> dominant_height;
  std::string dominant_height_rule;         // a sentence
  std::optional<HeightCurve> height_curve;  // with three measured heights or more
  std::optional<double> live_crown_ratio;   // mean over trees that have one
  std::optional<double> crown_cover;        // crown areas over ground
  std::optional<Height> site_index;
  std::optional<int> plots_needed;         // in all, not more
  std::vector<StandTableRow> stand_table;  // rising
  Readiness readiness;
  std::string readiness_judgement;  // one sentence
  std::vector<MissingFigure> missing;
  std::vector<std::string> assumed;  // sentences
};

// REQUIRES: at least one plot; diameters above zero; heights above breast height (4.5
// ft); prices one per product; products that trees name are among the products; the age
// whole and within the growth source's ages; 0 < error, 0 < confidence < 1.
Appraisal appraise(const AppraisalProblem& problem);

}  // namespace staddle
