// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/plan_table.h"

#include <fmt/format.h>

#include <algorithm>

#include "signs/plain_words.h"

namespace staddle::sheets {
namespace {

constexpr std::size_t most_columns_of_a_page = 18;

}  // namespace

PlanTable::PlanTable(Sheet& sheet, const PlanSheet& plan, const Scenario& scenario,
                     const Inputs& inputs)
    : sheet_(sheet),
      plan_(plan),
      scenario_(scenario),
      inputs_(inputs),
      years_(years_of(plan.report, scenario, plan.practices, plan.standing)),
      hazard_(scenario.hazard.active()) {}

void PlanTable::write() {
  place_columns();
  write_years();
  sheet_.text({price_row, tons_ - 1}, "at a thinning, $/ton", Look::note);
  sheet_.text({price_row + 1, tons_ - 1}, "at the end, $/ton", Look::note);
  write_prices(tons_, true);
  if (hazard_) write_prices(standing_tons_, false);
  sheet_.freeze({first_year_row, 3});
  sheet_.print_setup({.landscape = true,
                      .pages_wide = columns_.size() > most_columns_of_a_page ? 2 : 1,
                      .rows_on_top = {{heading_row, heading_row + 1}},
                      .columns_at_left = 3});
}

std::string PlanTable::all(int column) const {
  return range_name({first_year_row, column}, {last_row(), column});
}

Live PlanTable::in_row(const PlanYear& year, int column) const {
  return {cell_name({row_of(year), column}), value_in(column, year)};
}

double PlanTable::value_in(int column, const PlanYear& year) const {
  return values_[static_cast<std::size_t>(column)][static_cast<std::size_t>(year.from_now)];
}

void PlanTable::put(const PlanYear& year, Place place, const Live& formula, Look look) {
  sheet_.formula(place, formula, look);
  keep(year, place.column, formula.value());
}

void PlanTable::put(const PlanYear& year, Place place, double value, Look look) {
  sheet_.number(place, value, look);
  keep(year, place.column, value);
}

void PlanTable::keep(const PlanYear& year, int column, double value) {
  values_[static_cast<std::size_t>(column)][static_cast<std::size_t>(year.from_now)] = value;
}

int PlanTable::add(const std::string& heading, const std::string& unit, double width,
                   std::function<void(const PlanYear&, Place)> write) {
  columns_.push_back({heading, unit, width, std::move(write)});
  values_.emplace_back(years_.size(), 0.0);
  return static_cast<int>(columns_.size()) - 1;
}

int PlanTable::add_money(const std::string& heading,
                         std::function<std::optional<Live>(const PlanYear&)> amount) {
  return add(heading, "$/acre", 12, [this, amount](const PlanYear& year, Place place) {
    if (const auto live = amount(year)) put(year, place, *live, Look::dollars);
  });
}

void PlanTable::place_columns() {
  lay_out_dates();
  lay_out_shares();
  lay_out_tons();
  money_ = static_cast<int>(columns_.size());
  // The storm columns stand to the right of all others and are written before them.
  const int money_columns = (hazard_ ? 2 : 0) + 1 + (plan_.standing ? 0 : 1) +
                            (plan_.practices.empty() ? 0 : 1) + 2 +
                            static_cast<int>(scenario_.costs.flows.size());
  money_end_ = money_ + money_columns;
  income_ = money_end_;
  cost_ = income_ + 1;
  net_ = cost_ + 1;
  const int tax_columns = plan_.after_tax != nullptr ? 4 : 0;
  after_tax_ = net_ + tax_columns;          // after the present value, tax and relief
  standing_tons_ = net_ + 3 + tax_columns;  // after the present value and an empty column
  worth_ = standing_tons_ + static_cast<int>(inputs_.timber.size());
  salvaged_ = worth_ + 1;
  cleanup_ = salvaged_ + 1;
  lay_out_income();
  lay_out_costs();
  lay_out_sums();
  if (plan_.after_tax != nullptr) lay_out_tax();
  if (hazard_) lay_out_storms();
}

void PlanTable::lay_out_dates() {
  add("years from now", "", 8,
      [this](const PlanYear& year, Place place) { put(year, place, year.from_now, Look::whole); });
  add("age", "years", 7, [this](const PlanYear& year, Place place) {
    if (year.record != nullptr) put(year, place, year.at.whole(), Look::whole);
  });
  add("year", "", 8, [this](const PlanYear& year, Place place) {
    if (!scenario_.present_year) return;
    put(year, place, scenario_.present_year->whole() + year.from_now, Look::year);
  });
  discount_ = add("a dollar then, worth now", "$", 12, [this](const PlanYear& year, Place place) {
    put(year, place, compounded(inputs_.rate, -in_row(year, 0)), Look::share);
  });
}

void PlanTable::lay_out_shares() {
  entered_ = add("acres that begin the year", "share", 11, [this](const PlanYear& year, Place p) {
    if (year.from_now == 0) return put(year, p, 1.0, Look::share);
    const Live before(cell_name({p.row - 1, left_}), year.entered);
    if (year.record != nullptr) put(year, p, before, Look::share);
  });
  left_ = add("acres after its storms", "share", 11, [this](const PlanYear& year, Place place) {
    if (year.record != nullptr) put(year, place, year.left, Look::share);
  });
  bare_ = add("acres laid bare", "share", 10, [this](const PlanYear& year, Place place) {
    if (year.record == nullptr) return;
    const Live entered = in_row(year, entered_);
    put(year, place, year.harvest ? entered : entered - in_row(year, left_), Look::share);
  });
  waiting_ = add("acres waiting to be planted", "share", 11, [this](const PlanYear& year, Place p) {
    const int delay = scenario_.costs.regeneration_delay_yr;
    if (year.from_now == 0 || delay == 0) return;
    const int first = std::max(first_year_row, p.row - delay);
    put(year, p,
        {fmt::format("SUM({})", range_name({first, bare_}, {p.row - 1, bare_})), year.waiting},
        Look::share);
  });
}

void PlanTable::lay_out_tons() {
  add("what is done", "", 21, [this](const PlanYear& year, Place place) {
    if (year.harvest) return sheet_.text(place, "final harvest");
    if (year.thinning != nullptr) sheet_.text(place, fmt::format("thinning {}", year.entry));
  });
  tons_ = static_cast<int>(columns_.size());
  const std::size_t products = scenario_.products.size();
  for (std::size_t i = 0; i < inputs_.timber.size(); ++i) {
    const std::string name = words::product(inputs_.timber[i].name);
    add("cut: " + name, "tons/acre", 12, [this, i, products](const PlanYear& year, Place p) {
      const HarvestRecord& harvest = plan_.report.final_harvest;
      if (year.harvest && i < products) {
        put(year, p, harvest.tons[i].in(tons_per_acre), Look::tenths);
      } else if (year.harvest && plan_.standing) {
        const Live grown = compounded(*inputs_.timber[i].growth, in_row(year, 0));
        put(year, p, *inputs_.timber[i].tons_now * grown, Look::tenths);
      } else if (year.thinning != nullptr && i < products) {
        put(year, p, year.thinning->tons[i].in(tons_per_acre), Look::tenths);
      }
    });
  }
}

Live PlanTable::tons_times_prices(const PlanYear& year, int first_column, bool final,
                                  std::size_t timber) const {
  const int last_column = first_column + static_cast<int>(timber) - 1;
  const int prices = final ? price_row + 1 : price_row;
  double value = 0.0;
  for (std::size_t i = 0; i < timber; ++i) {
    const Inputs::Timber& sold = inputs_.timber[i];
    const double price = final ? sold.final_price.value() : sold.thinning_price->value();
    value += value_in(first_column + static_cast<int>(i), year) * price;
  }
  return {fmt::format("SUMPRODUCT({},{})",
                      range_name({row_of(year), first_column}, {row_of(year), last_column}),
                      range_with_fixed_rows({prices, first_column}, {prices, last_column})),
          value};
}

void PlanTable::lay_out_income() {
  add_money("timber sold, net", [this](const PlanYear& year) -> std::optional<Live> {
    if (year.thinning == nullptr && !year.harvest) return std::nullopt;
    const std::size_t timber = year.harvest ? inputs_.timber.size() : scenario_.products.size();
    const Live sold = tons_times_prices(year, tons_, year.harvest, timber) * inputs_.net_share();
    const Live& cost = year.harvest ? inputs_.final_sale_cost : inputs_.thinning_sale_cost;
    return in_row(year, left_) * (sold - cost);
  });
  if (!hazard_) return;
  add_money("storm salvage", [this](const PlanYear& year) -> std::optional<Live> {
    if (year.record == nullptr || year.from_now == 0) return std::nullopt;
    return in_row(year, entered_) * in_row(year, salvaged_) * in_row(year, worth_);
  });
  add_money("storm clean-up", [this](const PlanYear& year) -> std::optional<Live> {
    if (year.record == nullptr || year.from_now == 0) return std::nullopt;
    return -(in_row(year, entered_) * in_row(year, cleanup_));
  });
}

void PlanTable::lay_out_costs() {
  const Costs& costs = scenario_.costs;
  if (!plan_.standing) {
    planting_ = add_money("planting", [this](const PlanYear& year) -> std::optional<Live> {
      if (year.from_now != 0) return std::nullopt;
      return -inputs_.establishment;
    });
  }
  if (!plan_.practices.empty()) {
    add_money("practices", [this](const PlanYear& year) -> std::optional<Live> {
      if (year.practices.empty()) return std::nullopt;
      Live sum = plan_.practice_cells[year.practices.front()];
      for (std::size_t i = 1; i < year.practices.size(); ++i) {
        sum = sum + plan_.practice_cells[year.practices[i]];
      }
      return -(in_row(year, left_) * sum);
    });
  }
  const auto every_year = [this](const PlanYear& year, const Live& amount) -> std::optional<Live> {
    if (year.from_now == 0) return std::nullopt;
    return (in_row(year, entered_) + in_row(year, waiting_)) * amount;
  };
  add_money("annual cost", [this, every_year](const PlanYear& year) {
    return every_year(year, -inputs_.annual_cost);
  });
  add_money("annual income", [this, every_year](const PlanYear& year) {
    return every_year(year, inputs_.annual_income);
  });
  for (std::size_t i = 0; i < costs.flows.size(); ++i) {
    add_money(costs.flows[i].what, [this, i](const PlanYear& year) -> std::optional<Live> {
      if (std::ranges::find(year.flows, i) == year.flows.end()) return std::nullopt;
      return in_row(year, entered_) * inputs_.flows[i];
    });
  }
}

void PlanTable::lay_out_sums() {
  const auto sum_where = [this](const PlanYear& year, bool income) -> Live {
    double sum = 0.0;
    for (int column = money_; column < money_end_; ++column) {
      const double value = value_in(column, year);
      if (income ? value > 0.0 : value < 0.0) sum += value;
    }
    return {fmt::format("SUMIF({},\"{}0\")",
                        range_name({row_of(year), money_}, {row_of(year), money_end_ - 1}),
                        income ? ">" : "<"),
            sum};
  };
  add_money("all income", [sum_where](const PlanYear& year) { return sum_where(year, true); });
  add_money("all cost", [sum_where](const PlanYear& year) { return sum_where(year, false); });
  add_money("net",
            [this](const PlanYear& year) { return in_row(year, income_) + in_row(year, cost_); });
  add_money("net, worth now",
            [this](const PlanYear& year) { return in_row(year, net_) * in_row(year, discount_); });
}

// What the evaluator's money after tax has beyond the plain rates: the basis that goes with
// a cut, and what deducting its cost takes off planting.
double PlanTable::relief_in(const PlanYear& year) const {
  const double kept = 1.0 - scenario_.tax->long_term_rate;
  MoneyPerAcre relief;
  for (const CashFlowLine& line : plan_.after_tax->cash_flow) {
    if (line.at == year.at && line.kind != CashFlowLine::Kind::other) relief += line.amount;
  }
  for (const CashFlowLine& line : plan_.report.cash_flow) {
    if (line.at != year.at || line.kind == CashFlowLine::Kind::other) continue;
    relief += -line.amount * (line.kind == CashFlowLine::Kind::cut ? kept : 1.0);
  }
  return relief.in(dollars_per_acre);
}

// Tax follows prices and rates; what basis and deductions save is a number.
void PlanTable::lay_out_tax() {
  const int tax = net_ + 2, relief = net_ + 3;
  add_money("tax; a saving if positive", [this](const PlanYear& year) {
    Live timber = in_row(year, money_);
    if (hazard_) timber = timber + in_row(year, money_ + 1);
    Live other = in_row(year, net_) - timber;
    // What planting saves stands in its relief, all of it.
    if (planting_ >= 0) other = other - in_row(year, planting_);
    return -(*inputs_.long_term_rate * timber + *inputs_.ordinary_rate * other);
  });
  add("relief: basis and planting", "$/acre", 11, [this](const PlanYear& year, Place place) {
    put(year, place, relief_in(year), Look::dollars);
  });
  add_money("net after tax", [this, tax, relief](const PlanYear& year) {
    return in_row(year, net_) + in_row(year, tax) + in_row(year, relief);
  });
  add_money("net after tax, worth now", [this](const PlanYear& year) {
    return in_row(year, after_tax_) * in_row(year, discount_);
  });
}

void PlanTable::lay_out_storms() {
  add("", "", 3, [](const PlanYear&, Place) {});
  const std::size_t products = scenario_.products.size();
  for (std::size_t i = 0; i < inputs_.timber.size(); ++i) {
    add("standing: " + words::product(inputs_.timber[i].name), "tons/acre", 12,
        [this, i, products](const PlanYear& year, Place place) {
          if (year.record == nullptr) return;
          if (i < products) {
            put(year, place, year.record->tons[i].in(tons_per_acre), Look::tenths);
          } else if (plan_.standing) {
            const Live grown = compounded(*inputs_.timber[i].growth, in_row(year, 0));
            put(year, place, *inputs_.timber[i].tons_now * grown, Look::tenths);
          }
        });
  }
  add_money("standing timber, worth", [this](const PlanYear& year) -> std::optional<Live> {
    if (year.record == nullptr) return std::nullopt;
    return tons_times_prices(year, standing_tons_, true, inputs_.timber.size());
  });
  add("of it lost and salvaged", "share of acres", 11, [this](const PlanYear& year, Place place) {
    if (year.record == nullptr) return;
    const MoneyPerAcre worth = year.record->stumpage_value;
    const MoneyPerAcre salvage = year.record->expected_salvage;
    const bool any = worth > dollars_per_acre(0);
    put(year, place, any ? salvage / worth : 0.0, Look::share);
  });
  add("clean-up to be expected", "$/acre", 11, [this](const PlanYear& year, Place place) {
    if (year.record == nullptr) return;
    put(year, place, year.record->expected_cleanup.in(dollars_per_acre), Look::dollars);
  });
}

void PlanTable::write_prices(int first_column, bool thinning_too) {
  for (std::size_t i = 0; i < inputs_.timber.size(); ++i) {
    const int column = first_column + static_cast<int>(i);
    const Inputs::Timber& sold = inputs_.timber[i];
    if (thinning_too && sold.thinning_price) {
      sheet_.formula({price_row, column}, *sold.thinning_price, Look::dollars);
    }
    sheet_.formula({price_row + 1, column}, sold.final_price, Look::dollars);
  }
}

void PlanTable::write_years() {
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    const int column = static_cast<int>(i);
    const YearColumn& told = columns_[i];
    sheet_.width(column, column, told.width);
    if (told.heading.empty()) continue;
    sheet_.text({heading_row, column}, told.heading, Look::column);
    sheet_.text({heading_row + 1, column}, told.unit.empty() ? " " : told.unit, Look::unit);
  }
  sheet_.height(heading_row, 60);
  // Storms first: the money of a year looks to the right.
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < columns_.size(); ++i) order.push_back(i);
  std::stable_partition(order.begin(), order.end(), [this](std::size_t column) {
    const int c = static_cast<int>(column);
    return c < money_ || c >= standing_tons_;
  });
  for (const PlanYear& year : years_) {
    for (const std::size_t column : order) {
      columns_[column].write(year, {row_of(year), static_cast<int>(column)});
    }
  }
}

}  // namespace staddle::sheets
