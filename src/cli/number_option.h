// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/base/result.h"
#include "staddle/io/option.h"

namespace staddle::cli {

// The value of an option as a number within a range. The fault names the option, what was
// typed and what is allowed.
Result<double> number_option(const std::string& option, const std::string& typed,
                             const NumberRange& range, const std::string& unit);

}  // namespace staddle::cli
