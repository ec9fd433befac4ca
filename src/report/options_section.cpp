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
    if (limit.limit == residual_not_reached) {
      limits.push_back("the stand has not reached the residual, so nothing is cut then");
      continue;
    }
    limits.push_back(fmt::format("{} {}, allowed {}", limit_in_words(limit.limit),
                                 limit_value(limit.limit, limit.value),
                                 limit_value(limit.limit, limit.allowed)));
  }
  std::string text;
  for (const std::string& limit : limits) text += (text.empty() ? "" : "; ") + limit;
  return text;
}

// Options side by side, the best first.
class Options {
 public:
  explicit Options(const Answer& answer) : answer_(answer) {
    table_.columns = {{"option", "", true},
                      {"thinnings", "share of basal area", true},
                      {"final harvest", "", true},
                      {"worth", "$/acre"},
                      {"loss", "$/acre"},
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

std::string thinnings_in_words(std::size_t count) {
  return words::count(count) + (count < 2 ? " thinning" : " thinnings");
}

Table options(const Answer& answer) {
  const Advice& advice = answer.advice;
  const MoneyPerAcre best = advice.best.value.objective;
  Options table(answer);
  const std::size_t planned = answer.cuts.size();
  table.add(fmt::format("the plan ({})", thinnings_in_words(planned)), advice.best_plan.regime,
            best, dollars_per_acre(0));
  if (const auto& lighter = advice.third_instead) {
    table.add("at most a third at once", lighter->best.regime, best - lighter->cost,
              lighter->cost);
  }
  for (const Alternative& other : advice.alternatives) {
    const std::size_t count = static_cast<std::size_t>(other.thinnings);
    if (count == planned) continue;
    table.add(thinnings_in_words(count), other.report.regime(), other.report.value.objective,
              other.loss_against_best);
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

bool same_cuts(const Regime& a, const Regime& b) {
  return a.final_harvest == b.final_harvest &&
         std::ranges::equal(a.thinnings, b.thinnings, [](const Thinning& x, const Thinning& y) {
           return x.at == y.at && x.removal_fraction == y.removal_fraction;
         });
}

std::string without_guard(const Answer& answer, const GuardCost& guard) {
  const bool binds = guard.cost > dollars_per_acre(tolerance::tie);
  if (!guard.otherwise || !binds) return "the same";
  if (same_cuts(guard.otherwise->regime, answer.advice.best_plan.regime)) {
    return "the same; the stand after it gains";
  }
  return answer.brief(guard.otherwise->regime);
}

Table guards(const Answer& answer) {
  Table table{"", {{"guard", "", true}, {"cost", "$/acre"}, {"the plan without it", "", true}}, {}};
  for (const GuardCost& guard : answer.advice.guard_costs) {
    table.rows.push_back({cells::words(guard_in_words(guard.guard, answer.scenario.lattice.guards)),
                          cells::cost_per_acre(guard.cost),
                          cells::words(without_guard(answer, guard))});
  }
  return table;
}

Table survives(const Answer& answer) {
  Table table{"",
              {{"change", "", true},
               {"advice", "", true},
               {"best plan then", "", true},
               {"loss of keeping this one", "$/acre"}},
              {}};
  for (const Survival& survival : answer.advice.survives) {
    table.rows.push_back({cells::words(change_in_words(survival.change)),
                          cells::words(survival.same_advice ? "the same" : "another"),
                          cells::words(survival.best ? answer.brief(survival.best->regime)
                                                     : "no plan within the limits"),
                          cells::cost_per_acre(survival.kept_plan_loss)});
  }
  return table;
}

}  // namespace

Section options_section(const Answer& answer) {
  return {"Other ways, and what they are worth",
          {answer.advice.standing
               ? "Worth is the forest value: timber and land together, in today's money."
               : "Worth is the land expectation value: what bare land so managed for ever is worth "
                 "in today's money."},
          {options(answer)},
          {}};
}

std::optional<Section> guards_section(const Answer& answer) {
  if (answer.advice.guard_costs.empty()) return std::nullopt;
  return Section{
      "What the guards cost",
      {"Guards keep the plan inside what the trade holds prudent. The cost of one is what the best "
       "plan would gain without it, under equations that do not know the risk it guards against. "
       "The leave to open a dense stand further is an exception: its figure is what it earns."},
      {guards(answer)},
      {}};
}

std::optional<Section> survival_section(const Answer& answer) {
  if (answer.advice.survives.empty()) return std::nullopt;
  return Section{
      "What if growth or prices are different",
      {"The advice counts as the same where what is done this year does not change and every age "
       "stays within two years."},
      {survives(answer)},
      {}};
}

}  // namespace staddle
