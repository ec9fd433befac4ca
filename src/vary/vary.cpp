// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/vary/vary.h"

#include <fmt/format.h>

#include "staddle/base/contract.h"
#include "vary/break_evens.h"
#include "vary/one_at_a_time.h"
#include "vary/price_percentiles.h"
#include "vary/regret.h"

namespace staddle {
namespace {

// Break-evens ask as they go; about so many questions.
constexpr std::size_t questions_of_break_evens = 400;

class Variation {
 public:
  Variation(const VaryProblem& problem, const VaryOptions& options)
      : problem_(problem), options_(options), answers_(problem, options) {}

  Result<VarySolution> answer() {
    solution_.standing = problem_.stand.stand_case.standing.has_value();
    answers_.expect(1);
    solution_.base = answers_.of(todays(problem_));
    Faults faults = gather_regimes();
    if (!faults.empty()) return faults;
    list_price_scenarios();
    const VaryQuestion& question = problem_.question;
    answers_.expect(question.rates.size() * solution_.price_scenarios.size() +
                    2 * question.one_at_a_time.size() + questions_of_break_evens);
    if (question.grid) {
      answers_.expect(question.grid->x.values.size() * question.grid->y.values.size());
    }
    fill_cells();
    compare_regimes();
    if (question.grid) solution_.grid = grid_answer(answers_, *question.grid);
    solution_.one_at_a_time = one_at_a_time(answers_, solution_.base);
    solution_.break_evens = break_evens(answers_, solution_.base, problem_.products);
    return std::move(solution_);
  }

 private:
  struct Held {
    std::string name;
    Regime regime;
  };

  // The base optimum and the stated regimes as they come out on the stand: growth is the
  // same in every cell, so a stated residual takes the same share in all of them.
  Faults gather_regimes() {
    Faults faults;
    if (solution_.base.best) held_.push_back({"base optimum", solution_.base.best->regime});
    for (std::size_t i = 0; i < problem_.stated.size(); ++i) {
      const Result<RegimeReport> report =
          simulate(problem_.stand.stand_case, problem_.stated[i]);
      if (report) {
        held_.push_back({problem_.stated[i].name, report->regime()});
        continue;
      }
      for (Fault fault : report.error()) {
        fault.place = fmt::format("/regimes/{}{}", i, fault.place);
        faults.push_back(std::move(fault));
      }
    }
    return faults;
  }

  // What the base optimum sells of each product over its life, per acre still standing.
  std::vector<Yield> tons_of_base() const {
    const RegimeReport report =
        simulate(problem_.stand.stand_case, stated("", solution_.base.best->regime)).value();
    std::vector<Yield> tons = report.final_harvest.tons;
    for (const ThinningRecord& thinning : report.thinnings) {
      for (std::size_t i = 0; i < tons.size(); ++i) tons[i] += thinning.tons[i];
    }
    return tons;
  }

  void list_price_scenarios() {
    const VaryQuestion& question = problem_.question;
    std::vector<PriceScenario>& list = solution_.price_scenarios;
    PriceScenario base{"base", {}};
    for (const ProductPrice& price : problem_.stand.stand_case.prices) {
      base.stumpage.push_back(price.stumpage);
    }
    list.push_back(std::move(base));
    list.insert(list.end(), question.price_scenarios.begin(), question.price_scenarios.end());
    if (question.dated_prices.empty()) return;
    const auto add = [&](const std::vector<PriceScenario>& more) {
      list.insert(list.end(), more.begin(), more.end());
    };
    add(percentiles_by_product(question.dated_prices));
    if (solution_.base.best) add(joint_percentiles(question.dated_prices, tons_of_base()));
  }

  void fill_cells() {
    for (const DiscountRate rate : problem_.question.rates) {
      for (std::size_t i = 0; i < solution_.price_scenarios.size(); ++i) {
        Circumstances cell = todays(problem_);
        cell.rate = rate;
        set_prices(solution_.price_scenarios[i].stumpage, cell);
        circumstances_.push_back(std::move(cell));
        solution_.cells.push_back({rate, i, {}});
      }
    }
    std::vector<VaryAnswer> found = answers_.of(circumstances_);
    for (std::size_t i = 0; i < found.size(); ++i) solution_.cells[i].answer = std::move(found[i]);
  }

  void compare_regimes() {
    for (const Held& held : held_) {
      solution_.regimes.push_back(
          losses_of(problem_, options_, solution_, circumstances_, held.name, held.regime));
    }
    choose_regimes(solution_);
  }

  const VaryProblem& problem_;
  const VaryOptions& options_;
  Answers answers_;
  std::vector<Held> held_;
  std::vector<Circumstances> circumstances_;  // of the cells
  VarySolution solution_;
};

}  // namespace

Result<VarySolution> vary(const VaryProblem& problem, const VaryOptions& options) {
  require(!problem.question.rates.empty(), "vary needs at least one rate");
  require(!problem.stand.stand_case.standing || problem.land_value,
          "a standing stand needs a rule for the land's worth");
  return Variation(problem, options).answer();
}

}  // namespace staddle
