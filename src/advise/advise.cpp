// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/advise/advise.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "advise/after_tax_answer.h"
#include "advise/judgement.h"
#include "advise/plots_question.h"
#include "advise/scene.h"
#include "advise/side_questions.h"
#include "advise/tables.h"

namespace staddle {
namespace {

// Puts an answer together from one solved scene, question by question.
class Adviser {
 public:
  Adviser(const AdviseProblem& problem, const AdviseOptions& options) : problem_(problem) {
    options_.method =
        options.exhaustive ? StandOptions::Method::exhaustive : StandOptions::Method::automatic;
    options_.stop = options.stop;
  }

  Result<Advice> answer() {
    StandOptions main = options_;
    main.windows = main.by_count = true;
    scene_ = solve_scene(problem_, main);
    if (!scene_.solved()) {
      return Faults{{FaultCode::no_regime, "", "", scene_.solution.reason, ""}};
    }
    take_solution();
    if (compares_tables()) {
      list_tables();
    } else {
      Faults faults = price_stated_regimes();
      if (!faults.empty()) return faults;
      ask_of_the_lattice();
    }
    ask_side_questions();
    if (advice_.standing) judge_standing_stand();
    if (problem_.tax) advice_.after_tax = answer_after_tax(problem_, scene_, advice_, options_);
    note_risks();
    return std::move(advice_);
  }

 private:
  const StandCase& stand() const { return scene_.stand.stand_case; }
  bool compares_tables() const { return !problem_.tabled.empty(); }
  MoneyPerAcre best_value() const { return scene_.best().value.objective; }

  RegimeReport report_of(const StandCase& stand_case, const std::string& name,
                         const Regime& regime) const {
    return simulate(stand_case, stated(name, regime)).value();
  }

  void take_solution() {
    const StandSolution& solution = scene_.solution;
    advice_.standing = stand().standing.has_value();
    advice_.best_plan = plan_of(scene_, solution.best);
    advice_.best = report_of(stand(), "best", solution.best.regime);
    advice_.near_best = *solution.near_best;
    advice_.certificate = solution.certificate;
    if (advice_.standing) {
      advice_.successor_lev = scene_.successor_lev();
      advice_.land_value = stand().land_value;
      if (scene_.successor_lev()) {
        advice_.successor =
            report_of(problem_.successor->stand_case, "successor", scene_.successor->best.regime);
      }
    }
    for (std::size_t cuts = 0; cuts < solution.by_count.size(); ++cuts) {
      const auto& priced = solution.by_count[cuts];
      if (!priced) {
        advice_.counts_without_regime.push_back(static_cast<int>(cuts));
        continue;
      }
      advice_.alternatives.push_back({static_cast<int>(cuts),
                                      report_of(stand(), name_of_count(cuts), priced->regime),
                                      best_value() - priced->value.objective, scene_.table});
    }
  }

  // Each table is a stated regime, ended at its own best age.
  void list_tables() {
    std::map<std::size_t, Alternative> best_with;  // by number of thinnings
    for (const TableAnswer& table : answers_of_tables(problem_)) {
      const TabledChoice& choice = problem_.tabled[table.table];
      const RegimeReport report =
          report_of(choice.problem.stand_case, choice.name, table.best.regime);
      const MoneyPerAcre loss = best_value() - table.best.value.objective;
      advice_.regimes.push_back({report, loss, {}, table.table});
      const std::size_t cuts = table.best.regime.thinnings.size();
      const auto [holder, is_first] = best_with.try_emplace(
          cuts, Alternative{static_cast<int>(cuts), report, loss, table.table});
      if (!is_first && loss < holder->second.loss_against_best) {
        holder->second = {static_cast<int>(cuts), report, loss, table.table};
      }
    }
    for (const auto& [cuts, alternative] : best_with) {
      advice_.alternatives.push_back(alternative);
      advice_.alternatives.back().report.name = name_of_count(cuts);
    }
  }

  static std::string name_of_count(std::size_t cuts) {
    if (cuts == 0) return "no thinning";
    return cuts == 1 ? "one thinning" : fmt::format("{} thinnings", cuts);
  }

  Faults price_stated_regimes() {
    Faults faults;
    for (std::size_t i = 0; i < problem_.stated.size(); ++i) {
      Result<RegimeReport> report = simulate(stand(), problem_.stated[i]);
      if (!report) {
        for (Fault fault : report.error()) {
          fault.place = fmt::format("/regimes/{}{}", i, fault.place);
          faults.push_back(fault);
        }
        continue;
      }
      StatedAnswer answer{std::move(report).value(), {}, {}, 0};
      answer.loss_against_best = best_value() - answer.report.value.objective;
      answer.breaks = broken_limits(scene_.stand, answer.report);
      advice_.regimes.push_back(std::move(answer));
    }
    return faults;
  }

  void ask_of_the_lattice() {
    advice_.guard_costs = guard_costs(problem_, scene_, options_);
    advice_.first_cuts_shut_by_one_ton_rule = first_cuts_shut_by_one_ton_rule(scene_.stand);
    advice_.third_instead = third_instead(problem_, scene_, advice_.best, options_);
  }

  void ask_side_questions() {
    advice_.survives = survivals(problem_, scene_, options_);
    note_fitted_ranges();
    if (stand().hazard.active()) {
      advice_.storm = storm_answer(problem_, scene_, advice_.best, options_);
      advice_.storm->third_instead = advice_.third_instead;
    }
    if (!advice_.standing && !advice_.alternatives.empty() &&
        advice_.alternatives.front().thinnings == 0) {
      advice_.advantage = advice_.alternatives.front().loss_against_best;
    }
  }

  // Every plan that is told says where it leans on more than the equations know.
  void note_fitted_ranges() {
    if (!problem_.equations) return;
    const auto note = [&](const RegimeReport& plan, const std::string& of,
                          std::optional<Height> site_index) {
      for (OutsideRange& outside :
           outside_fitted_range({*problem_.equations, site_index}, plan, of)) {
        advice_.outside_fitted_range.push_back(std::move(outside));
      }
    };
    note(advice_.best, "best", problem_.site_index);
    if (advice_.successor) note(*advice_.successor, "successor", problem_.successor_site_index);
    // The stand's site is told with the best.
    for (const StatedAnswer& stated : advice_.regimes) {
      note(stated.report, stated.report.name, std::nullopt);
    }
    for (const Alternative& alternative : advice_.alternatives) {
      const bool is_best =
          alternative.thinnings == static_cast<int>(advice_.best.regime().thinnings.size());
      if (!is_best) note(alternative.report, alternative.report.name, std::nullopt);
    }
  }

  void judge_standing_stand() {
    const Age present = stand().present();
    advice_.sell_today = sell_today(scene_);
    advice_.advantage = advice_.sell_today->loss_against_best;
    advice_.wait_five = wait_five_years(scene_, options_);
    const Age horizon =
        std::min(std::max(scene_.stand.lattice.final_to, present), stand().growth.last_age());
    const auto& last_thinning = stand().standing->last_thinning;
    advice_.readiness =
        judge_readiness(grow_unthinned(stand(), horizon), problem_.ready_limits,
                        last_thinning ? std::optional(last_thinning->at) : std::nullopt,
                        scene_.stand.lattice.years_between_entries, problem_.crown_cover);
    if (problem_.plots) advice_.plots = plots_answer(*problem_.plots, scene_, options_);
    const Regime& plan = advice_.best_plan.regime;
    const bool thins_now = !plan.thinnings.empty() && plan.thinnings.front().at == present;
    if (advice_.readiness.judgement != SignVerdict::not_yet && !thins_now) {
      StandOptions acting = options_;
      acting.first_thinning_at = present;
      const StandSolution now = solve(scene_.stand, acting);
      if (now.status != StandSolution::Status::no_regime) {
        advice_.waiting_earns = best_value() - now.best.value.objective;
        advice_.sale_now = sale_now(scene_, now.best, true, options_);
      }
    }
    if (thins_now || plan.final_harvest == present) {
      advice_.sale_now = sale_now(scene_, scene_.best(), false, options_);
    }
    advice_.first_age_with_minimum_sale = first_age_of_a_sale(scene_.stand);
    advice_.readiness_judgement = readiness_sentence(advice_, present);
  }

  void note_risks() {
    RiskFacts facts = facts_of(stand(), advice_.best);
    facts.successor_lev = advice_.standing ? advice_.successor_lev : best_value();
    if (advice_.third_instead) add_third(*advice_.third_instead, facts);
    if (!advice_.after_tax) {
      advice_.risk_notes = risk_notes(facts);
      return;
    }
    const AdviceAfterTax& told = *advice_.after_tax;
    const StandCase taxed_stand = after_tax(scene_, stand()).without_basis();
    const RegimeReport taxed_plan = report_of(taxed_stand, "best", advice_.best.regime());
    RiskFacts taxed = facts_of(taxed_stand, taxed_plan);
    taxed.successor_lev = advice_.standing ? told.successor_lev : told.best.value.objective;
    if (told.third_instead) add_third(*told.third_instead, taxed);
    for (std::size_t i = 0; i < taxed.odds_range.size(); ++i) {
      taxed.odds_range[i].best_value =
          advice_.storm->odds_ratios[i].best.after_tax->value.objective;
    }
    facts.after_tax = &taxed;
    advice_.risk_notes = risk_notes(facts);
  }

  RiskFacts facts_of(const StandCase& stand_case, const RegimeReport& plan) const {
    RiskFacts facts;
    facts.stand_case = &stand_case;
    facts.plan = &plan;
    facts.site = problem_.site;
    if (!advice_.storm) return facts;
    for (const StormAnswer::OddsRow& row : advice_.storm->odds_ratios) {
      facts.odds_range.push_back({row.odds_ratio, row.best.value.objective, row.same_advice});
    }
    return facts;
  }

  void add_third(const ThirdInstead& third, RiskFacts& facts) const {
    facts.cost_of_a_third = third.cost;
    facts.plan_of_thirds = third.best.regime;
    if (advice_.storm) facts.loss_saved_by_a_third = third.loss_saved;
  }

  const AdviseProblem& problem_;
  StandOptions options_;
  Scene scene_{problem_.stand, std::nullopt, {}};
  Advice advice_;
};

}  // namespace

Result<Advice> advise(const AdviseProblem& problem, const AdviseOptions& options) {
  return Adviser(problem, options).answer();
}

}  // namespace staddle
