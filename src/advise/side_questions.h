// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "advise/scene.h"

// The questions that an answer asks beside the best regime. Each takes the problem as it
// was asked and the scene in which it was solved.
namespace staddle {

std::vector<GuardCost> guard_costs(const AdviseProblem& problem, const Scene& scene,
                                   const StandOptions& options);
std::vector<Survival> survivals(const AdviseProblem& problem, const Scene& scene,
                                const StandOptions& options);
std::optional<WaitFiveYears> wait_five_years(const Scene& scene, const StandOptions& options);
SellToday sell_today(const Scene& scene);
// What the first cut of a plan brings, net.
MoneyPerAcre revenue_now(const RegimeReport& plan);

// REQUIRES: a standing stand. `plan` thins or sells this year; `waits` says that it is not
// the best plan, which cuts nothing this year.
std::optional<SaleNow> sale_now(const Scene& scene, const PricedRegime& plan, bool waits,
                                const StandOptions& options);

// Absent where no cut of the best plan exceeds a third.
std::optional<ThirdInstead> third_instead(const AdviseProblem& problem, const Scene& scene,
                                          const RegimeReport& best, const StandOptions& options);

// Present worth of the loss that the openings of a plan's thinnings are expected to add.
MoneyPerAcre storm_loss_of_thinnings(const StandCase& stand, const RegimeReport& plan);

// What storms do to the advice. REQUIRES: a hazard.
StormAnswer storm_answer(const AdviseProblem& problem, const Scene& scene,
                         const RegimeReport& best, const StandOptions& options);

}  // namespace staddle
