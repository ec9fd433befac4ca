// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/base/result.h"
#include "staddle/report/operations.h"

namespace staddle {

// A calendar file (iCalendar, RFC 5545): one all-day event for each operation, from its first
// day through its last. An event keeps its identity while title and plan do, so that a
// calendar read again is brought up to date and not doubled; the same input gives the same
// bytes.
//
// REQUIRES: the operations of one title in the order of their days; `made_in`: the year from
// whose first day the file is dated.
std::string to_calendar(const std::string& title, CalendarYear made_in,
                        const std::vector<Operation>& work);

// Nothing where a calendar can be made; else the fault that the file does not say which year
// the present is, at "/calendar_year". It can be asked before anything is solved.
Faults faults_of_calendar(std::optional<CalendarYear> present_year);

// The operations of the best plan, or of a tract, as a calendar. Faults as above.
Result<std::string> stand_calendar(const Scenario& scenario, const Advice& advice);
Result<std::string> tract_calendar(const TractFile& tract, const TractSolution& solution);

}  // namespace staddle
