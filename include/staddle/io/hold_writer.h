// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/hold/ledger.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// The ledger as JSON, format staddle-hold/1, and as CSV (RFC 4180, one heading per key, an
// absent value is an empty cell): first the years without thinning, then, with the
// thinning's age in the first column, those after the best thinning.
// With the same answer after tax, every object of the JSON that holds money gains
// "after_tax". REQUIRES: the answer to this scenario, a standing stand.
std::string hold_json(const Scenario& scenario, const HoldAnswer& answer,
                      const HoldAnswer* after_tax = nullptr);
std::string hold_csv(const Scenario& scenario, const HoldAnswer& answer);

}  // namespace staddle
