// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/vary_text.h"

#include <fmt/format.h>

#include <algorithm>

#include "report/cells.h"
#include "report/plan_words.h"
#include "signs/plain_words.h"
#include "staddle/report/text.h"

namespace staddle {
namespace {

// A table has no more columns than fit the width of a page.
constexpr std::size_t most_columns_across = 7;

class VaryTelling {
 public:
  VaryTelling(const Scenario& scenario, const VarySolution& solution)
      : scenario_(scenario), solution_(solution), dates_(scenario) {}

  Report tell() const {
    Report report;
    report.title = scenario_.title + ": what would change the advice";
    report.head = {fmt::format("Values are {} in today's dollars an acre, found anew in every "
                               "case.",
                               value_name())};
    report.sections = {in_short(), table_of_cells()};
    if (solution_.regimes.size() > 1) report.sections.push_back(losses());
    if (!solution_.one_at_a_time.empty()) report.sections.push_back(spans());
    if (solution_.grid) report.sections.push_back(grid());
    report.sections.push_back(break_evens());
    if (scenario_.tax) report.sections.push_back(after_tax());
    report.foot =
        "Every case was searched whole: no other plan of the choices asked for is worth more "
        "there. The arithmetic is exact; the growth is not (15 to 20 percent).";
    return report;
  }

 private:
  std::string value_name() const {
    return solution_.standing ? "forest value (timber and land)" : "land expectation value";
  }

  std::string plan(const VaryAnswer& answer) const {
    if (!answer.best) return "no plan: " + answer.reason;
    return plan_in_words(dates_, answer.best->regime);
  }

  static Cell value(const std::optional<MoneyPerAcre>& amount) {
    return amount ? cells::per_acre(*amount) : cells::blank();
  }

  Section in_short() const {
    Section section{"In short", {}, {}, {}};
    if (!solution_.base.best) {
      section.paragraphs.push_back("No plan is left: " + solution_.base.reason + ".");
      return section;
    }
    section.items.push_back(fmt::format("As things are the best plan is {}, worth {} an acre.",
                                        plan(solution_.base),
                                        words::money(*solution_.base.value())));
    if (const auto& place = solution_.least_worst_loss) {
      section.items.push_back(never_far(solution_.regimes[*place]));
    }
    if (const auto& place = solution_.best_on_average) {
      const RegimeLosses& row = solution_.regimes[*place];
      const bool told = place == solution_.least_worst_loss;
      section.items.push_back(fmt::format("Best on average: {}, {} an acre {} each case's best.",
                                          told ? "the same plan" : plan_of(row),
                                          words::size_of(*row.mean),
                                          *row.mean < MoneyPerAcre() ? "above" : "from"));
    }
    return section;
  }

  std::string never_far(const RegimeLosses& row) const {
    if (*row.worst < MoneyPerAcre()) {
      return fmt::format("Above the best in all {} cases, because it breaks the limits asked for: "
                         "{}, by {} an acre or more.",
                         solution_.cells.size(), plan_of(row), words::size_of(*row.worst));
    }
    return fmt::format("Never far from the best: {}. Over all {} cases it is never more than {} an "
                       "acre from that case's best.",
                       plan_of(row), solution_.cells.size(), words::size_of(*row.worst));
  }

  std::string plan_of(const RegimeLosses& row) const {
    return row.name + " (" + plan_in_words(dates_, row.regime) + ")";
  }

  static std::string rate(DiscountRate rate) {
    return words::number(100.0 * rate.per_year(), 2);
  }

  Section table_of_cells() const {
    Section section{"Rates and prices", {}, {}, {}};
    Table prices{"Price sets", {{"prices", "", true}}, {}};
    for (const ProductLimit& product : scenario_.products) {
      prices.columns.push_back({words::product(product.name), "$/ton"});
    }
    prices.columns.push_back({"weight", ""});
    for (const PriceScenario& set : solution_.price_scenarios) {
      std::vector<Cell> row{cells::words(set.name)};
      for (const Price price : set.stumpage) {
        row.push_back(cells::number(price.in(dollars_per_ton), 2));
      }
      row.push_back(cells::number(set.weight, 2));
      prices.rows.push_back(std::move(row));
    }
    Table table{"The best plan in each case",
                {{"rate", "percent"}, {"prices", "", true}, {"value", "$/acre"},
                 {"best plan", "", true}},
                {}};
    for (const VaryCell& cell : solution_.cells) {
      table.rows.push_back({{rate(cell.rate), 100.0 * cell.rate.per_year()},
                            cells::words(solution_.price_scenarios[cell.price_scenario].name),
                            value(cell.answer.value()), cells::words(plan(cell.answer))});
    }
    section.tables = {std::move(prices), std::move(table)};
    return section;
  }

  // The plans stay those found before tax.
  Section after_tax() const {
    Section section{"Before and after federal tax", {}, {}, {}};
    Table table{"The same plans",
                {{"rate", "percent"},
                 {"prices", "", true},
                 {"value before", "$/acre"},
                 {"value after", "$/acre"}},
                {}};
    for (const VaryCell& cell : solution_.cells) {
      table.rows.push_back({{rate(cell.rate), 100.0 * cell.rate.per_year()},
                            cells::words(solution_.price_scenarios[cell.price_scenario].name),
                            value(cell.answer.value()), value(cell.answer.value_after_tax())});
    }
    section.tables.push_back(std::move(table));
    for (const BreakEven& entry : solution_.break_evens) {
      if (!entry.value || !entry.after_tax || !entry.after_tax->value) continue;
      if (*entry.value == *entry.after_tax->value) continue;
      section.items.push_back(fmt::format("{}, {}: at {} before tax, at {} after it.",
                                          words::capital(figure(entry.parameter)), entry.what,
                                          point(entry, *entry.value),
                                          point(entry, *entry.after_tax->value)));
    }
    section.items.push_back("This is not tax advice.");
    return section;
  }

  Section losses() const {
    Section section{"Each plan in every case", {}, {}, {}};
    section.paragraphs.push_back("Dollars an acre less than that case's best. A plan that breaks "
                                 "the limits asked for may be worth more: its loss is negative.");
    Table worst{"",
                {{"plan", "", true}, {"worst loss", "$/acre"}, {"mean loss", "$/acre"}},
                {}};
    for (const RegimeLosses& row : solution_.regimes) {
      worst.rows.push_back({cells::words(row.name), value(row.worst), value(row.mean)});
    }
    section.tables.push_back(std::move(worst));
    for (std::size_t from = 0; from < solution_.regimes.size(); from += most_columns_across) {
      section.tables.push_back(loss_by_case(from));
    }
    return section;
  }

  Table loss_by_case(std::size_t from) const {
    const std::size_t to = std::min(from + most_columns_across, solution_.regimes.size());
    Table table{"Loss by case", {{"rate", "percent"}, {"prices", "", true}}, {}};
    for (std::size_t i = from; i < to; ++i) {
      table.columns.push_back({solution_.regimes[i].name, "$/acre"});
    }
    for (std::size_t cell = 0; cell < solution_.cells.size(); ++cell) {
      const VaryCell& place = solution_.cells[cell];
      std::vector<Cell> row{
          {rate(place.rate), 100.0 * place.rate.per_year()},
          cells::words(solution_.price_scenarios[place.price_scenario].name)};
      for (std::size_t i = from; i < to; ++i) row.push_back(value(solution_.regimes[i].loss[cell]));
      table.rows.push_back(std::move(row));
    }
    return table;
  }

  // Parameters as files write them are keys; people read their meaning.
  std::string name_of(const Parameter& parameter) const {
    switch (parameter.kind) {
      case Parameter::Kind::product_price:
        return "price of " + words::product(parameter.name);
      case Parameter::Kind::establishment:
        return "establishment cost";
      case Parameter::Kind::annual_cost:
        return "annual cost";
      case Parameter::Kind::real_discount_rate:
        return "discount rate";
      case Parameter::Kind::site_index:
        return "site index, ft";
      case Parameter::Kind::planted:
        return "planted trees per acre";
      case Parameter::Kind::thinning_price_factor:
        return "thinning price factor";
      case Parameter::Kind::storm_odds_ratio:
        return "storm odds ratio after thinning";
      case Parameter::Kind::growth_multiplier:
        return "growth multiplier";
    }
    return parameter.name;
  }

  static std::string value_in_words(const Parameter& parameter, double value) {
    if (parameter.is_relative()) {
      return (value > 0 ? "+" : "") + words::number(100.0 * value, 2) + " percent";
    }
    if (parameter.kind == Parameter::Kind::real_discount_rate) {
      return words::number(100.0 * value, 2) + " percent";
    }
    return fmt::format("{:.6g}", value);
  }

  Section spans() const {
    Section section{one_at_a_time_title, {}, {}, {}};
    section.paragraphs.push_back(
        "Sorted by how far the value swings. \"Held\": the best plan of today kept all the same; "
        "\"anew\": the best plan found again.");
    Table table{"",
                {{"figure", "", true},
                 {"from", "", true},
                 {"to", "", true},
                 {"held, low", "$/acre"},
                 {"held, high", "$/acre"},
                 {"anew, low", "$/acre"},
                 {"anew, high", "$/acre"},
                 {"plan changes", "", true}},
                {}};
    for (const OneAtATime& row : solution_.one_at_a_time) {
      const Parameter& parameter = row.span.parameter;
      table.rows.push_back({cells::words(name_of(parameter)),
                            cells::words(value_in_words(parameter, row.span.low)),
                            cells::words(value_in_words(parameter, row.span.high)),
                            value(row.plan_held[0]), value(row.plan_held[1]),
                            value(row.reoptimised[0].value()), value(row.reoptimised[1].value()),
                            cells::words(change(row))});
    }
    section.tables.push_back(std::move(table));
    return section;
  }

  static std::string change(const OneAtATime& row) {
    std::vector<std::string> at;
    for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
      if (!row.plan_changes[end]) continue;
      at.push_back(row.changes_at[end]
                       ? "at " + value_in_words(row.span.parameter, *row.changes_at[end])
                       : std::string(end == 0 ? "at the low end" : "at the high end"));
    }
    return at.empty() ? "no" : words::list(at);
  }

  Section grid() const {
    const GridQuestion& question = solution_.grid->question;
    const Parameter &x = question.x.parameter, &y = question.y.parameter;
    Section section{"Two figures at a time", {}, {}, {}};
    section.paragraphs.push_back(fmt::format("Value in dollars an acre: {} across, {} down.",
                                             name_of(x), name_of(y)));
    for (std::size_t from = 0; from < question.x.values.size(); from += most_columns_across) {
      const std::size_t to = std::min(from + most_columns_across, question.x.values.size());
      Table table{"", {{name_of(y), "", true}}, {}};
      for (std::size_t i = from; i < to; ++i) {
        table.columns.push_back({value_in_words(x, question.x.values[i]), "$/acre"});
      }
      for (std::size_t row = 0; row < question.y.values.size(); ++row) {
        std::vector<Cell> line{cells::words(value_in_words(y, question.y.values[row]))};
        for (std::size_t i = from; i < to; ++i) {
          line.push_back(value(solution_.grid->cells[row][i].value()));
        }
        table.rows.push_back(std::move(line));
      }
      section.tables.push_back(std::move(table));
    }
    return section;
  }

  std::string figure(const std::string& key) const {
    if (key == "real_discount_rate") return "discount rate";
    if (key == "establishment_usd_ac") return "establishment cost";
    if (key == "thinning_price_factor") return "thinning price factor";
    return "price of " + words::product(key);
  }

  static std::string point(const BreakEven& entry, double value) {
    if (entry.unit == "per year") return words::number(100.0 * value, 2) + " percent";
    if (entry.unit == "$/ton") return "$" + words::number(value, 2) + " a ton";
    if (entry.unit == "$/ac") return "$" + words::number(value, 2) + " an acre";
    return words::number(value, 4);
  }

  Section break_evens() const {
    Section section{"Where the advice turns", {}, {}, {}};
    section.paragraphs.push_back(
        "The value nearest to today's at which each thing turns, all else as it is. Just inside "
        "and just outside it were solved to prove it.");
    Table table{"", {{"figure", "", true}, {"what turns", "", true}, {"at", "", true}}, {}};
    for (const BreakEven& entry : solution_.break_evens) {
      const std::string at =
          entry.value ? point(entry, *entry.value)
          : entry.reason.starts_with("none in range")
              ? fmt::format("none from {} to {}", point(entry, entry.searched[0]),
                            point(entry, entry.searched[1]))
              : entry.reason;
      table.rows.push_back(
          {cells::words(figure(entry.parameter)), cells::words(entry.what), cells::words(at)});
    }
    section.tables.push_back(std::move(table));
    return section;
  }

  const Scenario& scenario_;
  const VarySolution& solution_;
  Dates dates_;
};

}  // namespace

Report vary_report(const Scenario& scenario, const VarySolution& solution) {
  return VaryTelling(scenario, solution).tell();
}

std::string vary_text(const Scenario& scenario, const VarySolution& solution) {
  return to_text(vary_report(scenario, solution));
}

}  // namespace staddle
