// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/number_text.h"
#include "io/ranges.h"
#include "io/scenario_blocks.h"

namespace staddle {
namespace {

using kinds::number;
using kinds::object;
using ranges::ages;
constexpr NumberRange heights = above_to(0, 200);
constexpr NumberRange diameters = above_to(0, 60);
constexpr NumberRange basal_areas = above_to(0, 400);
constexpr NumberRange crowns = between(0, 1);
constexpr NumberRange ratios = above_to(0, 5);

// The defaults are those of default_ready_limits (common practice).
constexpr Option ready_rows[] = {
    {.pointer = "/ready",
     .meaning = "limits of the signs that a thinning is due",
     .allowed = object,
     .implied = true},
    {.pointer = "/ready/age_yr", .meaning = "age", .allowed = object, .implied = true},
    {.pointer = "/ready/age_yr/due",
     .meaning = "due from",
     .unit = "years",
     .allowed = number,
     .range = ages,
     .default_json = "12"},
    {.pointer = "/ready/age_yr/late",
     .meaning = "late from",
     .unit = "years",
     .allowed = number,
     .range = ages,
     .default_json = "18"},
    {.pointer = "/ready/dominant_height_ft",
     .meaning = "dominant height",
     .allowed = object,
     .implied = true},
    {.pointer = "/ready/dominant_height_ft/due",
     .meaning = "due from",
     .unit = "ft",
     .allowed = number,
     .range = heights,
     .default_json = "40"},
    {.pointer = "/ready/dominant_height_ft/late",
     .meaning = "late from",
     .unit = "ft",
     .allowed = number,
     .range = heights,
     .default_json = "60"},
    {.pointer = "/ready/qmd_in",
     .meaning = "quadratic mean diameter",
     .allowed = object,
     .implied = true},
    {.pointer = "/ready/qmd_in/due",
     .meaning = "due from",
     .unit = "in",
     .allowed = number,
     .range = diameters,
     .default_json = "6"},
    {.pointer = "/ready/qmd_in/late",
     .meaning = "late from",
     .unit = "in",
     .allowed = number,
     .range = diameters},
    {.pointer = "/ready/basal_area_ft2_ac",
     .meaning = "basal area",
     .allowed = object,
     .implied = true},
    {.pointer = "/ready/basal_area_ft2_ac/due",
     .meaning = "due from",
     .unit = "ft2/ac",
     .allowed = number,
     .range = basal_areas,
     .default_json = "120"},
    {.pointer = "/ready/basal_area_ft2_ac/late",
     .meaning = "late from",
     .unit = "ft2/ac",
     .allowed = number,
     .range = basal_areas,
     .default_json = "160"},
    {.pointer = "/ready/live_crown_ratio",
     .meaning = "live crown ratio",
     .allowed = object,
     .implied = true},
    {.pointer = "/ready/live_crown_ratio/due",
     .meaning = "due at and below",
     .allowed = number,
     .range = crowns,
     .default_json = "0.4"},
    {.pointer = "/ready/live_crown_ratio/late",
     .meaning = "late below",
     .allowed = number,
     .range = crowns,
     .default_json = "0.3"},
    {.pointer = "/ready/density_index_share",
     .meaning = "density index as a share of 450",
     .allowed = object,
     .implied = true},
    {.pointer = "/ready/density_index_share/due",
     .meaning = "due from",
     .allowed = number,
     .range = ratios,
     .default_json = "0.45"},
    {.pointer = "/ready/density_index_share/late",
     .meaning = "late from",
     .allowed = number,
     .range = ratios,
     .default_json = "0.65"},
    {.pointer = "/ready/relative_spacing",
     .meaning = "mean spacing over dominant height",
     .allowed = object,
     .implied = true},
    {.pointer = "/ready/relative_spacing/due",
     .meaning = "due at and below",
     .allowed = number,
     .range = ratios,
     .default_json = "0.2"},
    {.pointer = "/ready/relative_spacing/late",
     .meaning = "late at and below",
     .allowed = number,
     .range = ratios,
     .default_json = "0.15"},
    {.pointer = "/ready/crown_cover_fraction",
     .meaning = "crown areas over ground",
     .allowed = object,
     .implied = true},
    {.pointer = "/ready/crown_cover_fraction/due",
     .meaning = "due from",
     .allowed = number,
     .range = ratios,
     .default_json = "1"},
    {.pointer = "/ready/crown_cover_fraction/late",
     .meaning = "late from",
     .allowed = number,
     .range = ratios},
};

void read_ready(ScenarioReading& reading, Scenario& scenario) {
  scenario.ready_limits = default_ready_limits();
  for (SignLimit& limit : scenario.ready_limits) {
    const Place sign = reading.root["ready"][limit.sign];
    const auto due = sign["due"].number();
    const auto late = sign["late"].number();
    if (due) limit.due = *due;
    limit.late = late;
    if (!due || !late || (limit.falling ? *late <= *due : *late >= *due)) continue;
    const Place& later = sign["late"].given() ? sign["late"] : sign["due"];
    reading.fault(later, FaultCode::contradiction,
                  "late, " + number_text(*late) + ", comes before due, " + number_text(*due) +
                      (limit.falling ? "; this sign falls as a stand ripens"
                                     : "; this sign rises as a stand ripens"));
  }
}

}  // namespace

ScenarioBlock ready_block() { return {ready_rows, {}, read_ready}; }

}  // namespace staddle
