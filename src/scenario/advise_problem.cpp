// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/scenario/advise_problem.h"

#include <fmt/format.h>

#include <algorithm>

#include "signs/counted_words.h"
#include "staddle/scenario/measured_stand.h"
#include "staddle/scenario/problems.h"
#include "staddle/scenario/tabled_choices.h"

namespace staddle {

namespace {

// Fixed regimes grow on bare land: nothing follows them but themselves.
AdviseProblem problem_of_tables(const Scenario& scenario) {
  std::vector<TabledChoice> choices = make_tabled_choices(scenario);
  StandProblem first = choices.front().problem;
  AdviseProblem problem{std::move(first), std::nullopt, {},           {}, scenario.ready_limits,
                        scenario.site,    std::nullopt, std::nullopt};
  problem.tabled = std::move(choices);
  problem.tax = scenario.tax;
  return problem;
}

// The stand as it would be with another basal area on its plots, and how far that reaches.
std::optional<PlotsQuestion> question_of_plots(const StandBlock& block) {
  if (!block.plots || !block.plots->low || !block.standing) return std::nullopt;
  const PlotSample& sample = *block.plots;
  constexpr double fewest_tpa = 30.0;  // the format's fewest standing trees
  const MeasuredStand& measured = sample.measured;
  PlotsQuestion question;
  question.plots = sample.plots;
  question.mean = measured.basal_area;
  question.low = std::max(*sample.low,
                          measured.basal_area * (fewest_tpa / measured.trees.in(trees_per_acre)));
  question.high = *sample.high;
  question.stand = [measured, growth = growth_model_of(block),
                    recovery = recovery_per_yr(block.source),
                    time = block.standing->at - measured.at](double share) {
    MeasuredStand stand = measured;
    stand.trees = measured.trees * share;
    stand.basal_area = measured.basal_area * share;
    return grown_unthinned(stand, growth, recovery, time);
  };
  return question;
}

}  // namespace

Result<AdviseProblem> make_advise_problem(const Scenario& scenario) {
  if (std::holds_alternative<std::vector<TabledRegime>>(scenario.stand.source)) {
    return problem_of_tables(scenario);
  }
  ScenarioProblems problems = make_problems(scenario);
  const AfterHarvest after_harvest = scenario.after_harvest;
  const auto land_value = [after_harvest](std::optional<MoneyPerAcre> successor_lev) {
    if (after_harvest.kind == AfterHarvest::Kind::land_price) return after_harvest.land_price;
    require(successor_lev.has_value(), "the land is worth what its next stand is worth");
    return land_value_after(after_harvest, *successor_lev);
  };
  AdviseProblem problem{std::move(problems.stand),
                        std::move(problems.successor),
                        land_value,
                        scenario.regimes,
                        scenario.ready_limits,
                        scenario.site,
                        std::nullopt,
                        std::nullopt};
  if (const auto* equations = std::get_if<EquationSet>(&scenario.stand.source)) {
    problem.equations = *equations;
    problem.site_index = scenario.stand.site_index;
    problem.successor_site_index = problem.site_index;
    if (problem.site_index) {
      (scenario.is_standing() ? *problem.successor_site_index : *problem.site_index) +=
          planting_of(scenario).site_index_shift;
    }
  }
  problem.plots = question_of_plots(scenario.stand);
  problem.tax = scenario.tax;
  if (scenario.stand.plots) problem.crown_cover = scenario.stand.plots->crown_cover;
  return problem;
}

std::vector<Assumption> assumptions_of(const Scenario& scenario, const Advice& advice) {
  std::vector<Assumption> assumed = scenario.assumed;
  for (const int count : advice.counts_without_regime) {
    assumed.push_back(
        {"/decisions/max_thinnings", fmt::format("{}", count),
         fmt::format("no regime with exactly {} satisfies the limits",
                     words::counted(count, "thinning"))});
  }
  if (advice.first_cuts_shut_by_one_ton_rule > 0) {
    assumed.push_back(
        {"/decisions/cut_diameter_ratio", fmt::format("{}", scenario.cut_diameter_ratios.front()),
         fmt::format("{} left out because a product would stand more than a ton per acre higher "
                     "after the cut than before it",
                     advice.first_cuts_shut_by_one_ton_rule == 1
                         ? std::string("1 first cut was")
                         : fmt::format("{} first cuts were",
                                       advice.first_cuts_shut_by_one_ton_rule))});
  }
  if (advice.first_age_with_minimum_sale) {
    assumed.push_back(
        {"/decisions/min_sale_tons", fmt::format("{}", scenario.lattice.min_sale.in(tons)),
         fmt::format("no thinning sells so much now; the first that does is at age {}",
                     advice.first_age_with_minimum_sale->whole())});
  }
  return assumed;
}

}  // namespace staddle
