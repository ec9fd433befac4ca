// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/base/result.h"
#include "staddle/io/scenario_reader.h"
#include "staddle/io/tract_reader.h"

namespace staddle::cli {

// No input that a forester writes comes near this.
inline constexpr std::size_t largest_input_bytes = 64u << 20;

// The whole file, byte for byte; "-" is standard input. Faults (code unreadable): not
// there, not to be read, a directory, larger than largest_input_bytes.
Result<std::string> read_input(const std::string& path);

// Reads the files that a scenario names, relative to the folder the scenario is in
// (standard input: to the present folder).
FileLoader loader_beside(const std::string& scenario_path);

// Reads a scenario and the tables beside it.
Result<Scenario> load_scenario(const std::string& path);

// Reads a tract and the tables beside it.
Result<TractFile> load_tract(const std::string& path);

// How messages name an input: its path as it was typed.
std::string shown_name(const std::string& path);

}  // namespace staddle::cli
