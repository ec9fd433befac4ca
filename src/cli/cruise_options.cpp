// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/cruise_options.h"

#include <algorithm>

#include "cli/number_option.h"
#include "cli/whole_number.h"
#include "staddle/io/model_library.h"

namespace staddle::cli {
namespace {

constexpr NumberRange tract_acres = above_to(0, 1e6);
constexpr std::uint64_t oldest_age_yr = 150;

class Understanding {
 public:
  explicit Understanding(const CruiseOptions& options) : options_(options) {}

  Result<CruiseRequest> understand() {
    const std::optional<PlotDesign> design = read_design();
    CruiseTerms terms;
    if (options_.acres) {
      if (const auto area = number("--acres", *options_.acres, tract_acres, "acres")) {
        terms.area = acres(*area);
      }
    }
    if (options_.age_yr) {
      const auto years = whole_number("--age-yr", *options_.age_yr, 1, oldest_age_yr);
      take(years, [&](std::uint64_t value) { terms.at = age(static_cast<double>(value)); });
    }
    read_model(terms);
    terms.error = number("--error", options_.error, between(0, 1), "").value_or(0.1);
    terms.confidence = number("--confidence", options_.confidence, between(0, 1), "").value_or(0.9);
    std::vector<StratumAcres> strata = read_strata();
    if (options_.to) check_written_scenario();
    if (!faults_.empty()) return faults_;
    return CruiseRequest{*design, std::move(strata), std::move(terms)};
  }

 private:
  void fault(FaultCode code, std::string text, std::string hint = "") {
    faults_.push_back({code, "", "", std::move(text), std::move(hint)});
  }

  template <class Value, class Use>
  void take(const Result<Value>& result, Use use) {
    if (result) {
      use(*result);
    } else {
      faults_.insert(faults_.end(), result.error().begin(), result.error().end());
    }
  }

  std::optional<double> number(const std::string& option, const std::string& typed,
                               const NumberRange& range, const std::string& unit) {
    std::optional<double> number;
    take(number_option(option, typed, range, unit), [&](double value) { number = value; });
    return number;
  }

  std::optional<PlotDesign> read_design() {
    const int given = options_.basal_area_factor.has_value() + options_.plot_acres.has_value() +
                      options_.plot_radius_ft.has_value();
    if (given != 1) {
      fault(given == 0 ? FaultCode::missing_key : FaultCode::contradiction,
            "one of --basal-area-factor, --plot-acres and --plot-radius-ft is required",
            "a factor for prism points, acres or a radius for plots");
      return std::nullopt;
    }
    if (options_.basal_area_factor) {
      const auto factor =
          number("--basal-area-factor", *options_.basal_area_factor, above_to(0, 100), "ft2/ac");
      if (factor) return PlotDesign::point_sample(square_feet_per_acre(*factor));
    } else if (options_.plot_acres) {
      const auto area = number("--plot-acres", *options_.plot_acres, above_to(0, 10), "acres");
      if (area) return PlotDesign::fixed_area(acres(*area));
    } else {
      const auto radius =
          number("--plot-radius-ft", *options_.plot_radius_ft, above_to(0, 400), "ft");
      if (radius) return PlotDesign::fixed_radius(feet_across(*radius));
    }
    return std::nullopt;
  }

  void read_model(CruiseTerms& terms) {
    if (!options_.model) return;
    std::vector<std::string> ids;
    std::string known;
    for (const EquationSet& set : built_in_equation_sets()) {
      if (set.id == *options_.model) terms.model = set;
      ids.push_back(set.id);
      known += (known.empty() ? "" : ", ") + set.id;
    }
    if (terms.model) return;
    const std::string nearest = nearest_name(*options_.model, ids);
    fault(
        FaultCode::unknown_name,
        "option --model: there is no growth model \"" + *options_.model + "\"; there are " + known,
        nearest.empty() ? "" : "did you mean " + nearest + "?");
  }

  std::vector<StratumAcres> read_strata() {
    std::vector<StratumAcres> strata;
    for (const std::string& pair : options_.stratum_acres) {
      const std::size_t equals = pair.rfind('=');
      const std::string name = pair.substr(0, equals);
      const auto area =
          number("--stratum-acres " + name, pair.substr(equals + 1), tract_acres, "acres");
      const bool twice = std::any_of(strata.begin(), strata.end(),
                                     [&](const StratumAcres& other) { return other.name == name; });
      if (twice) fault(FaultCode::repeated_key, "option --stratum-acres names " + name + " twice");
      if (area) strata.push_back({name, acres(*area)});
    }
    return strata;
  }

  void check_written_scenario() {
    if (!options_.age_yr) fault(FaultCode::missing_key, "option --to needs --age-yr");
    if (!options_.economics) fault(FaultCode::missing_key, "option --to needs --economics");
  }

  const CruiseOptions& options_;
  Faults faults_;
};

}  // namespace

void set_up_cruise(CommandLine& line, CruiseOptions& options) {
  line.argument("PLOTS", "the tally, a CSV file; - reads standard input", &options.plots);
  line.value("basal-area-factor", "FACTOR", "point samples: square feet an acre for every tree",
             &options.basal_area_factor);
  line.value("plot-acres", "ACRES", "plots of this area", &options.plot_acres);
  line.value("plot-radius-ft", "FEET", "round plots of this radius", &options.plot_radius_ft);
  line.value("model", "ID", "the growth model (staddle models), else that of --economics",
             &options.model);
  line.value("acres", "ACRES", "the tract, else the sum of its strata or that of --economics",
             &options.acres);
  line.pairs("stratum-acres", "NAME=ACRES ...", "the acres of strata named in the tally",
             &options.stratum_acres);
  line.value("age-yr", "YEARS", "age of the stand, years from planting", &options.age_yr);
  line.value("economics", "SCENARIO",
             "a scenario whose prices, products, limits, model and planted trees count",
             &options.economics);
  line.value("error", "SHARE", "error allowed for the plots needed (0.10 by default)",
             &options.error);
  line.value("confidence", "SHARE", "and its confidence (0.90 by default)", &options.confidence);
  line.value("to", "FILE", "also write the stand as a scenario; needs --age-yr and --economics",
             &options.to);
  add_output_options(line, {"text", "json", "csv"}, &options.output);
}

Result<CruiseRequest> understand(const CruiseOptions& options) {
  return Understanding(options).understand();
}

}  // namespace staddle::cli
