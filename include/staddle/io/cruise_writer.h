// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <string>

#include "staddle/base/result.h"
#include "staddle/scenario/cruise_question.h"

namespace staddle {

// The appraisal as JSON, format staddle-cruise/1, and its stand table as CSV (RFC 4180,
// one heading per key, an absent value is an empty cell).
std::string cruise_json(const CruiseQuestion& question, const Appraisal& appraisal);
std::string cruise_csv(const Appraisal& appraisal);

// The scenario of the stand that was cruised: the blocks of the economics, with the acres
// and the stand of the cruise. `economics`: the text of that scenario file, which was
// read before. `relocate`: what a file named in it is called from the new scenario.
// Stated regimes that cut before the present age are left out, as the first lines say.
// Faults: what the cruise leaves unknown (height, and no site index beside it).
// REQUIRES: the question has an age and economics.
Result<std::string> cruise_scenario(const CruiseQuestion& question, const Appraisal& appraisal,
                                    const std::string& economics,
                                    const std::function<std::string(const std::string&)>& relocate);

}  // namespace staddle
