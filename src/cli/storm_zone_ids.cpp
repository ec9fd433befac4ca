// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/storm_zone_ids.h"

#include "staddle/io/model_library.h"

namespace staddle::cli {

std::vector<std::string> storm_zone_ids() {
  std::vector<std::string> ids;
  for (const StormZone& zone : built_in_storm_zones()) {
    if (!zone.perils.empty()) ids.push_back(zone.id);
  }
  return ids;
}

}  // namespace staddle::cli
