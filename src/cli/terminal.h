// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace staddle::cli {

// Whether standard error is a terminal, on which progress may be shown.
bool has_terminal();
// Writes to standard error; what cannot be drawn is no loss.
void draw_on_terminal(const std::string& text);

}  // namespace staddle::cli
