// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

#include "staddle/io/option.h"

namespace staddle {

// Those of the block "plan" alone, with its defaults.
std::span<const Option> tract_plan_options();

}  // namespace staddle
