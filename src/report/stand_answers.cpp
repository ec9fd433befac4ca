// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/stand_answers.h"

#include <fmt/format.h>

#include "advise/scene.h"
#include "signs/plain_words.h"
#include "staddle/plant/compare.h"
#include "staddle/scenario/advise_problem.h"
#include "staddle/scenario/plant_question.h"
#include "staddle/scenario/vary_question.h"
#include "staddle/vary/vary.h"

namespace staddle {
namespace {

std::string name_of_count(std::size_t thinnings) {
  return words::count(thinnings) + (thinnings < 2 ? " thinning" : " thinnings");
}

class Answering {
 public:
  Answering(const Scenario& scenario, const StandAnswersOptions& options)
      : scenario_(scenario), options_(options) {}

  Result<StandAnswers> run(const std::vector<std::string>& storm_zones) {
    const Result<AdviseProblem> problem = make_advise_problem(scenario_);
    if (!problem) return problem.error();
    AdviseOptions advising;
    advising.stop = options_.stop;
    Result<Advice> advice = advise(*problem, advising);
    if (!advice) return advice.error();
    tell_progress(0.2);
    StandAnswers answers;
    answers.scenario = scenario_;
    answers.advice = std::move(advice).value();
    answers.storm_zones = storm_zones;
    if (problem->tabled.empty()) ask_of_the_lattice(*problem, answers);
    list_options(answers);
    if (scenario_.establishment) compare_ways_to_plant(answers);
    if (scenario_.vary) {
      VaryOptions varying;
      varying.threads = options_.threads;
      Result<VarySolution> varied = vary(make_vary_problem(scenario_), varying);
      if (!varied) return varied.error();
      answers.vary = std::move(varied).value();
    }
    tell_progress(1.0);
    return answers;
  }

 private:
  void tell_progress(double fraction) const {
    if (options_.progress) options_.progress(fraction);
  }

  void ask_of_the_lattice(const AdviseProblem& problem, StandAnswers& answers) {
    const StandProblem stand = prepare(problem, {}).stand;
    answers.stand_case = stand.stand_case;
    ValueMapOptions mapping{options_.threads, options_.stop};
    answers.by_final_age = value_by_final_age(stand, mapping);
    tell_progress(0.4);
    ValueMap map = value_map(stand, mapping);
    if (!map.ages.empty()) answers.first_thinning_map = std::move(map);
    tell_progress(0.8);
    if (scenario_.is_standing()) answers.hold = hold_or_cut(stand);
  }

  void compare_ways_to_plant(StandAnswers& answers) const {
    PlantOptions comparing;
    comparing.threads = options_.threads;
    PlantSolution solution = compare_establishments(make_plant_problem(scenario_), comparing);
    if (!solution.ranking.empty()) answers.plant = std::move(solution);
  }

  void list_options(StandAnswers& answers) const {
    const Advice& advice = answers.advice;
    const std::size_t planned = advice.best_plan.regime.thinnings.size();
    const auto add = [&](const std::string& name, const RegimeReport& report, MoneyPerAcre loss,
                         const std::vector<BrokenLimit>& breaks = {}) {
      answers.options.push_back({name, report, loss, breaks});
      answers.options.back().report.name = name;
    };
    const auto add_regime = [&](const std::string& name, const Regime& regime, MoneyPerAcre loss) {
      if (!answers.stand_case) return;
      add(name, simulate(*answers.stand_case, stated(name, regime)).value(), loss);
    };
    add(fmt::format("the plan ({})", name_of_count(planned)), advice.best, dollars_per_acre(0));
    if (const auto& lighter = advice.third_instead) {
      add_regime("at most a third at once", lighter->best.regime, lighter->cost);
    }
    for (const Alternative& other : advice.alternatives) {
      const auto count = static_cast<std::size_t>(other.thinnings);
      if (count != planned) add(name_of_count(count), other.report, other.loss_against_best);
    }
    if (const auto& wait = advice.wait_five) {
      add_regime("nothing for five years", wait->plan.regime, wait->loss_against_best);
    }
    if (advice.sell_today) {
      add_regime("sell everything today", {{}, answers.stand_case->present()},
                 advice.sell_today->loss_against_best);
    }
    for (const StatedAnswer& stated : advice.regimes) {
      add("yours: " + stated.report.name, stated.report, stated.loss_against_best, stated.breaks);
    }
  }

  const Scenario& scenario_;
  const StandAnswersOptions& options_;
};

}  // namespace

Result<StandAnswers> answer_stand(const Scenario& scenario,
                                  const std::vector<std::string>& storm_zones,
                                  const StandAnswersOptions& options) {
  return Answering(scenario, options).run(storm_zones);
}

}  // namespace staddle
