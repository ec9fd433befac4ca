// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/sheet_option.h"

#include <fmt/format.h>

#include "signs/plain_words.h"

namespace staddle::sheets {
namespace {

constexpr int results_row = 4;  // heading of the results
constexpr int label_column = 0, per_acre_column = 5, tract_column = 6, solved_column = 7;

// What a plan is worth, above its years.
struct PlanResults {
  Sheet& sheet;
  const PlanSheet& plan;
  const Scenario& scenario;
  const Inputs& inputs;
  const PlanTable& table;

  PlanCells write();
  void write_after_tax(int row, const Live& land_weight);
  Live write_money_result(int row, const std::string& label, const Live& formula, double solved,
                          Look look = Look::dollars);
  std::string write_ratio_result(int row, const std::string& label, const std::string& formula,
                                 std::optional<double> solved, Look look,
                                 const std::string& reason);
};

Live PlanResults::write_money_result(int row, const std::string& label, const Live& formula,
                                     double solved, Look look) {
  const Look tract = look == Look::total ? Look::total_tract : Look::tract;
  sheet.text({row, label_column}, label, look == Look::total ? Look::heading : Look::plain);
  sheet.formula({row, per_acre_column}, Live(formula.formula(), solved), look);
  const Live cell(cell_name({row, per_acre_column}), solved);
  sheet.formula({row, tract_column}, cell * inputs.acres, tract);
  sheet.number({row, solved_column}, solved, Look::dollars);
  return cell;
}

std::string PlanResults::write_ratio_result(int row, const std::string& label,
                                            const std::string& formula,
                                            std::optional<double> solved, Look look,
                                            const std::string& reason) {
  sheet.text({row, label_column}, label);
  const Place place{row, per_acre_column};
  if (solved) {
    sheet.formula(place, Live(formula, *solved), look);
    sheet.number({row, solved_column}, *solved, look);
  } else {
    sheet.formula(place, formula, "none", look);
    sheet.text({row, solved_column}, "none");
    sheet.text({row, solved_column + 1}, reason, Look::note);
  }
  return sheet.seen_from_outside(place, 0).formula();
}

void PlanResults::write_after_tax(int row, const Live& land_weight) {
  if (plan.after_tax == nullptr) return;
  const RegimeValue& value = plan.after_tax->value;
  const double npv_now = value.net_present_value.in(dollars_per_acre);
  const Live npv = write_money_result(
      row, "this rotation alone, after tax",
      {fmt::format("SUMPRODUCT({},{})", table.discounts(), table.net_after_tax()), npv_now},
      npv_now);
  write_money_result(row + 1,
                     plan.standing ? "timber and land, after tax" : "bare land (LEV), after tax",
                     plan.standing ? npv + land_weight * *inputs.land_after_tax
                                   : npv / (Live::constant(1) - land_weight),
                     value.objective.in(dollars_per_acre));
}

PlanCells PlanResults::write() {
  const RegimeReport& report = plan.report;
  const RegimeValue& value = report.value;
  const auto dollars_of = [](MoneyPerAcre money) { return money.in(dollars_per_acre); };
  int row = results_row;
  sheet.text({row, label_column}, "What it is worth", Look::heading);
  sheet.text({row, per_acre_column}, "$/acre", Look::column);
  sheet.text({row, tract_column}, "$, all acres", Look::column);
  sheet.text({row, solved_column}, "as solved", Look::column);

  const int value_row = ++row, npv_row = ++row, land_row = ++row;
  const double npv_now = dollars_of(value.net_present_value);
  const Live npv = write_money_result(
      npv_row, "this rotation alone, without land (NPV)",
      {fmt::format("SUMPRODUCT({},{})", table.discounts(), table.net()), npv_now}, npv_now);
  const int delay = scenario.costs.regeneration_delay_yr;
  const Live weight =
      Live(fmt::format("SUMPRODUCT({},{})", table.discounts(), table.laid_bare()),
           value.land_weight) *
      Live(fmt::format("(1+{})^-{}", inputs.rate.formula(), delay), 1.0, Live::Binds::tightly);
  sheet.text({land_row, label_column}, "a dollar of land to come, worth now");
  sheet.formula({land_row, per_acre_column}, Live(weight.formula(), value.land_weight),
                Look::share);
  sheet.number({land_row, solved_column}, value.land_weight, Look::share);
  const Live land_weight(cell_name({land_row, per_acre_column}), value.land_weight);
  const Live worth =
      plan.standing ? npv + land_weight * *inputs.land : npv / (Live::constant(1) - land_weight);
  const double worth_now = dollars_of(value.objective);
  write_money_result(value_row,
                     plan.standing ? "Timber and land (forest value)" : "Bare land (LEV)", worth,
                     worth_now, Look::total);
  const Live worth_cell(cell_name({value_row, per_acre_column}), worth_now);
  const double annual_now = dollars_of(report.equal_annual_equivalent);
  const int annual_row = ++row;
  write_money_result(annual_row, "the same as so much every year for ever",
                     inputs.rate * worth_cell, annual_now);

  write_after_tax(results_row + 7, land_weight);

  const std::string income = fmt::format("SUMPRODUCT({},{})", table.discounts(), table.income());
  const std::string cost = fmt::format("SUMPRODUCT({},{})", table.discounts(), table.cost());
  PlanCells cells{sheet.seen_from_outside({value_row, per_acre_column}, worth_now),
                  sheet.seen_from_outside({npv_row, per_acre_column}, npv_now),
                  sheet.seen_from_outside({annual_row, per_acre_column}, annual_now),
                  "",
                  "",
                  report.benefit_cost_ratio,
                  report.internal_rate_of_return};
  cells.benefit_cost =
      write_ratio_result(++row, "income over cost, both worth now",
                         fmt::format("IF({1}<0,-{0}/{1},\"none\")", income, cost),
                         report.benefit_cost_ratio, Look::dollars, "nothing is ever paid out");
  const std::string net = table.net();
  const std::string rate =
      plan.standing
          ? "\"none\""
          : fmt::format("IF(AND(MIN({0})<0,MAX({0})>0),IFERROR(IRR({0},{1}),\"none\"),\"none\")",
                        net, report.internal_rate_of_return.value_or(0.1));
  cells.internal_rate = write_ratio_result(++row, "rate of return of one rotation (IRR)", rate,
                                           report.internal_rate_of_return, Look::percent,
                                           report.internal_rate_of_return_reason);
  return cells;
}

}  // namespace

PlanCells write_plan(Sheet& sheet, const PlanSheet& plan, const Scenario& scenario,
                     const Inputs& inputs) {
  sheet.text({0, 0}, words::capital(plan.name), Look::title);
  sheet.height(0, 22);
  sheet.text({1, 0}, words::capital(plan.words) + ".");
  sheet.text({2, 0},
             "An acre, in today's dollars. The cuts and tons are those of this plan and stay; "
             "money follows the sheet \"Prices and rate\".",
             Look::note);
  PlanTable table(sheet, plan, scenario, inputs);
  table.write();
  return PlanResults{sheet, plan, scenario, inputs, table}.write();
}

}  // namespace staddle::sheets
