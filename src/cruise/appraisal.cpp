// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/cruise/appraisal.h"

#include <fmt/format.h>

#include <cmath>
#include <map>
#include <numbers>

#include "cruise/heights.h"
#include "cruise/ready_signs.h"
#include "cruise/tree_list.h"
#include "cruise/tree_tons.h"
#include "products/assortment_kernel.h"
#include "staddle/base/contract.h"
#include "stand/stand_constants.h"

namespace staddle {
namespace {

template <class Dimension>
Estimate<Quantity<Dimension>> estimate_of(const SampleMean& sample, Unit<Dimension> unit) {
  Estimate<Quantity<Dimension>> estimate{unit(sample.mean), {}, {}, {}, {}};
  if (!sample.error_known()) return estimate;
  estimate.standard_error = unit(sample.standard_error);
  if (sample.mean > 0.0) estimate.coefficient_of_variation = sample.spread / sample.mean;
  const auto interval = [&](double confidence) {
    const auto [low, high] = interval_of(sample, confidence);
    return Interval<Quantity<Dimension>>{unit(low), unit(high)};
  };
  estimate.interval_90 = interval(0.90);
  estimate.interval_95 = interval(0.95);
  return estimate;
}

class Appraiser {
 public:
  explicit Appraiser(const AppraisalProblem& problem) : problem_(problem), list_(problem.tally) {
    if (problem.prices) {
      require(problem.prices->size() == problem.products.size(), "one price per product");
    }
  }

  Appraisal appraise() {
    count();
    measure_density();
    measure_diameters();
    measure_heights();
    measure_crowns();
    find_site();
    weigh();
    tabulate();
    judge_from_plots(problem_, result_);
    return std::move(result_);
  }

 private:
  const std::vector<WeighedTree>& trees() const { return list_.trees(); }

  void miss(const std::string& key, const std::string& reason) {
    result_.missing.push_back({key, reason});
  }

  // The mean over the tract of what `amount(tree index)` adds to its plot.
  template <class Amount>
  SampleMean mean_of(Amount amount) const {
    std::vector<double> by_plot(problem_.tally.plots.size(), 0.0);
    for (std::size_t i = 0; i < trees().size(); ++i) by_plot[trees()[i].plot] += amount(i);
    return list_.mean_of(by_plot);
  }

  void count() {
    result_.plots = problem_.tally.plots.size();
    for (const Plot& plot : problem_.tally.plots) result_.plots_without_trees += plot.trees.empty();
    result_.trees_tallied = trees().size();
    result_.strata = list_.strata();
    for (const ProductLimit& product : problem_.products) result_.products.push_back(product.name);
    if (list_.weighed_by_plots()) {
      for (const StratumSummary& stratum : result_.strata) {
        if (stratum.acres) continue;
        result_.assumed.push_back(
            fmt::format("stratum \"{}\" has no acres: it weighs by its {} "
                        "of the {} plots",
                        stratum.name, stratum.plots, result_.plots));
      }
    }
  }

  void measure_density() {
    result_.trees =
        estimate_of(mean_of([&](std::size_t i) { return trees()[i].plot_tpa; }), trees_per_acre);
    const PlotDesign& design = problem_.tally.design;
    result_.basal_area = estimate_of(
        mean_of([&](std::size_t i) {
          return design.basal_area_per_tallied_tree(trees()[i].tree->dbh).in(square_feet_per_acre);
        }),
        square_feet_per_acre);
    const Estimate<BasalArea>& basal_area = result_.basal_area;
    if (!basal_area.standard_error) {
      miss("standard_error", "a single plot, in the tract or in a stratum, shows no variation");
    }
    if (!basal_area.coefficient_of_variation) {
      miss("plots_needed", "the variation between plots is not known");
      return;
    }
    result_.plots_needed =
        plots_needed(*basal_area.coefficient_of_variation, static_cast<int>(result_.strata.size()),
                     problem_.error, problem_.confidence);
    if (!result_.plots_needed) {
      miss("plots_needed", "more than a million plots would be needed for this error");
    }
  }

  void measure_diameters() {
    if (trees().empty()) {
      for (const char* key : {"qmd_in", "mean_dbh_in"}) miss(key, no_trees);
      return;
    }
    double sum = 0.0;
    double tpa = 0.0;
    for (const WeighedTree& tree : trees()) {
      sum += tree.tpa * tree.dbh_in;
      tpa += tree.tpa;
    }
    result_.mean_diameter = inches(sum / tpa);
    result_.quadratic_mean_diameter =
        quadratic_mean_diameter(result_.trees.mean, result_.basal_area.mean);
  }

  void measure_heights() {
    result_.height_curve = fit_height_curve(trees());
    if (!result_.height_curve) {
      no_heights_ = trees().empty()
                        ? no_trees
                        : fmt::format("fewer than {} heights were measured", fewest_heights);
      miss("dominant_height_ft", no_heights_);
      return;
    }
    heights_ft_ = all_heights_ft(trees(), *result_.height_curve);
    const DominantHeight dominant =
        dominant_height_of(trees(), heights_ft_, result_.quadratic_mean_diameter->in(inches));
    result_.dominant_height = feet(dominant.height_ft);
    result_.dominant_height_rule = dominant.rule;
    if (result_.height_curve->filled > 0) {
      result_.assumed.push_back(fmt::format(
          "{} of {} heights were not measured and come from a curve fitted to the {} that were: "
          "height = 4.5 + exp({:.3f} - {:.3f}/dbh)",
          result_.height_curve->filled, trees().size(), result_.height_curve->measured,
          result_.height_curve->intercept, -result_.height_curve->slope_in));
    }
  }

  void measure_crowns() {
    double ratio = 0.0;
    double with_ratio = 0.0;
    double crowns_ft2 = 0.0;      // per acre, of trees whose crown was measured
    double with_width_ft2 = 0.0;  // basal area of these trees
    for (const WeighedTree& tree : trees()) {
      if (tree.tree->live_crown_ratio) {
        ratio += tree.tpa * *tree.tree->live_crown_ratio;
        with_ratio += tree.tpa;
      }
      if (!tree.tree->crown_width) continue;
      const double width_ft = tree.tree->crown_width->in(feet_across);
      crowns_ft2 += tree.tpa * std::numbers::pi / 4.0 * width_ft * width_ft;
      with_width_ft2 += tree.basal_area_ft2_ac;
    }
    if (with_ratio > 0.0) {
      result_.live_crown_ratio = ratio / with_ratio;
    } else {
      miss("live_crown_ratio", "no crown ratio was measured");
    }
    if (with_width_ft2 <= 0.0) return;
    // Trees without a measured crown: as much crown to the basal area as the others.
    const double basal_area = result_.basal_area.mean.in(square_feet_per_acre);
    result_.crown_cover = crowns_ft2 / square_feet_of_an_acre * basal_area / with_width_ft2;
  }

  void find_site() {
    const auto* equations = std::get_if<EquationSet>(&problem_.growth);
    if (!equations) {
      miss("site_index_ft", std::holds_alternative<YieldTable>(problem_.growth)
                                ? "a yield table has no site index"
                                : no_model);
    } else if (!problem_.at) {
      miss("site_index_ft", no_age);
    } else if (!result_.dominant_height) {
      miss("site_index_ft", no_heights_);
    } else {
      result_.site_index =
          site_index_from_height(*equations, *result_.dominant_height, *problem_.at);
    }
  }

  // Why trees cannot be weighed; empty where they can.
  std::string why_no_tons() const {
    if (std::holds_alternative<std::monostate>(problem_.growth)) return no_model;
    if (std::holds_alternative<YieldTable>(problem_.growth)) {
      return "a yield table does not say what single trees weigh";
    }
    if (!problem_.at) return no_age;
    if (!result_.dominant_height) return no_heights_;
    return "";
  }

  void weigh() {
    const std::string reason = why_no_tons();
    if (!reason.empty()) {
      for (const char* key : {"tons_ac", "calibration", "stumpage_usd_ac"}) miss(key, reason);
      return;
    }
    const auto& equations = std::get<EquationSet>(problem_.growth);
    const GrowthModel growth =
        GrowthModel::from_equations(equations, *result_.site_index, result_.trees.mean);
    const Assortment assortment = Assortment::from_equations(equations, problem_.products);
    const double total = total_tons(growth, assortment);
    tree_tons_ = weigh_trees(trees(), heights_ft_, total, equations, problem_.products).by_tree;

    const std::vector<Yield> by_equations =
        assortment.tons(growth, *problem_.at, result_.trees.mean, result_.basal_area.mean);
    result_.tons.emplace();
    result_.calibration.emplace();
    for (std::size_t p = 0; p < problem_.products.size(); ++p) {
      result_.tons->push_back(
          estimate_of(mean_of([&](std::size_t i) { return tree_tons_[i][p]; }), tons_per_acre));
      const double expected = by_equations[p].in(tons_per_acre);
      const double ratio = result_.tons->back().mean.in(tons_per_acre) / expected;
      result_.calibration->push_back(expected > 0.0 && std::isfinite(ratio) ? std::optional(ratio)
                                                                            : std::nullopt);
    }
    result_.assumed.push_back(
        "the weight of all trees together is that of the total-weight equation at the tally's "
        "trees, height, basal area and age; the calibration compares its split into products");
    if (!problem_.prices) {
      miss("stumpage_usd_ac", "no prices were given (--economics)");
      return;
    }
    result_.stumpage =
        estimate_of(mean_of([&](std::size_t i) { return dollars(i); }), dollars_per_acre);
  }

  double total_tons(const GrowthModel& growth, const Assortment& assortment) const {
    StandTerms terms;
    terms.age_yr = problem_.at->whole();
    terms.log_tpa = std::log(result_.trees.mean.in(trees_per_acre));
    terms.log_basal_area = std::log(result_.basal_area.mean.in(square_feet_per_acre));
    return assortment.kernel().total_tons(growth.kernel().row(terms.age_yr), terms);
  }

  // Stumpage of one tree, per acre of its plot.
  double dollars(std::size_t tree) const {
    double sum = 0.0;
    for (std::size_t p = 0; p < problem_.products.size(); ++p) {
      sum += tree_tons_[tree][p] * (*problem_.prices)[p].stumpage.in(dollars_per_ton);
    }
    return sum;
  }

  void tabulate() {
    std::map<int, StandTableRow> rows;
    for (std::size_t i = 0; i < trees().size(); ++i) {
      const WeighedTree& tree = trees()[i];
      const int dbh_class = static_cast<int>(std::floor(tree.dbh_in + 0.5));
      StandTableRow& row = rows[dbh_class];
      row.dbh_class_in = dbh_class;
      row.trees += trees_per_acre(tree.tpa);
      row.basal_area += square_feet_per_acre(tree.basal_area_ft2_ac);
      if (tree_tons_.empty()) continue;
      const double share = tree.tpa / tree.plot_tpa;  // from the plot to the tract
      row.tons.resize(problem_.products.size());
      for (std::size_t p = 0; p < row.tons.size(); ++p) {
        row.tons[p] += tons_per_acre(share * tree_tons_[i][p]);
      }
      if (!result_.stumpage) continue;
      row.stumpage =
          row.stumpage.value_or(dollars_per_acre(0)) + dollars_per_acre(share * dollars(i));
    }
    for (auto& [dbh_class, row] : rows) result_.stand_table.push_back(std::move(row));
  }

  static constexpr const char* no_trees = "no tree was tallied";
  static constexpr const char* no_age = "no age was given (--age-yr)";
  static constexpr const char* no_model = "no growth model was given (--model or --economics)";

  const AppraisalProblem& problem_;
  TreeList list_;
  Appraisal result_;
  std::vector<double> heights_ft_;
  std::string no_heights_;
  std::vector<std::vector<double>> tree_tons_;  // [tree][product], per acre of its plot
};

}  // namespace

Appraisal appraise(const AppraisalProblem& problem) {
  require(problem.error > 0.0 && problem.confidence > 0.0 && problem.confidence < 1.0,
          "plots needed ask for an error above 0 and a confidence between 0 and 1");
  return Appraiser(problem).appraise();
}

}  // namespace staddle
