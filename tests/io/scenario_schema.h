// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>

#include "staddle/io/option.h"

namespace staddle::scenario_tests {

// The options of a format, "scenario" or "tract", as a JSON Schema (draft 7): keys, kinds,
// ranges and choices of single values, with their meaning and default. What values must be
// to each other it cannot say; the reader does.
std::string schema_of(const std::string& what, std::span<const Option> options);

}  // namespace staddle::scenario_tests
