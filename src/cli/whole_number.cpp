// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/whole_number.h"

#include <fmt/format.h>

#include <charconv>

namespace staddle::cli {

Result<std::uint64_t> whole_number(const std::string& option, const std::string& typed,
                                   std::uint64_t low, std::uint64_t high) {
  std::uint64_t number = 0;
  const char* const end = typed.data() + typed.size();
  const auto [rest, error] = std::from_chars(typed.data(), end, number);
  if (error == std::errc() && rest == end && number >= low && number <= high) return number;
  return Faults{{FaultCode::out_of_range, "", "",
                 fmt::format("option {}: found \"{}\", allowed is a whole number from {} to {}",
                             option, typed, low, high),
                 ""}};
}

}  // namespace staddle::cli
