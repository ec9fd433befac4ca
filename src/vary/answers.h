// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "staddle/vary/vary_options.h"
#include "staddle/vary/vary_solution.h"
#include "vary/circumstances.h"

namespace staddle {

// The optimum under any circumstances: the successor first, where there is one, then the
// stand on land of that worth. Where many are asked for that grow alike, a pool of the
// lattice's regimes answers them; the answers are the same either way.
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
  void tax(const std::vector<Circumstances>& asked, std::vector<VaryAnswer>& answers) const;
  bool pools(const StandProblem& problem, const std::vector<Circumstances>& asked,
             const std::vector<std::size_t>& places) const;
  void answer_successors(const StandProblem& successor, const std::vector<Circumstances>& asked,
                         const std::vector<std::size_t>& places,
                         std::vector<VaryAnswer>& answers);
  void answer_stands(const StandProblem& stand, const std::vector<Circumstances>& asked,
                     const std::vector<std::size_t>& places, std::vector<VaryAnswer>& answers);

  const VaryProblem& problem_;
  const VaryOptions& options_;
  std::size_t expected_ = 0, given_ = 0;
};

// What a regime is worth under the circumstances, on the land that the answer to them says.
MoneyPerAcre held_value(const VaryProblem& problem, const Circumstances& circumstances,
                        const VaryAnswer& answer, const Regime& regime);
// The same after tax. REQUIRES: problem.tax, an answer with a best.
MoneyPerAcre held_value_after_tax(const VaryProblem& problem, const Circumstances& circumstances,
                                  const VaryAnswer& answer, const Regime& regime);

}  // namespace staddle
