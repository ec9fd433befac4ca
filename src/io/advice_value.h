// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "io/value_writer.h"
#include "staddle/advise/advice.h"

namespace staddle::json {

// An answer in the form of staddle-advice/1. REQUIRES: the advice of this scenario.
Value advice(const Scenario& scenario, const Advice& advice);

}  // namespace staddle::json
