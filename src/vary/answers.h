// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "staddle/vary/vary_options.h"
#include "staddle/vary/vary_solution.h"
#include "vary/circumstances.h"

namespace staddle {

// The optimum under any circumstances: the successor first, where there is one, then the
// stand on land of that worth.
class Answers {
 public:
  Answers(const VaryProblem& problem, const VaryOptions& options);

  // In the order asked.
  std::vector<VaryAnswer> of(const std::vector<Circumstances>& asked);
  VaryAnswer of(const Circumstances& asked);

  const VaryProblem& problem() const { return problem_; }
  // What is still to come, so that progress can be told. Told of all that of() answers.
  void expect(std::size_t answers) { expected_ += answers; }

 private:
  void tell_progress(std::size_t more);

  const VaryProblem& problem_;
  const VaryOptions& options_;
  std::size_t expected_ = 0, given_ = 0;
};

// What a regime is worth under the circumstances, on land of that worth after it.
MoneyPerAcre held_value(const VaryProblem& problem, const Circumstances& circumstances,
                        MoneyPerAcre land_value, const Regime& regime);

}  // namespace staddle
