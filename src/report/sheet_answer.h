// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "report/workbook.h"
#include "staddle/report/owner_report.h"

namespace staddle::sheets {

// The first sheet: the answer in plain lines, what it assumes, cautions and sources.
void write_answer(Sheet& sheet, const OwnerReport& report);

}  // namespace staddle::sheets
