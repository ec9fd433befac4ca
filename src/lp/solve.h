// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <memory>
#include <stop_token>
#include <string>
#include <vector>

#include "lp/linear_program.h"
#include "lp/solution.h"

namespace staddle::lp {

enum class Simplex {
  primal,  // good after new columns, which leave the last answer feasible
  dual,    // good after new rows, and for programs with many more rows than columns
};

struct Options {
  Simplex simplex = Simplex::primal;
  // Shrinks the program first; then the last answer is no start for this one.
  bool presolve = false;
  double seconds = 60.0;           // > 0; an answer that needs fewer does not depend on it
  int iterations = 1'000'000'000;  // of the simplex method, >= 1
  // With whole columns: good enough when |value - bound| <= relative_gap x |value|.
  double relative_gap = 0.0;  // >= 0
  std::stop_token stop = {};  // looked at every few thousand iterations
};

// What is wrong with the options, naming the option, its value and what is allowed.
std::string broken_promise(const Options& options);

// Solves a program that changes little by little and is solved again, as in column or
// row generation: each solve starts from the basis of the last. Every answer is audited
// on the program as it stands here; one that claims to be optimal and fails is solved
// again more tightly, and if it fails still, is numerical trouble.
//
// Of several optimal answers, which one is returned depends on the history of changes
// and solves, and on nothing else.
//
// One thread at a time. A solver that is taken to another thread solves afresh there
// once, as it does after an error inside the library.
class LinearProgramSolver {
 public:
  // REQUIRES: broken_promise(program) is "".
  explicit LinearProgramSolver(LinearProgram program);
  ~LinearProgramSolver();
  LinearProgramSolver(LinearProgramSolver&&) noexcept;
  LinearProgramSolver& operator=(LinearProgramSolver&&) noexcept;

  const LinearProgram& program() const;

  // Each returns the index of what was added.
  // REQUIRES: sound numbers; terms within the program, none twice.
  std::size_t add_column(const Column& column, const std::vector<Term>& terms_by_row);
  std::size_t add_row(const Row& row, const std::vector<Term>& terms_by_column);

  // Replaces bounds, cost and kind; the coefficients stay.
  // REQUIRES: sound numbers, an index within the program.
  void set_column(std::size_t index, const Column& column);
  void set_row(std::size_t index, const Row& row);

  // REQUIRES: broken_promise(options) is "".
  Solution solve(const Options& options = {});

 private:
  struct State;
  std::unique_ptr<State> state_;
};

// Once and for all. REQUIRES: broken_promise of both is "".
Solution solve(const LinearProgram& program, const Options& options = {});

}  // namespace staddle::lp
