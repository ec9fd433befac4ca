// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/models_writer.h"

#include <fmt/format.h>

#include <utility>

#include "io/number_text.h"
#include "io/shown_equation.h"
#include "io/value_writer.h"
#include "report/wrap.h"
#include "staddle/report/text.h"

namespace staddle {
namespace {

using json::Value;

template <class Numbers>
std::vector<std::pair<std::string, double>> numbered(const std::string& letter, int first,
                                                     const Numbers& values) {
  std::vector<std::pair<std::string, double>> named;
  for (const double value : values) named.emplace_back(fmt::format("{}{}", letter, first++), value);
  return named;
}

std::string total_weight_equation(TotalWeightForm form) {
  switch (form) {
    case TotalWeightForm::trees_height_basal_area:
      return "ln Y = y0 + y1 ln N + y2 ln H + y3 ln B + y4 ln N / A + y5 ln B / A";
    case TotalWeightForm::height_basal_area:
      return "ln Y = y0 + y1 ln H + y2 ln B + y3 ln N / A + y4 ln H / A + y5 ln B / A";
  }
  throw ContractViolation("a form of the total-weight equation that has no text");
}

std::vector<ShownEquation> equations_of(const EquationSet& model) {
  std::vector<ShownEquation> equations{
      {"dominant height, feet",
       "dominant_height",
       "H = SI ((1 - exp(-rate A)) / (1 - exp(-rate base)))^shape",
       {{"rate", model.height_rate},
        {"shape", model.height_shape},
        {"base", model.site_base_age_yr}}},
      {"trees per acre",
       "survival",
       "N2 = floor + ((N1 - floor)^-e + rate^2 SI (A2^p - A1^p))^(-1/e); held at or below the "
       "floor",
       {{"floor", model.survival_floor_tpa},
        {"e", model.survival_exponent},
        {"rate", model.survival_rate},
        {"p", model.survival_age_power}}},
      {"basal area of an unthinned stand, square feet per acre", "basal_area",
       "ln Bu = b0 + b1 / A + b2 ln N + b3 ln H + b4 ln N / A + b5 ln H / A",
       numbered("b", 0, model.basal_area)},
      {"total green weight, tons per acre outside bark", "total_weight",
       total_weight_equation(model.total_weight_form), numbered("y", 0, model.total_weight)},
      {"weight of stems of at least d inches to a top of t inches", "merchantable",
       "Ym = Y exp(m1 (t / Dq)^m2 + m3 N^m4 (d / Dq)^m5), Dq = sqrt(B / (0.005454154 N))",
       numbered("m", 1, model.merchantable)},
      {"a thinned stand's basal area",
       "thinned_stand",
       "CI = 1 - B / Bu; CI2 = CI1 exp(-k (A2 - A1)); B2 = Bu2 (1 - CI2)",
       {{"k", model.recovery_per_yr}}},
  };
  if (model.hardwood_per_percent) {
    equations.push_back({"basal area beside hardwoods, P their percentage of the pine's",
                         "hardwood",
                         "ln B = ln Bu + h P",
                         {{"h", *model.hardwood_per_percent}}});
  }
  return equations;
}

std::string range_text(const FittedRange& range) {
  return fmt::format("{} to {}", number_text(range.low), number_text(range.high));
}

Value range_json(const FittedRange& range) {
  return Value::array({json::number(range.low), json::number(range.high)});
}

Value head_json(const EquationSet& model) {
  return {{"id", model.id},
          {"species", model.species},
          {"region", model.region},
          {"source", model.source},
          {"fitted_range",
           {{"age_yr", range_json(model.fitted_age_yr)},
            {"tpa", range_json(model.fitted_tpa)},
            {"site_index_ft", range_json(model.fitted_site_index_ft)}}}};
}

// A name and what it says, wrapped beneath itself.
std::string entry(const std::string& name, const std::string& text) {
  return wrapped(text, fmt::format("  {:<9}", name), std::string(11, ' '), text_width) + "\n";
}

std::string head_text(const EquationSet& model) {
  return model.id + "\n" + entry("species", model.species) + entry("region", model.region) +
         entry("source", model.source) +
         entry("fitted", fmt::format("ages {} years, {} trees per acre, site index {} feet",
                                     range_text(model.fitted_age_yr), range_text(model.fitted_tpa),
                                     range_text(model.fitted_site_index_ft)));
}

std::string worked_values_text(const std::vector<WorkedValue>& values) {
  Table table;
  table.columns = {
      {"site index", "feet"},      {"planted trees", "per acre"}, {"age", "years"},
      {"trees", "per acre"},       {"dominant height", "feet"},   {"basal area", "sq ft/acre"},
      {"mean diameter", "inches"}, {"total weight", "tons/acre"}};
  for (const WorkedValue& value : values) {
    std::vector<Cell> row;
    for (const double number :
         {value.site_index_ft, value.planted_tpa, value.age_yr, value.tpa, value.dominant_height_ft,
          value.basal_area_ft2_ac, value.qmd_in, value.total_tons_ac}) {
      row.push_back({number_text(number), number});
    }
    table.rows.push_back(std::move(row));
  }
  return to_text(table);
}

std::string equation_text(const ShownEquation& shown) {
  std::string text = "\n" + wrapped(shown.what, "", "", text_width) + "\n" +
                     wrapped(shown.equation, "  ", "    ", text_width) + "\n";
  std::string separator = "  ";
  for (const auto& [name, value] : shown.coefficients) {
    text += fmt::format("{}{} = {}", separator, name, number_text(value));
    separator = ", ";
  }
  return text + "\n";
}

Value equations_json(const std::vector<ShownEquation>& equations) {
  Value object = Value::object();
  for (const ShownEquation& shown : equations) {
    Value coefficients = Value::object();
    for (const auto& [name, value] : shown.coefficients) coefficients[name] = json::number(value);
    object[shown.key] = {{"what", shown.what},
                         {"equation", shown.equation},
                         {"coefficients", std::move(coefficients)}};
  }
  return object;
}

}  // namespace

std::string models_text(const std::vector<EquationSet>& models,
                        const std::vector<EstablishmentRecipe>& ways) {
  std::string text;
  for (const EquationSet& model : models) text += head_text(model) + "\n";
  text +=
      "\"staddle models ID\" shows the equations of one. Instead of a model a scenario may name "
      "a\n"
      "yield table of your own: \"yield_table\": \"table.csv\".\n\n"
      "Ways to start a stand, for the command plant (establishment.alternatives, \"from\");\n"
      "\"staddle models ID\" shows the costs, gains and sources of one:\n\n";
  for (const EstablishmentRecipe& way : ways) {
    text += fmt::format("  {:<36}{}\n", way.id, way.name);
  }
  return text;
}

std::string models_json(const std::vector<EquationSet>& models,
                        const std::vector<EstablishmentRecipe>& ways) {
  return json::result_text({{"format", "staddle-models/1"},
                            {"models", json::list(models, head_json)},
                            {"establishment", json::list(ways, [](const EstablishmentRecipe& way) {
                               return Value{{"id", way.id}, {"name", way.name}};
                             })}});
}

std::string model_text(const EquationSet& model) {
  std::string text = head_text(model);
  text +=
      "\nA: age in years; SI: site index, the dominant height at the base age; H: dominant "
      "height;\n"
      "N: trees and B: basal area per acre; Dq: quadratic mean diameter; ln: natural logarithm.\n";
  for (const ShownEquation& shown : equations_of(model)) text += equation_text(shown);
  text += "\nWhat the program adds to every model: assumptions\n";
  for (const ShownEquation& shown : shown_conventions()) text += equation_text(shown);
  text += "\nWhat to know of it\n";
  for (const std::string& note : model.notes) {
    text += wrapped(note, "  ", "  ", text_width) + "\n";
  }
  if (model.worked_values.empty()) return text;
  return text + "\nWhat it says of planted and unthinned stands\n" +
         worked_values_text(model.worked_values);
}

std::string model_json(const EquationSet& model) {
  Value result{{"format", "staddle-model/1"}};
  result.update(head_json(model));
  result["equations"] = equations_json(equations_of(model));
  result["conventions"] = equations_json(shown_conventions());
  result["notes"] = model.notes;
  return json::result_text(result);
}

}  // namespace staddle
