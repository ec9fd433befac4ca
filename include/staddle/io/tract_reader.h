// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/base/result.h"
#include "staddle/io/scenario_reader.h"
#include "staddle/scenario/tract_file.h"

namespace staddle {

// Reads a tract (format staddle-tract/1, // comments allowed) and the files it names, a
// table of stands among them. A stand's own economics, decisions and storm replace the
// shared keys that they name, one by one and at any depth; a zone and own perils replace
// each other. All faults come back together, each at the place in the file, or the line
// and column of the table, from which it comes.
Result<TractFile> read_tract(const std::string& text, const std::string& file,
                             const FileLoader& load);

// Whether a text says of itself that it is a tract, sound or not.
bool says_it_is_a_tract(const std::string& text);

}  // namespace staddle
