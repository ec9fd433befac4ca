// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

namespace staddle::cli {

// Writes the text, all of it or nothing: to a file beside the target that takes its name
// only when it is whole and safe on the disk. Onto something that is no regular file (a
// device, a pipe), and to standard output (no path, or "-"), it writes directly.
// Returns what went wrong, naming the target; nothing when all went well.
std::optional<std::string> write_output(const std::string& text,
                                        const std::optional<std::string>& path);

// Writes one line to standard error, whatever it holds: control characters are shown as
// \xNN, so that a message stays one line and does nothing to the terminal.
void write_error_line(const std::string& line);

// Whether both name the same file that exists.
bool same_file(const std::string& a, const std::string& b);

}  // namespace staddle::cli
