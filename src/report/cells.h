// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "report/dates.h"
#include "staddle/report/report.h"

// Cells of the tables: the rounded words, and the number behind them.
namespace staddle::cells {

Cell words(const std::string& text);
Cell number(double value, int decimals = 0);
Cell whole(int value);
Cell per_acre(MoneyPerAcre amount);       // rounded to $5
Cell cost_per_acre(MoneyPerAcre amount);  // the same; what rounds to nothing: "under 5"
Cell as_given(MoneyPerAcre amount);       // an amount of the file: whole dollars
Cell tract(Money amount);                 // rounded to $500
Cell percent(double share);               // a number of percent
Cell blank();

// The columns "year" (where calendar years are known) and "age", and their cells.
void add_date_columns(const Dates& dates, std::vector<Column>& columns);
void add_date(const Dates& dates, Age at, std::vector<Cell>& row);

}  // namespace staddle::cells
