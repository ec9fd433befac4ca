// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>

#include "staddle/base/result.h"

namespace staddle::cli {

// What --threads may ask for.
inline constexpr std::uint64_t most_threads = 1024;

// The value of an option as a whole number, digits only, from `low` to `high`. The fault
// names the option, what was typed and what is allowed.
Result<std::uint64_t> whole_number(const std::string& option, const std::string& typed,
                                   std::uint64_t low, std::uint64_t high);

}  // namespace staddle::cli
