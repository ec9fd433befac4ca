// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "report/answer.h"
#include "report/cells.h"
#include "report/changes.h"
#include "report/key_words.h"
#include "signs/plain_words.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

std::string breaks_in_words(const std::vector<BrokenLimit>& breaks) {
  std::vector<std::string> limits;
  for (const BrokenLimit& limit : breaks) {
    limits.push_back(fmt::format("{}: {:.4g}, allowed {:.4g}", limit_in_words(limit.limit),
                                 limit.value, limit.allowed));
  }
  std::string text;
  for (const std::string& limit : limits) text += (text.empty() ? "" : "; ") + limit;
  return text;
}

// Options side by side, the best first.
class Options {
 public:
  explicit Options(const Answer& answer) : answer_(answer) {
    table_.title = "Options side by side";
    table_.columns = {{"option", "", true},
                      {"thinnings", "share of basal area", true},
                      {"final harvest", "", true},
                      {"worth", "$/acre"},
                      {"less than the best by", "$/acre"},
                      {"limits broken", "", true}};
  }

  void add(const std::string& name, const Regime& regime, MoneyPerAcre worth, MoneyPerAcre loss,
           const std::string& remark = "") {
    any_remark_ = any_remark_ || !remark.empty();
    table_.rows.push_back({cells::words(name), cells::words(answer_.cuts_brief(regime)),
                           cells::words(answer_.dates.name(regime.final_harvest)),
                           cells::per_acre(worth), cells::per_acre(loss), cells::words(remark)});
  }

  Table finish() {
    if (!any_remark_) {
      table_.columns.pop_back();
      for (auto& row : table_.rows) row.pop_back();
    }
    return std::move(table_);
  }

 private:
  const Answer& answer_;
  Table table_;
  bool any_remark_ = false;
};

Table options(const Answer& answer) {
  const Advice& advice = answer.advice;
  const MoneyPerAcre best = advice.best.value.objective;
  Options table(answer);
  table.add("the plan", advice.best_plan.regime, best, dollars_per_acre(0));
  if (const auto lighter = answer.lighter()) {
    table.add("at most a third at once", lighter->regime, best - lighter->cost, lighter->cost);
  }
  for (const Alternative& other : advice.alternatives) {
    const std::size_t count = static_cast<std::size_t>(other.thinnings);
    table.add(fmt::format("{} {}", words::count(count), count == 1 ? "thinning" : "thinnings"),
              other.report.regime(), other.report.value.objective, other.loss_against_best);
  }
  if (advice.wait_five) {
    table.add("nothing for five years", advice.wait_five->plan.regime,
              advice.wait_five->plan.value.objective, advice.wait_five->loss_against_best);
  }
  if (advice.sell_today) {
    table.add("sell everything today", {{}, answer.dates.present()},
              best - advice.sell_today->loss_against_best, advice.sell_today->loss_against_best);
  }
  for (const StatedAnswer& stated : advice.regimes) {
    table.add(fmt::format("yours: {}", stated.report.name), stated.report.regime(),
              stated.report.value.objective, stated.loss_against_best,
              breaks_in_words(stated.breaks));
  }
  return table.finish();
}

std::optional<Table> guards(const Answer& answer) {
  if (answer.advice.guard_costs.empty()) return std::nullopt;
  Table table{"What the guards cost",
              {{"guard", "", true}, {"cost", "$/acre"}, {"the plan without it", "", true}},
              {}};
  for (const GuardCost& guard : answer.advice.guard_costs) {
    const bool binds = guard.cost > dollars_per_acre(tolerance::tie);
    table.rows.push_back({cells::words(guard_in_words(guard.guard, answer.scenario.lattice.guards)),
                          cells::per_acre(guard.cost),
                          cells::words(binds && guard.otherwise
                                           ? answer.brief(guard.otherwise->regime)
                                           : "the same")});
  }
  return table;
}

std::optional<Table> survives(const Answer& answer) {
  if (answer.advice.survives.empty()) return std::nullopt;
  Table table{"What if growth or prices are different",
              {{"change", "", true},
               {"advice", "", true},
               {"best plan then", "", true},
               {"keeping this plan loses", "$/acre"}},
              {}};
  for (const Survival& survival : answer.advice.survives) {
    table.rows.push_back({cells::words(change_in_words(survival.change)),
                          cells::words(survival.same_advice ? "the same" : "another"),
                          cells::words(survival.best ? answer.brief(survival.best->regime)
                                                     : "no plan within the limits"),
                          cells::per_acre(survival.kept_plan_loss)});
  }
  return table;
}

}  // namespace

Section options_section(const Answer& answer) {
  Section section{"Other ways, and what they are worth", {}, {options(answer)}, {}};
  section.paragraphs.push_back(
      answer.advice.standing
          ? "Worth is the forest value: timber and land together, in today's money."
          : "Worth is the land expectation value: what bare land so managed for ever is worth in "
            "today's money.");
  if (const std::optional<Table> table = guards(answer)) {
    section.paragraphs.push_back(
        "Guards keep the plan inside what the trade holds prudent. Their cost is what the best "
        "plan gains without each, under equations that do not know the risk it guards against. "
        "The leave to open a dense stand further is an exception: its figure is what it earns.");
    section.tables.push_back(*table);
  }
  if (const std::optional<Table> table = survives(answer)) {
    section.paragraphs.push_back(
        "The advice counts as the same where what is done this year does not change and every "
        "age stays within two years.");
    section.tables.push_back(*table);
  }
  return section;
}

}  // namespace staddle
