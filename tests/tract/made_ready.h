// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <utility>
#include <vector>

#include "staddle/base/random.h"
#include "staddle/tract/tract_problem.h"
#include "tract/exact_pricer.h"
#include "tract/limits.h"
#include "tract/stand_model.h"
#include "tract/tract_column.h"

namespace staddle::support {

// A tract's parts as solve() makes them.
struct MadeReady {
  explicit MadeReady(const TractProblem& problem)
      : models(make_stand_models(problem, {}).value()),
        limits(limits_of(problem, unlimited(models))),
        pricer(models, limits) {}

  static double unlimited(const std::vector<StandModel>& models) {
    double sum = 0.0;
    for (const StandModel& model : models) sum += model.acres * model.own_value;
    return sum;
  }

  // Every regime of every lattice.
  std::vector<TractColumn> all_columns() const {
    std::vector<TractColumn> columns;
    for (std::size_t s = 0; s < models.size(); ++s) {
      for (const Regime& regime : pricer.all_regimes(s)) {
        columns.push_back(column_of(models, s, limits, regime));
      }
    }
    return columns;
  }

  std::vector<StandModel> models;
  Limits limits;
  ExactPricer pricer;
};

}  // namespace staddle::support
