// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "advise/scene.h"

namespace staddle {

// The plan that is worth most after tax, with what comes near it, and a bound on what any
// other could add (advice.h).
struct BestAfterTax {
  Plan plan;
  NearBest near_best;
  Certificate certificate;
};

// `tax`: of the scene's own case. REQUIRES: a solved scene with tax.
BestAfterTax best_after_tax(const AdviseProblem& problem, const Scene& scene, const AfterTax& tax,
                            const StandOptions& options);

}  // namespace staddle
