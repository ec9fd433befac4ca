// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/hold/ledger.h"
#include "staddle/report/report.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// Hold or cut, for a landowner: what waiting earns, when the stand matures, the ledger
// year by year, and the same after the best thinning.
// REQUIRES: the answer to this scenario, a standing stand.
// With the same answer after tax its value and forest value stand beside.
Report hold_report(const Scenario& scenario, const HoldAnswer& answer,
                   const HoldAnswer* after_tax = nullptr);

// to_text(hold_report(...)).
std::string hold_text(const Scenario& scenario, const HoldAnswer& answer,
                      const HoldAnswer* after_tax = nullptr);

}  // namespace staddle
