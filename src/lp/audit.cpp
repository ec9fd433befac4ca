// SPDX-License-Identifier: GPL-3.0-or-later
#include "lp/audit.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle::lp {
namespace {

// A sum, and the largest magnitude among its terms.
struct Sum {
  double total = 0.0;
  double largest = 0.0;

  void add(double term) {
    total += term;
    largest = std::max(largest, std::fabs(term));
  }
};

double allowed(double magnitude) {
  return tolerance::lp_absolute + tolerance::lp_relative * magnitude;
}

// NaN counts as the worst there is.
void note(double& worst, double violation, double magnitude) {
  const double ratio = violation / allowed(magnitude);
  worst = std::isnan(ratio) ? infinity : std::max(worst, ratio);
}

double outside(double x, double lower, double upper) {
  if (std::isnan(x)) return x;
  return std::max({lower - x, x - upper, 0.0});
}

double finite_magnitude(double bound) { return std::isfinite(bound) ? std::fabs(bound) : 0.0; }

struct Interval {
  double lower;
  double upper;
};

// A dual quantity against the primal one it belongs to: a row's y against its activity,
// or a column's d against x.
struct Pair {
  double dual;
  double dual_magnitude;
  double primal;
  double primal_magnitude;
  Interval bounds;
};

class Auditor {
 public:
  Auditor(const LinearProgram& program, const Solution& solution)
      : program_(program),
        solution_(solution),
        sign_(program.direction == Direction::minimise ? 1.0 : -1.0),
        whole_(program.has_whole_columns()),
        activity_(program.rows.size()),
        reduced_(program.columns.size()) {}

  Audit run() {
    sum_up();
    check_primal();
    if (!whole_) check_dual();
    check_bound();
    return audit_;
  }

 private:
  void sum_up() {
    value_.add(program_.constant);
    for (std::size_t j = 0; j < program_.columns.size(); ++j) {
      value_.add(program_.columns[j].cost * solution_.columns[j]);
      reduced_[j].add(program_.columns[j].cost);
    }
    for (const Entry& entry : program_.entries) {
      activity_[entry.row].add(entry.value * solution_.columns[entry.column]);
      if (!whole_) reduced_[entry.column].add(-entry.value * solution_.duals[entry.row]);
    }
  }

  void check_primal() {
    for (std::size_t i = 0; i < program_.rows.size(); ++i) {
      const Row& row = program_.rows[i];
      const double magnitude = std::max(
          {activity_[i].largest, finite_magnitude(row.lower), finite_magnitude(row.upper)});
      note(audit_.rows, outside(activity_[i].total, row.lower, row.upper), magnitude);
      note(audit_.rows, std::fabs(activity_[i].total - solution_.rows[i]), magnitude);
    }
    for (std::size_t j = 0; j < program_.columns.size(); ++j) {
      const Column& column = program_.columns[j];
      const double x = solution_.columns[j];
      note(audit_.bounds, outside(x, column.lower, column.upper), std::fabs(x));
      if (column.whole) note(audit_.whole, std::fabs(x - std::round(x)), 0.0);
    }
    note(audit_.value, std::fabs(value_.total - solution_.value), value_.largest);
  }

  void check_dual() {
    double largest_dual = 0.0;
    for (const double dual : solution_.duals) {
      largest_dual = std::max(largest_dual, std::fabs(dual));
    }
    for (std::size_t i = 0; i < program_.rows.size(); ++i) {
      const Row& row = program_.rows[i];
      check_pair({sign_ * solution_.duals[i],
                  largest_dual,
                  activity_[i].total,
                  activity_[i].largest,
                  {row.lower, row.upper}});
    }
    for (std::size_t j = 0; j < program_.columns.size(); ++j) {
      const Column& column = program_.columns[j];
      note(audit_.reduced_costs, std::fabs(reduced_[j].total - solution_.reduced_costs[j]),
           reduced_[j].largest);
      check_pair({sign_ * reduced_[j].total,
                  reduced_[j].largest,
                  solution_.columns[j],
                  std::fabs(solution_.columns[j]),
                  {column.lower, column.upper}});
    }
    dual_value_.add(sign_ * program_.constant);
    note(audit_.gap, std::fabs(sign_ * value_.total - dual_value_.total),
         std::max(value_.largest, dual_value_.largest));
  }

  void check_pair(const Pair& pair) {
    const double bound = pair.dual > 0.0 ? pair.bounds.lower : pair.bounds.upper;
    if (pair.dual == 0.0) return;
    if (!std::isfinite(bound)) {
      note(audit_.dual_signs, std::fabs(pair.dual), pair.dual_magnitude);
      return;
    }
    const double distance = std::fabs(pair.primal - bound);
    note(audit_.complementarity, std::fabs(pair.dual) * distance,
         pair.dual_magnitude * std::max(pair.primal_magnitude, std::fabs(bound)));
    dual_value_.add(pair.dual * bound);
  }

  // No x is better than the bound, so neither is this one.
  void check_bound() {
    note(audit_.value, std::max(0.0, sign_ * (solution_.bound - solution_.value)), value_.largest);
  }

  const LinearProgram& program_;
  const Solution& solution_;
  double sign_;
  bool whole_;
  std::vector<Sum> activity_;
  std::vector<Sum> reduced_;
  Sum value_;
  Sum dual_value_;
  Audit audit_;
};

}  // namespace

bool Audit::passed() const { return failure().empty(); }

std::string Audit::failure() const {
  const std::array<std::pair<const char*, double>, 8> figures = {{
      {"rows", rows},
      {"bounds", bounds},
      {"whole numbers", whole},
      {"value", value},
      {"reduced costs", reduced_costs},
      {"signs of duals", dual_signs},
      {"complementarity", complementarity},
      {"gap", gap},
  }};
  const auto worst =
      std::max_element(figures.begin(), figures.end(),
                       [](const auto& a, const auto& b) { return a.second < b.second; });
  if (worst->second <= 1.0) return "";
  return std::string(worst->first) + " off by " + std::to_string(worst->second) +
         " times what is allowed";
}

Audit audit(const LinearProgram& program, const Solution& solution) {
  require(solution.columns.size() == program.columns.size() &&
              solution.rows.size() == program.rows.size(),
          "an audit needs a value for every column and row");
  require(program.has_whole_columns() || (solution.duals.size() == program.rows.size() &&
                                          solution.reduced_costs.size() == program.columns.size()),
          "an audit needs a dual for every row and a reduced cost for every column");
  return Auditor(program, solution).run();
}

}  // namespace staddle::lp
