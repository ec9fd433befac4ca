// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "advise/scene.h"

namespace staddle {

// The best final age of one table, and what it is worth.
struct TableAnswer {
  std::size_t table = 0;
  PricedRegime best;
  NearBest near_best;  // over the table's own final ages; the thinnings stay where they are
};

// Why there may be no answer.
inline constexpr const char* no_table_may_end =
    "no table has a row within the final-harvest ages that are allowed";

// Every table that has a final age, in the order of the file.
std::vector<TableAnswer> answers_of_tables(const AdviseProblem& problem);

// The best of all tables as a solved scene. Ties go to fewer thinnings, then to the
// earlier final harvest, then to the earlier table.
Scene compare_tables(const AdviseProblem& problem);

}  // namespace staddle
