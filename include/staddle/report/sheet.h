// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "staddle/report/owner_report.h"
#include "staddle/report/stand_answers.h"

// The spreadsheet that a consultant takes home. Its sheets: the answer in plain lines; the
// prices, costs and the rate, which may be changed there; the options side by side; the cash
// flow of each option, year by year, in formulas that follow those changes.
//
// What moves and what stays: the cuts of an option, its tons, the shares of the acres that
// storms are expected to take and what the land is worth after a standing stand's harvest
// are numbers; revenue, costs, discounting, values and returns are formulas. So the value
// of a fixed plan follows the prices and the rate; which plan is best is not asked again.
//
// Every formula is written with its value; the same answer gives the same bytes.
namespace staddle {

// Writes an Office Open XML workbook at `path` (the only writer that takes one), all or
// nothing as far as the file system allows. Returns what went wrong with the file; nothing
// when all went well.
// REQUIRES: `report` tells these answers; at least one option.
std::optional<std::string> write_workbook(const std::string& path, const StandAnswers& answers,
                                          const OwnerReport& report);

// The same of a tract: the answer; the years of the plan, whose money is discounted at a rate
// that may be changed there; its periods, stands and jobs; what its limits cost.
// REQUIRES: `report` tells this solution of this tract.
std::optional<std::string> write_workbook(const std::string& path, const TractFile& tract,
                                          const TractSolution& solution, const OwnerReport& report);

}  // namespace staddle
