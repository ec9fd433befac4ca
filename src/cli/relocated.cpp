// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/relocated.h"

#include <filesystem>

namespace staddle::cli {

namespace fs = std::filesystem;

std::string relocated(const std::string& name, const std::string& from, const std::string& to) {
  if (fs::path(name).is_absolute()) return name;
  const fs::path folder = from == "-" ? fs::path() : fs::path(from).parent_path();
  const fs::path target = fs::path(to).parent_path();
  std::error_code error;
  const fs::path moved =
      fs::relative(fs::absolute(folder / name),
                   target.empty() ? fs::current_path() : fs::absolute(target), error);
  return error || moved.empty() ? name : moved.generic_string();
}

}  // namespace staddle::cli
