// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <utility>

#include "lp/audit.h"
#include "lp/glpk_model.h"
#include "lp/solve.h"
#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle::lp {
namespace {

void require_none_broken(const std::string& broken) {
  if (!broken.empty()) throw ContractViolation("linear program: " + broken);
}

bool all_finite(const std::vector<double>& values) {
  return std::all_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); });
}

// What rounding has pushed out of its bounds goes back onto them.
double onto_bounds(double x, const Column& column) {
  const double nearest = std::clamp(x, column.lower, column.upper);
  const double slack = tolerance::lp_absolute + tolerance::lp_relative * std::fabs(x);
  return std::fabs(x - nearest) <= slack ? nearest : x;
}

// Everything that follows from x and the duals is computed here, from the program's own
// data, so that no scaling of the solver's shows.
Solution fill_in(const LinearProgram& program, GlpkAnswer answer) {
  Solution solution;
  solution.status = answer.status;
  solution.message = std::move(answer.message);
  solution.iterations = answer.iterations;
  if (answer.columns.size() != program.columns.size() ||
      (answer.columns.empty() && answer.status != Status::optimal)) {
    return solution;
  }
  solution.columns = std::move(answer.columns);
  solution.duals = std::move(answer.duals);
  solution.rows.assign(program.rows.size(), 0.0);
  solution.value = program.constant;
  const bool with_duals = !program.has_whole_columns();
  for (std::size_t j = 0; j < program.columns.size(); ++j) {
    solution.columns[j] = onto_bounds(solution.columns[j], program.columns[j]);
    solution.value += program.columns[j].cost * solution.columns[j];
    if (with_duals) solution.reduced_costs.push_back(program.columns[j].cost);
  }
  for (const Entry& entry : program.entries) {
    solution.rows[entry.row] += entry.value * solution.columns[entry.column];
    if (with_duals) {
      solution.reduced_costs[entry.column] -= entry.value * solution.duals[entry.row];
    }
  }
  solution.bound = answer.proved ? solution.value : answer.bound;
  return solution;
}

// A claim that fails the audit is taken back.
Solution audited(const LinearProgram& program, Solution solution) {
  if (solution.status != Status::optimal && solution.columns.empty()) return solution;
  if (all_finite(solution.columns) && all_finite(solution.duals)) {
    solution.audit_failure = audit(program, solution).failure();
  } else {
    solution.audit_failure = "a value is not finite";
  }
  if (!solution.audit_failure.empty()) {
    solution.status = Status::numerical_trouble;
    solution.message = "the answer failed its audit: " + solution.audit_failure;
  }
  return solution;
}

}  // namespace

std::string broken_promise(const Options& options) {
  const auto bad = [](const char* option, const std::string& value, const char* allowed) {
    return std::string("option ") + option + " is " + value + ", and must be " + allowed;
  };
  if (!(options.seconds > 0.0)) return bad("seconds", std::to_string(options.seconds), "> 0 s");
  if (options.iterations < 1) return bad("iterations", std::to_string(options.iterations), ">= 1");
  if (!(options.relative_gap >= 0.0)) {
    return bad("relative_gap", std::to_string(options.relative_gap), ">= 0");
  }
  return "";
}

struct LinearProgramSolver::State {
  LinearProgram program;
  GlpkModel model;
};

LinearProgramSolver::LinearProgramSolver(LinearProgram program)
    : state_(std::make_unique<State>()) {
  require_none_broken(broken_promise(program));
  state_->program = std::move(program);
}

LinearProgramSolver::~LinearProgramSolver() = default;
LinearProgramSolver::LinearProgramSolver(LinearProgramSolver&&) noexcept = default;
LinearProgramSolver& LinearProgramSolver::operator=(LinearProgramSolver&&) noexcept = default;

const LinearProgram& LinearProgramSolver::program() const { return state_->program; }

std::size_t LinearProgramSolver::add_column(const Column& column,
                                            const std::vector<Term>& terms_by_row) {
  const std::string name = "new column " + std::to_string(state_->program.columns.size());
  require_none_broken(broken_promise(column, name));
  require_none_broken(broken_promise(terms_by_row, state_->program.rows.size(), name));
  if (state_->model.alive()) state_->model.add_column(column, terms_by_row);
  return state_->program.add_column(column, terms_by_row);
}

std::size_t LinearProgramSolver::add_row(const Row& row, const std::vector<Term>& terms_by_column) {
  const std::string name = "new row " + std::to_string(state_->program.rows.size());
  require_none_broken(broken_promise(row, name));
  require_none_broken(broken_promise(terms_by_column, state_->program.columns.size(), name));
  if (state_->model.alive()) state_->model.add_row(row, terms_by_column);
  return state_->program.add_row(row, terms_by_column);
}

void LinearProgramSolver::set_column(std::size_t index, const Column& column) {
  require(index < state_->program.columns.size(), "set_column needs a column of the program");
  require_none_broken(broken_promise(column, "column " + std::to_string(index)));
  state_->program.columns[index] = column;
  if (state_->model.alive()) state_->model.set_column(index, column);
}

void LinearProgramSolver::set_row(std::size_t index, const Row& row) {
  require(index < state_->program.rows.size(), "set_row needs a row of the program");
  require_none_broken(broken_promise(row, "row " + std::to_string(index)));
  state_->program.rows[index] = row;
  if (state_->model.alive()) state_->model.set_row(index, row);
}

Solution LinearProgramSolver::solve(const Options& options) {
  require_none_broken(broken_promise(options));
  const LinearProgram& program = state_->program;
  GlpkModel& model = state_->model;
  if (!model.alive()) {
    std::string failed = model.build(program);
    if (!failed.empty()) {
      Solution solution;
      solution.message = std::move(failed);
      return solution;
    }
  }
  constexpr double usual = 0.0;
  Solution solution = audited(program, fill_in(program, model.solve(program, options, usual)));
  if (solution.audit_failure.empty() || !model.alive()) return solution;
  // GLPK's presolver takes a row for satisfied that is off by 1e-3, its simplex method
  // one that is off by 1e-7 of its bound.
  Options tight = options;
  tight.presolve = false;
  const int iterations = solution.iterations;
  solution =
      audited(program, fill_in(program, model.solve(program, tight, tolerance::lp_relative)));
  solution.iterations += iterations;
  return solution;
}

Solution solve(const LinearProgram& program, const Options& options) {
  return LinearProgramSolver(program).solve(options);
}

}  // namespace staddle::lp
