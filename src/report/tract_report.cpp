// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/tract_report.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>

#include "report/cells.h"
#include "report/plan_words.h"
#include "report/tract_tables.h"
#include "signs/counted_words.h"
#include "signs/plain_words.h"
#include "staddle/report/text.h"
#include "staddle/signs/cautions.h"

namespace staddle {
namespace {

using Status = TractSolution::Status;

// A tract and its plan, told section by section.
class TractTelling {
 public:
  TractTelling(const TractFile& tract, const TractSolution& solution)
      : tract_(tract), solution_(solution), years_(tract) {}

  Report tell() const {
    Report report;
    report.title = tract_.title + ": a plan for the whole tract";
    report.head = head();
    report.lines = lines();
    if (!solution_.stands.empty()) tell_plan(report.sections);
    report.sections.push_back(assumptions());
    report.sections.push_back(cautions());
    report.foot = foot();
    return report;
  }

 private:
  void tell_plan(std::vector<Section>& sections) const {
    if (!solution_.conflicts.empty()) sections.push_back(conflicts());
    sections.push_back(jobs_section(tract_, solution_));
    sections.push_back(money_section(tract_, solution_));
    if (!has_no_limit()) sections.push_back(limits());
    sections.push_back(stands_section(tract_, solution_));
  }

  std::vector<std::string> head() const {
    std::vector<std::string> head;
    if (!tract_.purpose.empty()) head.push_back(tract_.purpose);
    if (!tract_.owner.empty()) head.push_back("Owner: " + tract_.owner);
    if (!tract_.prepared_by.empty()) head.push_back("Prepared by: " + tract_.prepared_by);
    return head;
  }

  std::vector<Line> lines() const {
    std::vector<Line> lines;
    for (const std::string& text : {tract_in_words(), worth(), first_jobs(), income(), proof()}) {
      if (!text.empty()) lines.push_back({0, text});
    }
    for (const std::string& question : tract_.questions) lines.push_back({0, question});
    return lines;
  }

  std::string tract_in_words() const {
    Area area;
    for (const TractFileStand& stand : tract_.stands) area += stand.scenario.area;
    const TractPlan& plan = tract_.plan;
    const std::size_t stands = tract_.stands.size();
    return fmt::format(
        "{} stand{}, {}, planned {} in {} of {} year{}; {}.",
        words::capital(words::count(stands)), stands == 1 ? "" : "s", words::acres_of(area),
        years_.calendar() ? "from " + years_.name(0) + " to " + years_.name(plan.years)
                          : "for " + words::counted(plan.years, "year"),
        plan.periods() == 1 ? "one period" : fmt::format("{} periods", plan.periods()),
        plan.period_yr, plan.period_yr == 1 ? "" : "s",
        plan.whole_stands ? "every stand is treated as a whole" : "a stand may be cut in parts");
  }

  bool has_no_limit() const {
    const TractPlan& plan = tract_.plan;
    return plan.income_floors.empty() && !plan.income_max_drop_fraction &&
           !plan.final_harvest_acres_max_per_period &&
           !plan.group_final_harvest_acres_max_per_period && plan.tons.empty() &&
           !plan.open_stand && !plan.ending_value_min_fraction &&
           !plan.establishment_max_per_period && !plan.whole_stands;
  }

  std::string worth() const {
    if (solution_.stands.empty()) return "There is no plan yet.";
    const std::string value = words::tract_money(solution_.present_value);
    if (has_no_limit()) {
      return fmt::format(
          "The plan is worth {} in today's money, all that follows on the land "
          "included. It has no limits to keep: every stand is managed as is best "
          "for it alone.",
          value);
    }
    const std::string unlimited = words::tract_money(solution_.unlimited_present_value);
    const Money loss = solution_.unlimited_present_value - solution_.present_value;
    const std::string cost = words::size_of(loss);
    if (solution_.status == Status::infeasible) {
      return fmt::format(
          "No plan can keep all limits. The plan shown comes as near to them as can "
          "be and is worth {} in today's money; without any limit the tract is "
          "worth {}.",
          value, unlimited);
    }
    if (!solution_.keeps_limits) {
      return fmt::format(
          "The search was stopped before a plan was found that keeps all limits. "
          "The plan shown is worth {} in today's money and breaks some of them.",
          value);
    }
    return fmt::format(
        "The plan is worth {} in today's money, all that follows on the land "
        "included. Without the limits the tract is worth {}: keeping them costs "
        "{}.",
        value, unlimited, cost);
  }

  // What is to be done in the present year and the coming one.
  std::string first_jobs() const {
    if (solution_.stands.empty()) return "";
    std::vector<std::string> texts;
    const std::vector<TractAction> jobs = jobs_of(solution_);
    for (const TractAction& job : jobs) {
      if (job.year > 1) break;
      texts.push_back(fmt::format("{} of {} of {} {}", name_of(job),
                                  words::acres_of(job.acres), solution_.stands.at(job.stand).name,
                                  years_.in(job.year)));
    }
    constexpr std::size_t most_told = 6;
    if (texts.empty()) {
      const std::string next =
          jobs.empty() ? "within the plan" : "before " + years_.name(jobs.front().year);
      return fmt::format("Nothing is cut or planted {}.", next);
    }
    if (texts.size() > most_told) {
      return fmt::format("First come {} jobs, listed below.", texts.size());
    }
    return "To begin with: " + words::list(texts) + ".";
  }

  std::string income() const {
    if (solution_.periods.empty()) return "";
    const auto least = std::ranges::min_element(solution_.periods, {}, &TractPeriod::income);
    const auto most = std::ranges::max_element(solution_.periods, {}, &TractPeriod::income);
    if (least == most) {
      return fmt::format("It brings {} before costs of {}.", words::tract_money(least->income),
                         words::tract_money(least->cost));
    }
    return fmt::format(
        "Income before costs is least in {}, {}, and most in {}, {}.",
        years_.span(least->from_year, least->to_year), words::tract_money(least->income),
        years_.span(most->from_year, most->to_year), words::tract_money(most->income));
  }

  std::string proof() const {
    const std::string message = words::capital(solution_.message) + ".";
    const bool bounded = solution_.keeps_limits && std::isfinite(solution_.bound.in(dollars));
    if (solution_.status != Status::limit_reached || solution_.stands.empty() || !bounded) {
      return message;
    }
    return message + fmt::format(
                         " No plan that keeps the limits can be worth more than {}, {} "
                         "more than this one.",
                         words::tract_money(solution_.bound),
                         words::percent(solution_.gap_fraction));
  }

  Section conflicts() const {
    Section section{"Limits that cannot all be kept", {}, {}, {}};
    section.paragraphs.push_back(
        solution_.status == Status::infeasible
            ? "These give way, and by as little as possible, each told beside what was asked. "
              "Lower them, or others that pull the other way, and solve again."
            : "The plan shown breaks these.");
    for (const LimitConflict& conflict : solution_.conflicts) {
      section.items.push_back(words::capital(conflict.text) + ".");
    }
    return section;
  }

  Section limits() const {
    Section section{"What the limits cost", {}, {}, {}};
    if (solution_.limit_costs.empty()) {
      section.paragraphs.push_back(
          "A little more of any limit would cost nothing: none of them "
          "holds the plan back.");
      return section;
    }
    section.paragraphs.push_back(
        "What making a limit a little stricter would cost, and making it a little laxer earn; "
        "limits not listed cost nothing.");
    if (solution_.status == Status::infeasible) {
      section.paragraphs.push_back("They are told for the limits as they gave way.");
    }
    if (tract_.plan.whole_stands) {
      section.paragraphs.push_back(
          "Prices like these exist for plans that may divide stands, and "
          "are told for those.");
    }
    for (const LimitCost& cost : solution_.limit_costs) {
      section.items.push_back(words::capital(cost.text) + ".");
    }
    return section;
  }

  Section assumptions() const {
    Section section{"What this plan takes for granted", {}, {}, {}};
    std::size_t defaults = 0;
    std::map<std::pair<std::string, std::string>, std::vector<std::string>> of_stands;
    for (const Assumption& assumption : tract_.assumed) {
      const auto of_stand = stand_and_key(assumption.pointer);
      if (assumption.why == "default") {
        ++defaults;
      } else if (of_stand) {
        of_stands[{of_stand->second, assumption.why}].push_back(of_stand->first);
      } else {
        section.items.push_back(fmt::format("{}, {}: {}.", assumption.pointer.substr(1),
                                            assumption.value_json, assumption.why));
      }
    }
    for (const auto& [what, names] : of_stands) {
      constexpr std::size_t most_named = 8;
      const std::string whose =
          names.size() <= most_named ? words::list(names) : fmt::format("{} stands", names.size());
      section.items.push_back(fmt::format("{} of {}: {}.", what.first, whose, what.second));
    }
    for (const std::string& sentence : solution_.assumed) {
      section.items.push_back(words::capital(sentence) + ".");
    }
    section.paragraphs.push_back(
        fmt::format("Where the file is silent, {} default{} were used; --format json and "
                    "\"staddle check\" list them.",
                    defaults, defaults == 1 ? "" : "s"));
    return section;
  }

  // The name of the stand and the key, of "/stands/3/stand/live_crown_ratio".
  std::optional<std::pair<std::string, std::string>> stand_and_key(
      const std::string& pointer) const {
    constexpr std::string_view before = "/stands/";
    if (!pointer.starts_with(before)) return std::nullopt;
    const std::size_t slash = pointer.find('/', before.size());
    const auto stand = std::stoul(pointer.substr(before.size()));
    return std::pair{tract_.stands.at(stand).scenario.title,
                     pointer.substr(pointer.rfind('/', std::string::npos) > slash
                                        ? pointer.find('/', slash + 1) + 1
                                        : slash + 1)};
  }

  static Section cautions() {
    Section section{"Cautions", {}, {}, {}};
    section.items = standing_cautions();
    return section;
  }

  std::string foot() const {
    const bool proved = solution_.status == Status::optimal;
    return fmt::format(
        "{}{} entered the linear program in {}. The arithmetic is "
        "exact; the growth is not (15 to 20 percent). This is neither an appraisal "
        "nor a land price.",
        proved ? fmt::format("Proof: no plan that keeps the limits is worth more "
                             "than {}, and this one is worth {}. ",
                             exact(solution_.bound), exact(solution_.present_value))
               : std::string(),
        words::counted(static_cast<double>(solution_.columns), "regime"),
        words::counted(solution_.rounds, "round"));
  }

  static std::string exact(Money amount) { return "$" + words::number(amount.in(dollars), 2); }

  const TractFile& tract_;
  const TractSolution& solution_;
  const PlanYears years_;
};

}  // namespace

Report tract_report(const TractFile& tract, const TractSolution& solution) {
  return TractTelling(tract, solution).tell();
}

std::string tract_text(const TractFile& tract, const TractSolution& solution) {
  return to_text(tract_report(tract, solution));
}

}  // namespace staddle
