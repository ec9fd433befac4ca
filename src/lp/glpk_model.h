// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "lp/linear_program.h"
#include "lp/solution.h"
#include "lp/solve.h"

struct glp_prob;  // of GLPK: only glpk_solver.cpp knows more

namespace staddle::lp {

// Runs work that calls GLPK, on this thread's tamed environment: nothing is printed, an
// error inside GLPK ends the work instead of the program. Returns GLPK's words then, and
// "" where all went well. After an error every GlpkModel of this thread is lost.
std::string run_guarded(const std::function<void()>& work);

// What GLPK answered, before any audit. Which fields are filled is as in Solution.
struct GlpkAnswer {
  Status status = Status::numerical_trouble;
  std::string message;
  std::vector<double> columns;
  std::vector<double> duals;
  double bound = 0.0;
  bool proved = true;  // the value is the bound
  int iterations = 0;
};

// A problem object of GLPK that mirrors a LinearProgram. It belongs to the environment
// of the thread that built it, and is lost with it; then alive() is false, and build()
// makes it anew.
class GlpkModel {
 public:
  GlpkModel() = default;
  ~GlpkModel();
  GlpkModel(const GlpkModel&) = delete;
  GlpkModel& operator=(const GlpkModel&) = delete;

  bool alive() const;
  // Returns "" or GLPK's words.
  std::string build(const LinearProgram& program);

  // REQUIRES, all: alive(). Where GLPK fails, the model is no longer alive.
  void add_column(const Column& column, const std::vector<Term>& terms_by_row);
  void add_row(const Row& row, const std::vector<Term>& terms_by_column);
  void set_column(std::size_t index, const Column& column);
  void set_row(std::size_t index, const Row& row);
  // A tolerance of 0 leaves GLPK's own.
  GlpkAnswer solve(const LinearProgram& program, const Options& options, double tolerance);

 private:
  glp_prob* problem_ = nullptr;
  std::uint64_t environment_ = 0;
};

}  // namespace staddle::lp
