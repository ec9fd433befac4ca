// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/units/units.h"

namespace staddle {

// One payment: income positive, cost negative.
struct CashFlow {
  Years time;  // after the date to which values are discounted
  MoneyPerAcre amount;
  std::string what;  // for people; no value depends on it
};

// In any order; several may fall on one date.
using CashFlows = std::vector<CashFlow>;

}  // namespace staddle
