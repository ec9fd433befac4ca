// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/cruise/appraisal.h"
#include "staddle/finance/tax.h"

namespace staddle {

// What a sale today of timber worth `gross` would leave after tax on what exceeds its part
// of the basis, in proportion to its worth among all that stands.
MoneyPerAcre after_tax(MoneyPerAcre gross, MoneyPerAcre all, const TaxRules& rules);

// The same for all that stands: its basis is known for certain, so tax narrows the error.
Estimate<MoneyPerAcre> after_tax(const Estimate<MoneyPerAcre>& gross, const TaxRules& rules);

}  // namespace staddle
