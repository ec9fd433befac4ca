// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace staddle::cli {

// The storm zones that a scenario may choose from, those without perils left out.
std::vector<std::string> storm_zone_ids();

}  // namespace staddle::cli
