// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "regime/case_kernel.h"
#include "staddle/regime/simulate.h"

namespace staddle {

// evaluate() of regime/simulate.h for a case whose tables are already made.
RegimeValue evaluate(const CaseKernel& kernel, const Regime& regime);

}  // namespace staddle
