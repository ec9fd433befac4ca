// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/round_line.h"

#include <fmt/format.h>

#include <cmath>
#include <string>

#include "cli/terminal.h"

namespace staddle::cli {
namespace {

const char* name_of(TractProgress::Stage stage) {
  switch (stage) {
    case TractProgress::Stage::stands:
      return "every stand alone";
    case TractProgress::Stage::schedule:
      return "schedule";
    case TractProgress::Stage::relaxation:
      return "what limits must give way";
    case TractProgress::Stage::whole_stands:
      break;
  }
  return "whole stands";
}

std::string dollars_of(double value) {
  return std::isfinite(value) ? fmt::format("${:.0f}", value) : std::string("not known yet");
}

}  // namespace

RoundLine::RoundLine() : on_terminal_(has_terminal()) {}

RoundLine::~RoundLine() {
  if (drawn_) draw_on_terminal("\r\x1b[K");
}

std::function<void(const TractProgress&)> RoundLine::progress() {
  if (!on_terminal_) return {};
  return [this](const TractProgress& progress) { draw(progress); };
}

void RoundLine::draw(const TractProgress& progress) {
  draw_on_terminal(fmt::format("\r\x1b[K{}, round {}: plan {}, bound {}, {} regimes",
                               name_of(progress.stage), progress.round, dollars_of(progress.value),
                               dollars_of(progress.bound), progress.columns));
  drawn_ = true;
}

}  // namespace staddle::cli
