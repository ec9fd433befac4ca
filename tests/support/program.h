// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace staddle::support {

// What a finished program left behind.
struct Run {
  int exit_code = 0;  // 128 + n when signal n ended it
  std::string out;
  std::string err;
};

// Runs the built staddle with these arguments, each passed as it is (no shell), and
// waits. Fails the test where the program cannot be started.
Run run_staddle(const std::vector<std::string>& arguments, const std::string& input = "");

// The same for another program, looked up in PATH unless its name has a slash.
Run run_program(const std::string& program, const std::vector<std::string>& arguments,
                const std::string& input = "");

// Whether PATH has such a program.
bool program_exists(const std::string& program);

}  // namespace staddle::support
