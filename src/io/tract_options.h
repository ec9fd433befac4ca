// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <span>
#include <string_view>

#include "staddle/io/option.h"

namespace staddle {

// Blocks that every stand takes from the tract; others of a scenario are not in the format.
inline constexpr std::array<std::string_view, 4> shared_blocks = {"/products", "/economics",
                                                                  "/decisions", "/storm"};

// Those of the block "plan" alone, with its defaults.
std::span<const Option> tract_plan_options();

}  // namespace staddle
