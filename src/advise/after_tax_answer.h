// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "advise/scene.h"

namespace staddle {

// The money of an answer after tax, and the plan that is best after it. `advice` is that
// of the scene. REQUIRES: problem.tax.
AdviceAfterTax answer_after_tax(const AdviseProblem& problem, const Scene& scene,
                                const Advice& advice, const StandOptions& options);

}  // namespace staddle
