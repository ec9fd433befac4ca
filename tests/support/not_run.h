// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <iostream>
#include <string>

namespace staddle::support {

// For a check that something missing on this machine prevents:
//   if (!program_exists("clp")) return not_run("clp is not installed");
// ctest then counts the test as skipped, and tests/run fails unless told --offline.
inline void not_run(const std::string& reason) {
  std::cout << "\nNOT RUN: " << reason << std::endl;
}

}  // namespace staddle::support
