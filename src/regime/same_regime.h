// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/regime/regime.h"

namespace staddle {

// The same cuts in the same years, to the bit.
bool same_regime(const Regime& a, const Regime& b);

}  // namespace staddle
