// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/scenario_cruise.h"

#include <array>

#include "io/number_text.h"
#include "staddle/cruise/appraisal.h"
#include "staddle/io/plots_reader.h"

namespace staddle {
namespace {

// What plots tell, so that it cannot stand beside them.
constexpr std::array<const char*, 4> measures_of_plots = {"tpa", "basal_area_ft2_ac",
                                                          "dominant_height_ft", "live_crown_ratio"};
constexpr std::array<const char*, 3> designs = {"basal_area_factor", "plot_acres",
                                                "plot_radius_ft"};

class CruiseReader {
 public:
  CruiseReader(ScenarioReading& reading, const Place& stand)
      : reading_(reading), stand_(stand), cruise_(stand["cruise"]) {}

  std::optional<CruisedStand> read() {
    for (const char* key : measures_of_plots) {
      if (!stand_[key].given()) continue;
      reading_.fault(stand_[key], FaultCode::contradiction,
                     "the plots of \"cruise\" say this; give one or the other");
    }
    const std::optional<PlotDesign> design = read_design();
    std::optional<std::vector<Plot>> plots = load_plots();
    if (!design || !plots) return std::nullopt;
    const Appraisal appraisal = appraise({{*design, std::move(*plots), {}},
                                          {},
                                          {},
                                          default_products(),
                                          {},
                                          0.10,
                                          0.90,
                                          default_ready_limits(),
                                          5,
                                          age(45)});
    const bool trees_allowed = check("tpa", appraisal.trees.mean.in(trees_per_acre));
    const bool basal_area_allowed =
        check("basal_area_ft2_ac", appraisal.basal_area.mean.in(square_feet_per_acre));
    if (!trees_allowed || !basal_area_allowed) return std::nullopt;
    note(appraisal);
    return cruised(appraisal);
  }

 private:
  std::optional<PlotDesign> read_design() {
    if (!cruise_.is(kinds::object)) return std::nullopt;
    int given = 0;
    for (const char* key : designs) given += cruise_[key].given();
    if (given != 1) {
      reading_.fault(cruise_, given == 0 ? FaultCode::missing_key : FaultCode::contradiction,
                     "one of \"basal_area_factor\", \"plot_acres\" and \"plot_radius_ft\" is "
                     "required");
      return std::nullopt;
    }
    if (const auto factor = cruise_["basal_area_factor"].number()) {
      return PlotDesign::point_sample(square_feet_per_acre(*factor));
    }
    if (const auto area = cruise_["plot_acres"].number())
      return PlotDesign::fixed_area(acres(*area));
    if (const auto radius = cruise_["plot_radius_ft"].number()) {
      return PlotDesign::fixed_radius(feet_across(*radius));
    }
    return std::nullopt;
  }

  std::optional<std::vector<Plot>> load_plots() {
    const Place file = cruise_["file"];
    const auto name = file.text();
    if (!name) return std::nullopt;
    const Result<std::string> content = reading_.load(*name);
    if (!content) {
      for (const Fault& fault : content.error()) {
        reading_.fault(file, FaultCode::unreadable,
                       "cannot read " + quoted_text(*name) + ": " + fault.text, fault.hint);
      }
      return std::nullopt;
    }
    Result<std::vector<Plot>> plots = read_plots(*content, *name);
    if (plots) return std::move(plots).value();
    reading_.faults.add_all(file.order(), plots.error());
    return std::nullopt;
  }

  // Whether the plots' mean is one that the key of this measure would allow.
  bool check(const std::string& key, double value) {
    const Option& option = scenario_option("/stand/" + key);
    if (option.range.contains(value)) return true;
    reading_.fault(cruise_["file"], FaultCode::out_of_range,
                   "the plots come to " + key + " " + number_text(value) +
                       "; allowed is a number " + range_text(option));
    return false;
  }

  void note(const Appraisal& appraisal) {
    const std::string why = "the mean of " + std::to_string(appraisal.plots) + " plots of " +
                            cruise_["file"].text_or_empty();
    const auto assume = [&](const char* key, double value) {
      reading_.assumed.push_back({std::string("/stand/") + key, number_text(value), why});
    };
    assume("tpa", appraisal.trees.mean.in(trees_per_acre));
    assume("basal_area_ft2_ac", appraisal.basal_area.mean.in(square_feet_per_acre));
    if (appraisal.dominant_height && !reading_.from_tables) {
      assume("dominant_height_ft", appraisal.dominant_height->in(feet));
    }
    if (appraisal.live_crown_ratio) assume("live_crown_ratio", *appraisal.live_crown_ratio);
    for (const std::string& sentence : appraisal.assumed) {
      reading_.assumed.push_back({"/stand/cruise", "null", sentence});
    }
  }

  CruisedStand cruised(const Appraisal& appraisal) const {
    CruisedStand stand;
    PlotSample& sample = stand.sample;
    sample.file = cruise_["file"].text_or_empty();
    sample.plots = appraisal.plots;
    sample.measured.trees = appraisal.trees.mean;
    sample.measured.basal_area = appraisal.basal_area.mean;
    sample.measured.live_crown_ratio = appraisal.live_crown_ratio;
    if (const auto& interval = appraisal.basal_area.interval_90) {
      sample.low = interval->low;
      sample.high = interval->high;
    }
    sample.crown_cover = appraisal.crown_cover;
    stand.dominant_height = appraisal.dominant_height;
    return stand;
  }

  ScenarioReading& reading_;
  const Place& stand_;
  const Place cruise_;
};

}  // namespace

std::optional<CruisedStand> read_cruised_stand(ScenarioReading& reading, const Place& stand) {
  return CruiseReader(reading, stand).read();
}

}  // namespace staddle
