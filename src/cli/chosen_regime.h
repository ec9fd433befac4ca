// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "cli/outcome.h"
#include "cli/scenario_question.h"
#include "staddle/regime/simulate.h"

namespace staddle::cli {

// The regime that was asked for by its name, or the outcome that says why there is none.
struct ChosenRegime {
  std::optional<RegimeReport> regime;
  std::optional<RegimeReport> after_tax;  // where the scenario asks for tax
  Outcome refused;
};

// "best": the best of the scenario; "none": nothing is cut up to the upper final age, or
// the end of the table; else the stated regime, or the yield table of a fixed regime with
// its best final age, that bears the name.
ChosenRegime choose_regime(const ScenarioQuestion& question, const std::string& name);

}  // namespace staddle::cli
