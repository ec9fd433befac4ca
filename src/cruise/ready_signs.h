// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/cruise/appraisal.h"

namespace staddle {

// Judges from the measures of the appraisal, which must be filled in, whether the stand
// is ready to be thinned, and writes readings and sentence into it. Where age, growth and
// height are known the signs also say when they come due; what is not known is read as
// absent.
void judge_from_plots(const AppraisalProblem& problem, Appraisal& appraisal);

}  // namespace staddle
