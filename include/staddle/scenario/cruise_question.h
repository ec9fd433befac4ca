// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/cruise/appraisal.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// What is known of a cruise besides its plots.
struct CruiseTerms {
  std::optional<Age> at;
  std::optional<EquationSet> model;   // outranks that of the economics
  std::optional<Scenario> economics;  // model, planted trees, products, prices, limits
  std::optional<Area> area;           // as stated
  double error = 0.10;
  double confidence = 0.90;
};

// A cruise ready to be appraised, and what its result shows besides the appraisal.
struct CruiseQuestion {
  std::string plots_file;
  CruiseTerms terms;
  AppraisalProblem problem;
  // As stated, else the sum of the strata where the acres of all are known, else that of
  // the economics.
  std::optional<Area> area;
  std::string model;                // id; "yield_table"; empty where none is known
  std::vector<Assumption> assumed;  // what was not stated and used all the same
};

CruiseQuestion make_cruise_question(std::string plots_file, Tally tally, CruiseTerms terms);

// All that the appraisal assumes: what was not stated, then what the plots left open.
std::vector<Assumption> assumptions_of(const CruiseQuestion& question, const Appraisal& appraisal);

}  // namespace staddle
