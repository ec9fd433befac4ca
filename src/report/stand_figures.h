// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "report/answer.h"
#include "staddle/report/figure.h"
#include "staddle/report/stand_answers.h"

// The figures of one stand. Each draws what its table says; none works out a value.
namespace staddle {

// A stand's answers with what its sentences ask of them.
struct StandTelling {
  const StandAnswers& answers;
  const Answer& answer;

  const Dates& dates() const { return answer.dates; }
  // Ages on an axis: calendar years where the present one is known.
  double place_of(Age at) const;
  Axis time_axis(const std::string& what) const;
  // "worth, $/acre": what it is the worth of.
  std::string worth() const;
};

// `table`: the options side by side.
Figure options_figure(const StandTelling& telling, Table table);
// `table`: the cash flow of the plan.
Figure cash_flow_figure(const StandTelling& telling, Table table);

Figure basal_area_figure(const StandTelling& telling);
Figure tons_figure(const StandTelling& telling);

// REQUIRES: answers.by_final_age; a map; advice.storm with thinnings; and so on: each what
// it draws.
Figure final_age_figure(const StandTelling& telling);
Figure first_thinning_figure(const StandTelling& telling);
Figure hold_figure(const StandTelling& telling);
Figure storm_figure(const StandTelling& telling, Table table);
Figure tax_figure(const StandTelling& telling, Table table);
Figure plots_figure(const StandTelling& telling, Table table);

Figure plant_figure(const StandTelling& telling, Table table);
Figure price_sets_figure(const StandTelling& telling);
Figure one_at_a_time_figure(const StandTelling& telling, Table table);

}  // namespace staddle
