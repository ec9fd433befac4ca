// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <string>

#include "io/value_writer.h"

namespace staddle::json {

// Names the files of a scenario anew, for a scenario that is written elsewhere: yield
// tables, prices, plots.
void relocate_files(Value& value, const std::function<std::string(const std::string&)>& relocate);

}  // namespace staddle::json
