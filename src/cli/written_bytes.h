// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "staddle/base/result.h"

namespace staddle::cli {

// The bytes that a writer which needs a path writes there, taken from a temporary file that
// is gone afterwards. So they reach their target as every other output does, whole or not at
// all. The writer returns what went wrong, or nothing.
Result<std::string> written_bytes(
    const std::function<std::optional<std::string>(const std::string& path)>& writer);

}  // namespace staddle::cli
