// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/hold_text.h"

#include <fmt/format.h>

#include <cmath>

#include "report/cells.h"
#include "report/dates.h"
#include "signs/plain_words.h"
#include "staddle/report/text.h"

namespace staddle {
namespace {

class HoldTelling {
 public:
  HoldTelling(const Scenario& scenario, const HoldAnswer& answer, const HoldAnswer* after_tax)
      : scenario_(scenario), answer_(answer), after_tax_(after_tax), dates_(scenario) {}

  Report tell() const {
    Report report;
    report.title = scenario_.title + ": hold or cut";
    report.sections = {ledger("If nothing is thinned", answer_.ledger, waiting())};
    if (answer_.after_best_thinning) {
      const auto& after = *answer_.after_best_thinning;
      report.sections.push_back(
          ledger("After the best thinning", after.ledger,
                 {fmt::format("The best single thinning takes {} of the basal area {}; the first "
                              "row is the stand just after it.",
                              words::removal(after.thinning.removal_fraction),
                              dates_.in(after.thinning.at))}));
    }
    if (after_tax_ != nullptr) report.sections.push_back(after_tax());
    report.foot =
        "Value is what a final harvest would bring, after fee, harvest tax and sale cost. Growth "
        "counts income less costs and the storm loss to be expected; it pays to hold while it "
        "exceeds the growth required: your rate on the timber and the land under it. The stand "
        "matures in the year in which selling is worth most today, land included; growth may "
        "fall short for a year and recover. The arithmetic is exact; the growth is not (15 to 20 "
        "percent). This is neither an appraisal nor a land price.";
    return report;
  }

 private:
  std::vector<std::string> waiting() const {
    if (!answer_.waiting) return {"No year of waiting is left within the ages allowed."};
    const Waiting& wait = *answer_.waiting;
    const bool gains = wait.gain >= dollars_per_acre(0);
    std::string text =
        fmt::format("If you wait {} more year{} you {} {}/ac", wait.years,
                    wait.years == 1 ? "" : "s", gains ? "gain" : "lose", words::size_of(wait.gain));
    if (wait.growth_per_yr) {
      text += fmt::format(", about {} % a year",
                          words::number(100.0 * std::fabs(*wait.growth_per_yr), 1));
    }
    const bool pays = wait.gain_today >= dollars_per_acre(0);
    return {text + ".",
            fmt::format("At your rate of {}, the land included, waiting so long is worth {} an "
                        "acre {} than selling now.",
                        words::percent(scenario_.costs.rate.per_year()),
                        words::size_of(wait.gain_today), pays ? "more" : "less")};
  }

  Section ledger(const std::string& title, const Ledger& ledger,
                 std::vector<std::string> paragraphs) const {
    paragraphs.push_back(maturity(ledger));
    Table table;
    cells::add_date_columns(dates_, table.columns);
    for (const ProductLimit& product : scenario_.products) {
      table.columns.push_back({words::product(product.name), "tons/acre"});
    }
    for (const Column& column :
         {Column{"value", "$/acre"}, Column{"more wood", "$/acre"},
          Column{"better products", "$/acre"}, Column{"growth", "percent"},
          Column{"required", "percent"}, Column{"sold then, worth today", "$/acre"},
          Column{"loss", "$/acre"}}) {
      table.columns.push_back(column);
    }
    for (const LedgerRow& row : ledger.years) table.rows.push_back(row_of(row));
    return {title, std::move(paragraphs), {std::move(table)}, {}};
  }

  // Before and after tax, without thinning.
  Section after_tax() const {
    Section section{"After federal tax", {}, {}, {"This is not tax advice."}};
    section.paragraphs.push_back(maturity(after_tax_->ledger));
    Table table;
    cells::add_date_columns(dates_, table.columns);
    for (const Column& column :
         {Column{"value before tax", "$/acre"}, Column{"value after tax", "$/acre"},
          Column{"sold then, worth today before tax", "$/acre"},
          Column{"sold then, worth today after tax", "$/acre"},
          Column{"loss after tax", "$/acre"}}) {
      table.columns.push_back(column);
    }
    for (std::size_t i = 0; i < answer_.ledger.years.size(); ++i) {
      const LedgerRow& before = answer_.ledger.years[i];
      const LedgerRow& after = after_tax_->ledger.years[i];
      std::vector<Cell> line;
      cells::add_date(dates_, before.at, line);
      line.push_back(cells::per_acre(before.stumpage));
      line.push_back(cells::per_acre(after.stumpage));
      line.push_back(cells::per_acre(before.forest_value_if_cut));
      line.push_back(cells::per_acre(after.forest_value_if_cut));
      line.push_back(cells::cost_per_acre(after.loss_against_best));
      table.rows.push_back(std::move(line));
    }
    section.tables.push_back(std::move(table));
    return section;
  }

  std::string maturity(const Ledger& ledger) const {
    const LedgerRow& first = ledger.years.front();
    const LedgerRow& last = ledger.years.back();
    if (ledger.matures_at == first.at) {
      return "The stand is mature: every later year of these is worth less today.";
    }
    return fmt::format("The stand matures {}{}.", dates_.in(ledger.matures_at),
                       ledger.matures_at == last.at
                           ? ", the last year allowed; it would pay to look further"
                           : "");
  }

  std::vector<Cell> row_of(const LedgerRow& row) const {
    std::vector<Cell> line;
    cells::add_date(dates_, row.at, line);
    for (const Yield& tons : row.tons) line.push_back(cells::number(tons.in(tons_per_acre), 1));
    line.push_back(cells::per_acre(row.stumpage));
    line.push_back(row.growth ? cells::per_acre(row.growth->volume) : cells::blank());
    line.push_back(row.growth ? cells::per_acre(row.growth->step_up) : cells::blank());
    for (const std::optional<double>& share : {row.value_growth, row.required}) {
      line.push_back(share ? cells::number(100.0 * *share, 1) : cells::blank());
    }
    line.push_back(cells::per_acre(row.forest_value_if_cut));
    line.push_back(cells::cost_per_acre(row.loss_against_best));
    return line;
  }

  const Scenario& scenario_;
  const HoldAnswer& answer_;
  const HoldAnswer* after_tax_;
  const Dates dates_;
};

}  // namespace

Report hold_report(const Scenario& scenario, const HoldAnswer& answer,
                   const HoldAnswer* after_tax) {
  return HoldTelling(scenario, answer, after_tax).tell();
}

std::string hold_text(const Scenario& scenario, const HoldAnswer& answer,
                      const HoldAnswer* after_tax) {
  return to_text(hold_report(scenario, answer, after_tax));
}

}  // namespace staddle
