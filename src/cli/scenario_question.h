// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "cli/command.h"
#include "staddle/advise/advise.h"
#include "staddle/base/result.h"
#include "staddle/scenario/scenario.h"

namespace staddle::cli {

// A scenario file, read, and the question that it asks.
struct ScenarioQuestion {
  Scenario scenario;
  AdviseProblem problem;
};
Result<ScenarioQuestion> load_question(const std::string& path);

// The faults of the stated regimes that cannot be carried out, each with its pointer; none
// for tables of fixed regimes.
Faults stated_regime_faults(const Scenario& scenario);

// That no age is left for a final harvest, of the stand or of the one after it.
Faults no_plan_faults(const Scenario& scenario);

// A command line that would write its answer over its own question.
std::optional<Outcome> overwriting(const std::string& input, const OutputOptions& output);

}  // namespace staddle::cli
