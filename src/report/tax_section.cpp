// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "report/answer.h"
#include "report/cells.h"
#include "report/plan_words.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

class TaxTelling {
 public:
  explicit TaxTelling(const Answer& answer) : answer_(answer) {}

  Section tell() const {
    Section section{"Before and after federal tax", {rules(), verdict()}, {}, {}};
    section.tables.push_back(table());
    section.items.push_back(
        "The rates are the owner's, the plan is the one that is best before tax, and the discount "
        "rate is the same after tax. A price of land is not taxed.");
    section.items.push_back("This is not tax advice.");
    return section;
  }

 private:
  std::string rules() const {
    const TaxRules& rules = *answer_.scenario.tax;
    std::string text = fmt::format(
        "Timber sold is taxed at {} of what exceeds its basis, other income at {}, which costs "
        "save; inflation of {} a year shrinks basis and deductions.",
        words::percent(rules.long_term_rate), words::percent(rules.ordinary_rate),
        words::percent(rules.inflation));
    if (rules.basis > MoneyPerAcre()) {
      text += fmt::format(" The timber standing now has a basis of {} an acre.",
                          words::money(rules.basis));
    }
    return text + (rules.reforestation_deduction
                       ? " Planting is deducted, $10,000 at once and the rest over 84 months."
                       : " Planting is not deducted: it becomes the basis of the trees planted.");
  }

  std::string verdict() const {
    const Plan& best = answer_.advice.after_tax->best_after_tax;
    const MoneyPerAcre gain =
        best.after_tax->value.objective - answer_.advice.after_tax->best.value.objective;
    if (words::money(gain) == words::money(MoneyPerAcre())) {
      return "After tax the same plan, or one worth as much, is best.";
    }
    return fmt::format("After tax the best plan would be {}, worth {} an acre more after tax.",
                       plan_in_words(answer_.dates, best.regime), words::size_of(gain));
  }

  std::vector<Cell> row(const std::string& name, MoneyPerAcre before, MoneyPerAcre after) const {
    return {cells::words(name), cells::per_acre(before), cells::per_acre(after)};
  }

  Table table() const {
    const Advice& advice = answer_.advice;
    const AdviceAfterTax& taxed = *advice.after_tax;
    Table table{"", {{"plan", "", true}, {"before tax", "$/acre"}, {"after tax", "$/acre"}}, {}};
    table.rows.push_back(
        row("the best plan", advice.best.value.objective, taxed.best.value.objective));
    table.rows.push_back(row("the best plan after tax", taxed.best_after_tax.value.objective,
                             taxed.best_after_tax.after_tax->value.objective));
    for (std::size_t i = 0; i < taxed.regimes.size(); ++i) {
      table.rows.push_back(row(advice.regimes[i].report.name,
                               advice.regimes[i].report.value.objective,
                               taxed.regimes[i].value.objective));
    }
    for (std::size_t i = 0; i < taxed.alternatives.size(); ++i) {
      table.rows.push_back(row("best with " + advice.alternatives[i].report.name,
                               advice.alternatives[i].report.value.objective,
                               taxed.alternatives[i].value.objective));
    }
    if (advice.sell_today && taxed.sell_today) {
      table.rows.push_back(
          row("timber sold today", advice.sell_today->timber, taxed.sell_today->timber));
    }
    return table;
  }

  const Answer& answer_;
};

}  // namespace

std::optional<Section> tax_section(const Answer& answer) {
  if (!answer.advice.after_tax || !answer.scenario.tax) return std::nullopt;
  return TaxTelling(answer).tell();
}

}  // namespace staddle
