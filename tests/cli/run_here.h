// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "support/program.h"

namespace staddle::support {

// Runs the built staddle with this folder as its working directory.
Run run_staddle_in(const std::string& folder, const std::vector<std::string>& arguments);

// Runs a line of shell in which $STADDLE is the built program and $1, $2, ... are the
// arguments.
Run run_shell(const std::string& line, const std::vector<std::string>& arguments = {},
              const std::string& input = "");

// The names of the files in a folder, hidden ones too, sorted.
std::vector<std::string> names_in(const std::string& folder);

// A bare-land scenario and a standing one, small enough to be solved at once; `more` are
// further keys at the top ("\"storm\": {...},"), or nothing.
std::string bare_land(const std::string& more = "");
std::string standing_stand(const std::string& more = "");

}  // namespace staddle::support
