// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/cruise_writer.h"

#include "io/csv_writer.h"
#include "io/number_text.h"
#include "io/ready_writer.h"
#include "io/value_writer.h"
#include "staddle/cruise/sale_after_tax.h"

namespace staddle {
namespace {

using json::Value;

template <class Dimension>
Value estimate_value(const Estimate<Quantity<Dimension>>& estimate, Unit<Dimension> unit) {
  const auto amount = [unit](Quantity<Dimension> quantity) {
    return json::number(quantity.in(unit));
  };
  const auto interval = [&](const Interval<Quantity<Dimension>>& given) {
    return Value{amount(given.low), amount(given.high)};
  };
  return {
      {"mean", amount(estimate.mean)},
      {"standard_error", json::optional(estimate.standard_error, amount)},
      {"coefficient_of_variation", json::optional(estimate.coefficient_of_variation, json::number)},
      {"interval_90", json::optional(estimate.interval_90, interval)},
      {"interval_95", json::optional(estimate.interval_95, interval)}};
}

template <class Dimension>
Value measure(const std::optional<Quantity<Dimension>>& quantity, Unit<Dimension> unit) {
  return json::optional(quantity,
                        [unit](Quantity<Dimension> q) { return json::number(q.in(unit)); });
}

// An object with one key per product.
template <class Item, class Writer>
Value by_product(const std::vector<std::string>& products, const std::vector<Item>& items,
                 Writer write) {
  Value object = Value::object();
  for (std::size_t i = 0; i < items.size(); ++i) object[products[i]] = write(items[i]);
  return object;
}

Value design_value(const PlotDesign& design) {
  if (design.is_point_sample()) {
    return {{"basal_area_factor",
             json::number(design.basal_area_per_tallied_tree(inches(1)).in(square_feet_per_acre))}};
  }
  return {{"plot_acres",
           json::number(1.0 / design.trees_per_tallied_tree(inches(1)).in(trees_per_acre))}};
}

Value stratum_value(const StratumSummary& stratum) {
  return {
      {"name", stratum.name},
      {"plots", stratum.plots},
      {"acres", measure(stratum.acres, acres)},
      {"weight", json::number(stratum.weight)},
      {"mean_basal_area_ft2_ac", json::number(stratum.mean_basal_area.in(square_feet_per_acre))}};
}

void add_after_tax(Value& result, const CruiseQuestion& question, const Appraisal& appraisal) {
  if (!question.terms.economics || !question.terms.economics->tax) return;
  const TaxRules& rules = *question.terms.economics->tax;
  const auto total = [&](const Estimate<MoneyPerAcre>& stumpage) {
    return estimate_value(after_tax(stumpage, rules), dollars_per_acre);
  };
  result["after_tax"] = {{"stumpage_usd_ac", json::optional(appraisal.stumpage, total)},
                         {"note", "sold today; not tax advice"}};
  const auto of_class = [&](MoneyPerAcre stumpage) {
    return json::usd_ac(after_tax(stumpage, appraisal.stumpage->mean, rules));
  };
  for (std::size_t i = 0; i < appraisal.stand_table.size(); ++i) {
    result["stand_table"][i]["after_tax"] = {
        {"usd_ac", json::optional(appraisal.stand_table[i].stumpage, of_class)}};
  }
}

Value row_value(const StandTableRow& row, const std::vector<std::string>& products) {
  const auto tons = [](Yield yield) { return json::number(yield.in(tons_per_acre)); };
  return {{"dbh_class_in", row.dbh_class_in},
          {"tpa", json::number(row.trees.in(trees_per_acre))},
          {"basal_area_ft2_ac", json::number(row.basal_area.in(square_feet_per_acre))},
          {"tons_ac", row.tons.empty() ? Value(nullptr) : by_product(products, row.tons, tons)},
          {"usd_ac", json::optional(row.stumpage, json::usd_ac)}};
}

Value curve_value(const HeightCurve& curve) {
  return {{"form", "height_ft = 4.5 + exp(intercept + slope_in / dbh_in)"},
          {"intercept", json::number(curve.intercept)},
          {"slope_in", json::number(curve.slope_in)},
          {"trees_measured", curve.measured},
          {"trees_filled", curve.filled}};
}

// The three levels of the result: how it was asked, how much stands, of what kind.
void add_question(Value& result, const CruiseQuestion& question) {
  const CruiseTerms& terms = question.terms;
  result["title"] = terms.economics ? terms.economics->title : question.plots_file;
  result["plots_file"] = question.plots_file;
  result["design"] = design_value(question.problem.tally.design);
  result["acres"] = measure(question.area, acres);
  result["age_yr"] = json::optional(terms.at, json::whole_age);
  result["model"] = question.model.empty() ? Value(nullptr) : Value(question.model);
}

void add_amounts(Value& result, const Appraisal& appraisal) {
  result["plots"] = appraisal.plots;
  result["plots_without_trees"] = appraisal.plots_without_trees;
  result["trees_tallied"] = appraisal.trees_tallied;
  result["strata"] = json::list(appraisal.strata, stratum_value);
  result["basal_area_ft2_ac"] = estimate_value(appraisal.basal_area, square_feet_per_acre);
  result["tpa"] = estimate_value(appraisal.trees, trees_per_acre);
  const auto& products = appraisal.products;
  result["tons_ac"] = json::optional(appraisal.tons, [&](const std::vector<Estimate<Yield>>& tons) {
    return by_product(products, tons, [](const Estimate<Yield>& estimate) {
      return estimate_value(estimate, tons_per_acre);
    });
  });
  result["stumpage_usd_ac"] =
      json::optional(appraisal.stumpage, [](const Estimate<MoneyPerAcre>& stumpage) {
        return estimate_value(stumpage, dollars_per_acre);
      });
  result["calibration"] =
      json::optional(appraisal.calibration, [&](const std::vector<std::optional<double>>& ratios) {
        return by_product(products, ratios, [](const std::optional<double>& ratio) {
          return json::optional(ratio, json::number);
        });
      });
}

void add_measures(Value& result, const Appraisal& appraisal) {
  result["qmd_in"] = measure(appraisal.quadratic_mean_diameter, inches);
  result["mean_dbh_in"] = measure(appraisal.mean_diameter, inches);
  result["dominant_height_ft"] = measure(appraisal.dominant_height, feet);
  result["dominant_height_rule"] = appraisal.dominant_height_rule.empty()
                                       ? Value(nullptr)
                                       : Value(appraisal.dominant_height_rule);
  result["height_curve"] = json::optional(appraisal.height_curve, curve_value);
  result["live_crown_ratio"] = json::optional(appraisal.live_crown_ratio, json::number);
  result["crown_cover_fraction"] = json::optional(appraisal.crown_cover, json::number);
  result["site_index_ft"] = measure(appraisal.site_index, feet);
  result["plots_needed"] =
      json::optional(appraisal.plots_needed, [](int plots) { return Value(plots); });
}

}  // namespace

std::string cruise_json(const CruiseQuestion& question, const Appraisal& appraisal) {
  Value result{{"format", "staddle-cruise/1"}};
  add_question(result, question);
  add_amounts(result, appraisal);
  add_measures(result, appraisal);
  result["error"] = json::number(question.terms.error);
  result["confidence"] = json::number(question.terms.confidence);
  result["stand_table"] = json::list(appraisal.stand_table, [&](const StandTableRow& row) {
    return row_value(row, appraisal.products);
  });
  add_after_tax(result, question, appraisal);
  result["ready"] = json::list(appraisal.readiness.signs, json::sign);
  result["ready_judgement"] = appraisal.readiness_judgement;
  result["missing"] = json::list(appraisal.missing, [](const MissingFigure& missing) {
    return Value{{"key", missing.key}, {"reason", missing.reason}};
  });
  result["assumed"] = json::assumptions(assumptions_of(question, appraisal));
  return json::result_text(result);
}

std::string cruise_csv(const Appraisal& appraisal) {
  std::vector<std::string> head{"dbh_class_in", "tpa", "basal_area_ft2_ac"};
  for (const std::string& product : appraisal.products) head.push_back(product + "_tons_ac");
  head.push_back("usd_ac");
  std::string text = csv::line(head);
  for (const StandTableRow& row : appraisal.stand_table) {
    std::vector<std::string> cells{csv::number(row.dbh_class_in),
                                   csv::number(row.trees.in(trees_per_acre)),
                                   csv::number(row.basal_area.in(square_feet_per_acre))};
    for (std::size_t i = 0; i < appraisal.products.size(); ++i) {
      cells.push_back(row.tons.empty() ? "" : csv::number(row.tons[i].in(tons_per_acre)));
    }
    cells.push_back(row.stumpage ? csv::number(row.stumpage->in(dollars_per_acre)) : "");
    text += csv::line(cells);
  }
  return text;
}

}  // namespace staddle
