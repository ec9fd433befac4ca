// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace staddle {

// What belongs in every plan, whatever the stand: one sentence each, in the order in
// which they are shown. Common practice, no source.
const std::vector<std::string>& standing_cautions();

}  // namespace staddle
