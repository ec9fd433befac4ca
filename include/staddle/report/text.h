// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/advise/advice.h"
#include "staddle/report/report.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// The widest line of a text, in letters. A table whose numbers alone are wider is wider.
inline constexpr std::size_t text_width = 100;

// A report as plain text: numbered lines, headings underlined, tables aligned, nothing
// wider than text_width, no blanks at the ends of lines.
std::string to_text(const Report& report);

// One table: headings, units, a rule, the rows. Columns of words are wrapped where the
// table would be too wide. REQUIRES: one cell per column in every row.
std::string to_text(const Table& table);

// to_text(advice_report(...)).
std::string text_answer(const Scenario& scenario, const Advice& advice,
                        const std::vector<std::string>& storm_zones = {});

}  // namespace staddle
