// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <functional>
#include <map>
#include <optional>
#include <vector>

#include "vary/answers.h"

namespace staddle {

// So many steps make one unit of a parameter: a turning point is narrowed to one step.
double steps_per_unit(const Parameter& parameter);

// One figure made to run over its whole range while all else stays as it is. Steps are
// whole multiples of 1/steps_per_unit; the start, today's value, need not be one.
class ParameterLine {
 public:
  using Setter = std::function<void(double value, Circumstances& circumstances)>;
  // What may turn: a class of answers, as a number.
  using Class = std::function<int(const VaryAnswer&)>;

  ParameterLine(Answers& answers, Setter set, double start, double low, double high,
                double steps_per_unit);

  struct Turn {
    double inside, outside;  // neighbouring; the class is not the same at the two
    VaryAnswer at_inside, at_outside;
    bool nearer_inside = false;  // which of the two is told as the turn
  };
  enum class Way { down, up };
  // The turn nearest to the start on one side. Steps looked at lie closer together the
  // nearer they are to the start (1, 2, 3, ... then a quarter farther each); between the
  // first two whose classes differ the turn is narrowed by halving.
  std::optional<Turn> nearest(Way way, const Class& class_of);
  // The nearer of the two sides; at equal distance the lower.
  std::optional<Turn> nearest(const Class& class_of);

  double start() const { return start_; }
  std::array<double, 2> range() const { return {low_, high_}; }

 private:
  double value_of(long step) const { return static_cast<double>(step) / steps_per_unit_; }
  std::vector<long> steps(Way way) const;
  const VaryAnswer& at(long step);
  void answer(const std::vector<long>& steps);
  Turn narrowed(std::optional<long> inside, long outside, const Class& class_of, int today);

  Answers& answers_;
  Setter set_;
  double start_, low_, high_, steps_per_unit_;
  VaryAnswer at_start_;
  std::map<long, VaryAnswer> known_;
};

}  // namespace staddle
