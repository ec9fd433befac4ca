// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/terminal.h"

#include <unistd.h>

namespace staddle::cli {

bool has_terminal() { return ::isatty(STDERR_FILENO) == 1; }

void draw_on_terminal(const std::string& text) {
  [[maybe_unused]] const ssize_t written = ::write(STDERR_FILENO, text.data(), text.size());
}

}  // namespace staddle::cli
