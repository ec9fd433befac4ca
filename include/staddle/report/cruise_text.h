// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/report/report.h"
#include "staddle/scenario/cruise_question.h"

namespace staddle {

// What the plots say, for a forester: the stand in three sentences, how far it may be from
// the truth, the stand table, the signs, what is missing and what was assumed.
// REQUIRES: the appraisal of this question.
Report cruise_report(const CruiseQuestion& question, const Appraisal& appraisal);

// to_text(cruise_report(...)).
std::string cruise_text(const CruiseQuestion& question, const Appraisal& appraisal);

}  // namespace staddle
