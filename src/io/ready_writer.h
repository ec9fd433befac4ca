// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "io/value_writer.h"
#include "staddle/signs/readiness.h"

namespace staddle::json {

// {sign, value, threshold, verdict, about_age_yr}.
Value sign(const SignReading& reading);

}  // namespace staddle::json
