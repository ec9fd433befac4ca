// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/progress_bar.h"

#include <fmt/format.h>

#include <algorithm>

#include "cli/terminal.h"

namespace staddle::cli {
namespace {

constexpr int bar_letters = 40;

}  // namespace

ProgressBar::ProgressBar(const std::string& what) : what_(what), on_terminal_(has_terminal()) {}

ProgressBar::~ProgressBar() {
  if (shown_percent_ >= 0) draw_on_terminal("\r\x1b[K");
}

Progress ProgressBar::progress() {
  if (!on_terminal_) return {};
  return [this](double fraction_done) { draw(fraction_done); };
}

void ProgressBar::draw(double fraction_done) {
  const int percent = static_cast<int>(100.0 * std::clamp(fraction_done, 0.0, 1.0));
  if (percent == shown_percent_) return;
  shown_percent_ = percent;
  const int full = percent * bar_letters / 100;
  draw_on_terminal(
      fmt::format("\r{} [{}{}] {:3} %", what_, std::string(static_cast<std::size_t>(full), '#'),
                  std::string(static_cast<std::size_t>(bar_letters - full), '.'), percent));
}

}  // namespace staddle::cli
