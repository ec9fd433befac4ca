// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/units/units.h"

namespace staddle::support {

inline double usd(MoneyPerAcre money) { return money.in(dollars_per_acre); }

}  // namespace staddle::support
