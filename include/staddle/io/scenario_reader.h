// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <string>

#include "staddle/base/result.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// Gives the text of a file named inside a scenario, relative to the scenario; the
// library itself never opens one.
using FileLoader = std::function<Result<std::string>(const std::string& name)>;

// Reads a scenario (format staddle-scenario/1, // comments allowed). All faults of the
// file and of the tables it names come back together, each with its JSON pointer or
// CSV line, what was found, what is allowed, and the nearest known name.
Result<Scenario> read_scenario(const std::string& text, const std::string& file,
                               const FileLoader& load);

}  // namespace staddle
