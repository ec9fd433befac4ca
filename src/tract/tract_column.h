// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "lp/linear_program.h"
#include "regime/same_regime.h"
#include "tract/limits.h"
#include "tract/stand_model.h"

namespace staddle {

// One regime of one stand as a column of the master program, per acre, from the
// evaluator's report.
struct TractColumn {
  std::size_t stand = 0;  // place among the models
  Regime regime;
  double value = 0.0;  // present value
  double ending_value = 0.0;
  std::vector<lp::Term> uses;  // of limits that count the stand, by row; not next to nothing
};

TractColumn column_of(const std::vector<StandModel>& models, std::size_t stand,
                      const Limits& limits, const Regime& regime);

// What an acre of the column earns at worths of the limits' uses, present value included.
double worth_of(const TractColumn& column, const std::vector<double>& worths);

}  // namespace staddle
