// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "io/plan_writer.h"

namespace staddle::json {

// The block "storm" of staddle-advice/1; `after_tax`: where that is asked for.
Value storm_answer(const StormAnswer& storm, const RegimeContext& context,
                   const AdviceAfterTax* after_tax);

}  // namespace staddle::json
