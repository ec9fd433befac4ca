// SPDX-License-Identifier: GPL-3.0-or-later
// Entry point of libFuzzer. The input is a scenario; what stands behind a zero byte is
// the yield table that it may name.
#include <cstddef>
#include <cstdint>
#include <string>

#include "fuzz/reading_promise.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string input(data, data + size);
  const std::size_t end = input.find('\0');
  const std::string table = end == std::string::npos ? "" : input.substr(end + 1);
  staddle::fuzz::check_reading(input.substr(0, end), {{"table.csv", table}});
  return 0;
}
