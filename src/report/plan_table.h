// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "report/plan_years.h"
#include "report/sheet_inputs.h"
#include "report/workbook.h"

namespace staddle::sheets {

// A way to manage the stand, or the rotation that follows it.
struct PlanSheet {
  std::string name;   // "the plan"
  std::string words;  // "a third in 2029, final harvest in 2045"
  const RegimeReport& report;
  bool standing;  // begins with the stand of the scenario, not with bare land
  const std::vector<Practice>& practices;
  const std::vector<Live>& practice_cells;
  const RegimeReport* after_tax;  // the same told after tax; null: tax is not asked for
};

// The cash flow of a plan: a row for each year, a column for each kind of income and cost.
class PlanTable {
 public:
  PlanTable(Sheet& sheet, const PlanSheet& plan, const Scenario& scenario, const Inputs& inputs);

  static constexpr int price_row = 13;    // above the tons: at a thinning, then at the end
  static constexpr int heading_row = 15;  // headings, units, then the years
  static constexpr int first_year_row = 17;

  void write();

  // The cells of all years, for formulas of this sheet.
  std::string discounts() const { return all(discount_); }
  std::string laid_bare() const { return all(bare_); }
  std::string income() const { return all(income_); }
  std::string cost() const { return all(cost_); }
  std::string net() const { return all(net_); }
  // REQUIRES: a plan that is told after tax too.
  std::string net_after_tax() const { return all(after_tax_); }

 private:
  // What stands in the row of a year: nothing, or a cell that `write` writes.
  struct YearColumn {
    std::string heading, unit;
    double width;
    std::function<void(const PlanYear&, Place)> write;
  };

  int last_row() const { return first_year_row + static_cast<int>(years_.size()) - 1; }
  int row_of(const PlanYear& year) const { return first_year_row + year.from_now; }
  std::string all(int column) const;
  // A cell of the same row, written before.
  Live in_row(const PlanYear& year, int column) const;
  double value_in(int column, const PlanYear& year) const;
  void put(const PlanYear& year, Place place, const Live& formula, Look look);
  void put(const PlanYear& year, Place place, double value, Look look);
  void keep(const PlanYear& year, int column, double value);

  int add(const std::string& heading, const std::string& unit, double width,
          std::function<void(const PlanYear&, Place)> write);
  int add_money(const std::string& heading,
                std::function<std::optional<Live>(const PlanYear&)> amount);
  void place_columns();
  void lay_out_dates();
  void lay_out_shares();
  void lay_out_tons();
  void lay_out_income();
  void lay_out_costs();
  void lay_out_sums();
  void lay_out_tax();
  double relief_in(const PlanYear& year) const;
  void lay_out_storms();
  // Tons of a row, from this column on, times the prices above them.
  Live tons_times_prices(const PlanYear& year, int first_column, bool final,
                         std::size_t timber) const;
  void write_prices(int first_column, bool thinning_too);
  void write_years();

  Sheet& sheet_;
  const PlanSheet& plan_;
  const Scenario& scenario_;
  const Inputs& inputs_;
  std::vector<PlanYear> years_;
  bool hazard_;

  std::vector<YearColumn> columns_;
  std::vector<std::vector<double>> values_;  // by column and year
  int discount_ = 0, entered_ = 0, left_ = 0, bare_ = 0, waiting_ = 0;
  int tons_ = 0;                   // first of the timber cut
  int money_ = 0, money_end_ = 0;  // the lines of income and cost
  int planting_ = -1;              // none of a standing stand
  int income_ = 0, cost_ = 0, net_ = 0;
  int after_tax_ = 0;                                               // where tax is asked for
  int standing_tons_ = 0, worth_ = 0, salvaged_ = 0, cleanup_ = 0;  // with a hazard
};

}  // namespace staddle::sheets
