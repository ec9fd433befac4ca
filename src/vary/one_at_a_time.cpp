// SPDX-License-Identifier: GPL-3.0-or-later
#include "vary/one_at_a_time.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "vary/turning_point.h"

namespace staddle {
namespace {

Circumstances with(const VaryProblem& problem, const Parameter& parameter, double value) {
  Circumstances circumstances = todays(problem);
  set_parameter(problem, parameter, value, circumstances);
  return circumstances;
}

// A value between today's and an end at which the best regime turns into another, by
// halving over whole steps; absent where today's value is not one value.
std::optional<double> change_towards(Answers& answers, const VaryAnswer& base,
                                     const Parameter& parameter, double end) {
  const std::optional<double> today = todays_value(answers.problem(), parameter);
  if (!today || !base.best) return std::nullopt;
  const double steps = steps_per_unit(parameter);
  const auto differs = [&](double value) {
    const VaryAnswer answer = answers.of(with(answers.problem(), parameter, value));
    return !answer.best || !same_regime(answer.best->regime, base.best->regime);
  };
  // Whole steps strictly between the two; the end itself is known to differ.
  const bool rising = end > *today;
  const double low = std::min(end, *today), high = std::max(end, *today);
  const long first = std::lround(std::floor(low * steps)) + 1;
  const long last = std::lround(std::ceil(high * steps)) - 1;
  if (first > last) return end;
  if (rising ? !differs(static_cast<double>(last) / steps)
             : !differs(static_cast<double>(first) / steps)) {
    return end;
  }
  long outside = rising ? last : first;
  long inside = rising ? first - 1 : last + 1;  // at today's value or within a step of it
  while (std::labs(outside - inside) > 1) {
    const long middle = inside + (outside - inside) / 2;
    (differs(static_cast<double>(middle) / steps) ? outside : inside) = middle;
  }
  return static_cast<double>(outside) / steps;
}

std::optional<MoneyPerAcre> between(const std::optional<MoneyPerAcre>& a,
                                    const std::optional<MoneyPerAcre>& b) {
  if (!a || !b) return std::nullopt;
  return std::max(*a, *b) - std::min(*a, *b);
}

}  // namespace

std::optional<MoneyPerAcre> OneAtATime::swing() const {
  return between(reoptimised[0].value(), reoptimised[1].value());
}

std::optional<MoneyPerAcre> OneAtATime::swing_after_tax() const {
  return between(reoptimised[0].value_after_tax(), reoptimised[1].value_after_tax());
}

std::vector<OneAtATime> one_at_a_time(Answers& answers, const VaryAnswer& base) {
  const VaryProblem& problem = answers.problem();
  std::vector<Circumstances> asked;
  for (const ParameterSpan& span : problem.question.one_at_a_time) {
    asked.push_back(with(problem, span.parameter, span.low));
    asked.push_back(with(problem, span.parameter, span.high));
  }
  std::vector<VaryAnswer> ends = answers.of(asked);
  std::vector<OneAtATime> rows;
  for (const ParameterSpan& span : problem.question.one_at_a_time) {
    OneAtATime row;
    row.span = span;
    for (std::size_t end = 0; end < 2; ++end) {
      const std::size_t place = 2 * rows.size() + end;
      VaryAnswer& answer = row.reoptimised[end] = std::move(ends[place]);
      if (!base.best || !answer.best) continue;
      row.plan_held[end] = held_value(problem, asked[place], answer, base.best->regime);
      if (problem.tax) {
        row.plan_held_after_tax[end] =
            held_value_after_tax(problem, asked[place], answer, base.best->regime);
      }
      row.plan_changes[end] = !same_regime(answer.best->regime, base.best->regime);
      if (!row.plan_changes[end]) continue;
      row.changes_at[end] =
          change_towards(answers, base, span.parameter, end == 0 ? span.low : span.high);
    }
    rows.push_back(std::move(row));
  }
  std::stable_sort(rows.begin(), rows.end(), [](const OneAtATime& a, const OneAtATime& b) {
    return a.swing().value_or(MoneyPerAcre()) > b.swing().value_or(MoneyPerAcre());
  });
  return rows;
}

GridAnswer grid_answer(Answers& answers, const GridQuestion& question) {
  std::vector<Circumstances> asked;
  for (const double y : question.y.values) {
    for (const double x : question.x.values) {
      asked.push_back(with(answers.problem(), question.x.parameter, x));
      set_parameter(answers.problem(), question.y.parameter, y, asked.back());
    }
  }
  std::vector<VaryAnswer> found = answers.of(asked);
  GridAnswer grid{question, {}};
  const auto width = static_cast<std::ptrdiff_t>(question.x.values.size());
  for (std::size_t row = 0; row < question.y.values.size(); ++row) {
    const auto first = found.begin() + static_cast<std::ptrdiff_t>(row) * width;
    grid.cells.emplace_back(std::make_move_iterator(first), std::make_move_iterator(first + width));
  }
  return grid;
}

}  // namespace staddle
