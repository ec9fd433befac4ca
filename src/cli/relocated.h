// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace staddle::cli {

// What a file that the input `from` calls `name` is called from the folder of `to`. "-" is
// the working folder's.
std::string relocated(const std::string& name, const std::string& from, const std::string& to);

}  // namespace staddle::cli
