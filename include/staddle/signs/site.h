// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace staddle {

// What is known of the ground. Absent facts make the notes that need them conditional.
struct SiteFacts {
  enum class Soil { sand, loam, clay };
  enum class Drainage { dry, moist, wet };
  std::optional<Soil> soil;
  std::optional<Drainage> drainage;           // sand and dry: a deep sand
  std::vector<std::string> indicator_plants;  // from the closed list in models/site
  // Those of them that speak of the one ground or of the other.
  std::vector<std::string> deep_sand_plants, wet_flatwoods_plants;
  std::optional<int> month_of_cut;  // 1 to 12
  std::string wet_site_statement;   // the owner's, on wet ground

  bool deep_sand() const { return soil == Soil::sand && drainage == Drainage::dry; }
};

}  // namespace staddle
