// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/futures/futures_solution.h"

namespace staddle::support {

// Every figure of the futures, to the last bit: two that print alike are alike.
std::string describe(const FuturesSolution& solution);

}  // namespace staddle::support
