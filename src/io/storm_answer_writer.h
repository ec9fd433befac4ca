// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "io/plan_writer.h"

namespace staddle::json {

// The block "storm" of staddle-advice/1.
Value storm_answer(const StormAnswer& storm, const RegimeContext& context);

}  // namespace staddle::json
