// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "report/dates.h"
#include "report/plan_words.h"
#include "report/sheet_answer.h"
#include "report/tract_tables.h"
#include "report/tract_years.h"
#include "signs/plain_words.h"
#include "staddle/report/sheet.h"

namespace staddle {
namespace {

using sheets::Live;
using sheets::Look;
using sheets::Place;
using sheets::Sheet;

// Headings of columns in one row, each as wide as it is told.
struct Heading {
  std::string text;
  double width = 13;
};

void write_headings(Sheet& sheet, int row, const std::vector<Heading>& headings) {
  for (std::size_t i = 0; i < headings.size(); ++i) {
    const int column = static_cast<int>(i);
    sheet.text({row, column}, headings[i].text, Look::column);
    sheet.width(column, column, headings[i].width);
  }
  sheet.height(row, 48);
  sheet.freeze({row + 1, 1});
  sheet.print_setup({.landscape = true, .rows_on_top = {{row, row}}});
}

void write_title(Sheet& sheet, const std::string& title, const std::string& note) {
  sheet.text({0, 0}, title, Look::title);
  sheet.height(0, 22);
  sheet.text({1, 0}, note, Look::note);
}

class TractWorkbook {
 public:
  TractWorkbook(const std::string& path, const TractFile& tract, const TractSolution& solution)
      : book_(path), tract_(tract), solution_(solution), in_plan_(tract) {}

  std::optional<std::string> write(const OwnerReport& report) {
    sheets::write_answer(book_.add_sheet("Answer"), report);
    write_periods(book_.add_sheet("Periods"));
    write_years(book_.add_sheet("Years"));
    write_stands(book_.add_sheet("Stands"));
    write_jobs(book_.add_sheet("Jobs"));
    if (!solution_.limit_costs.empty()) write_limits(book_.add_sheet("Limits"));
    if (!solution_.conflicts.empty()) write_conflicts(book_.add_sheet("Conflicts"));
    return book_.close();
  }

 private:
  // Income, cost and what is left in three columns of a row.
  static Live write_money(Sheet& sheet, Place place, const TractPeriod& period) {
    const double income = period.income.in(dollars), cost = period.cost.in(dollars);
    sheet.number(place, income, Look::tract);
    sheet.number({place.row, place.column + 1}, cost, Look::tract);
    const Live left = Live(sheets::cell_name(place), income) -
                      Live(sheets::cell_name({place.row, place.column + 1}), cost);
    return sheet.formula({place.row, place.column + 2}, left, Look::tract);
  }

  static void write_sum(Sheet& sheet, Place place, int first_row, double sum, Look look) {
    const std::string range =
        sheets::range_name({first_row, place.column}, {place.row - 1, place.column});
    sheet.formula(place, Live(fmt::format("SUM({})", range), sum), look);
  }

  void write_periods(Sheet& sheet) {
    write_title(sheet, "Money, acres and tons by period",
                "Dollars of today's worth as they come, not discounted. What falls into the "
                "present year counts in the first period.");
    std::vector<Heading> headings{
        {"years", 14}, {"income, $"}, {"cost, $"}, {"left over, $"}, {"final harvest, acres"}};
    for (const std::string& product : solution_.products) {
      headings.push_back({words::product(product) + ", tons"});
    }
    const int heading = 3, first = heading + 1;
    write_headings(sheet, heading, headings);
    TractPeriod all;
    all.tons.resize(solution_.products.size());
    int row = first;
    for (const TractPeriod& period : solution_.periods) {
      sheet.text({row, 0}, in_plan_.span(period.from_year, period.to_year));
      write_money(sheet, {row, 1}, period);
      sheet.number({row, 4}, period.final_harvest_acres.in(acres), Look::tenths);
      for (std::size_t i = 0; i < period.tons.size(); ++i) {
        sheet.number({row, 5 + static_cast<int>(i)}, period.tons[i].in(tons), Look::whole);
        all.tons[i] += period.tons[i];
      }
      all.income += period.income;
      all.cost += period.cost;
      all.final_harvest_acres += period.final_harvest_acres;
      ++row;
    }
    if (row == first) return;
    sheet.text({row, 0}, "in all", Look::heading);
    write_sum(sheet, {row, 1}, first, all.income.in(dollars), Look::total_tract);
    write_sum(sheet, {row, 2}, first, all.cost.in(dollars), Look::total_tract);
    write_sum(sheet, {row, 3}, first, (all.income - all.cost).in(dollars), Look::total_tract);
    write_sum(sheet, {row, 4}, first, all.final_harvest_acres.in(acres), Look::total_tract);
    for (std::size_t i = 0; i < all.tons.size(); ++i) {
      write_sum(sheet, {row, 5 + static_cast<int>(i)}, first, all.tons[i].in(tons),
                Look::total_tract);
    }
    sheet.bars({.at = {row + 2, 0},
                .title = "Left over in each period",
                .axis = "$",
                .series = "left over",
                .names_column = 0,
                .values_column = 3,
                .first_row = first,
                .last_row = row - 1});
  }

  void write_years(Sheet& sheet) {
    write_title(sheet, "Year by year",
                "The money of the plan's years, worth today at a rate that you may change. What "
                "land and timber are worth after the plan is not in it.");
    const int rate_row = 3, heading = 5, first = heading + 1;
    const double rate_now = tract_.stands.front().scenario.costs.rate.per_year();
    write_headings(sheet, heading,
                   {{"year", 24},
                    {"from now"},
                    {"income, $"},
                    {"cost, $"},
                    {"left over, $"},
                    {"a dollar then, worth now, $"},
                    {"left over, worth now, $"},
                    {"worth now, summed up, $"}});
    sheet.text({rate_row, 0}, "real rate, of the first stand");
    sheet.number({rate_row, 1}, rate_now, Look::input_percent);
    sheet.allow({rate_row, 1}, 0.0, 0.5, "A rate from 0 to 50 percent can stand here.");
    const Live rate(sheets::fixed_cell_name({rate_row, 1}), rate_now);
    double summed = 0.0;
    int row = first;
    for (const TractPeriod& year : solution_.years) {
      sheet.text({row, 0}, in_plan_.name(year.from_year));
      sheet.number({row, 1}, year.from_year, Look::whole);
      const Live left = write_money(sheet, {row, 2}, year);
      const Live from_now(sheets::cell_name({row, 1}), year.from_year);
      const Live factor = sheet.formula({row, 5}, compounded(rate, -from_now), Look::share);
      const Live worth = sheet.formula({row, 6}, left * factor, Look::tract);
      const Live before(sheets::cell_name({row - 1, 7}), summed);
      summed += worth.value();
      sheet.formula({row, 7}, row == first ? worth : before + worth, Look::tract);
      ++row;
    }
  }

  void write_stands(Sheet& sheet) {
    write_title(sheet, "Stand by stand, beside the best of each alone",
                "Worth: what an acre of timber and land is worth today under that plan. The "
                "difference is what the limits of the tract cost there.");
    const int heading = 3, first = heading + 1;
    write_headings(sheet, heading,
                   {{"stand", 26},
                    {"group", 14},
                    {"acres"},
                    {"worth, $/acre"},
                    {"worth, $"},
                    {"alone, $/acre"},
                    {"costs, $"},
                    {"in this plan", 58},
                    {"alone", 58}});
    int row = first;
    double all_acres = 0.0, all_worth = 0.0, all_costs = 0.0;
    for (std::size_t i = 0; i < solution_.stands.size(); ++i) {
      const StandSchedule& stand = solution_.stands[i];
      const Dates dates(tract_.stands.at(i).scenario);
      for (const RegimeShare& share : stand.regimes) {
        const double area = share.acres.in(acres);
        const double worth = share.present_value.in(dollars_per_acre);
        const double alone = stand.unlimited_value.in(dollars_per_acre);
        sheet.text({row, 0}, stand.name);
        sheet.text({row, 1}, tract_.stands.at(i).group);
        sheet.number({row, 2}, area, Look::tenths);
        sheet.number({row, 3}, worth, Look::dollars);
        sheet.number({row, 5}, alone, Look::dollars);
        const Live area_cell(sheets::cell_name({row, 2}), area);
        const Live worth_cell(sheets::cell_name({row, 3}), worth);
        const Live alone_cell(sheets::cell_name({row, 5}), alone);
        all_worth += sheet.formula({row, 4}, area_cell * worth_cell, Look::tract).value();
        all_costs +=
            sheet.formula({row, 6}, area_cell * (alone_cell - worth_cell), Look::tract).value();
        all_acres += area;
        sheet.text({row, 7}, plan_in_words(dates, share.report.regime()));
        sheet.text({row, 8}, plan_in_words(dates, stand.unlimited));
        ++row;
      }
    }
    if (row == first) return;
    sheet.text({row, 0}, "in all", Look::heading);
    write_sum(sheet, {row, 2}, first, all_acres, Look::total_tract);
    write_sum(sheet, {row, 4}, first, all_worth, Look::total_tract);
    write_sum(sheet, {row, 6}, first, all_costs, Look::total_tract);
  }

  void write_jobs(Sheet& sheet) {
    write_title(sheet, "What to do, year by year",
                "Expected acres, tons and money where storms are in the figures.");
    const int heading = 3;
    std::vector<Heading> headings{{"year", 12}, {"stand", 26}, {"what", 18}, {"of the basal area"},
                                  {"acres"},    {"tons"},      {"money, $"}};
    for (const std::string& product : solution_.products) {
      headings.push_back({words::product(product) + ", tons"});
    }
    headings.push_back({"whose trees", 18});
    write_headings(sheet, heading, headings);
    int row = heading + 1;
    for (const TractAction& job : solution_.actions) {
      sheet.text({row, 0}, in_plan_.name(job.year));
      sheet.text({row, 1}, solution_.stands.at(job.stand).name);
      sheet.text({row, 2}, name_of(job));
      if (job.kind == TractAction::Kind::thinning) {
        sheet.number({row, 3}, job.removal_fraction, Look::percent);
      }
      sheet.number({row, 4}, job.acres.in(acres), Look::tenths);
      if (job.kind != TractAction::Kind::planting) {
        sheet.number({row, 5}, all_tons(job).in(tons), Look::whole);
      }
      sheet.number({row, 6}, job.money.in(dollars), Look::tract);
      for (std::size_t i = 0; i < job.tons.size(); ++i) {
        sheet.number({row, 7 + static_cast<int>(i)}, job.tons[i].in(tons), Look::whole);
      }
      sheet.text({row, 7 + static_cast<int>(solution_.products.size())},
                 job.successor ? "of the next stand" : "");
      ++row;
    }
  }

  void write_limits(Sheet& sheet) {
    write_title(sheet, "What the limits cost",
                "Present value lost for one unit by which a limit is made stricter.");
    write_headings(sheet, 3, {{"years", 14}, {"costs"}, {"unit", 40}, {"in words", 90}});
    int row = 4;
    for (const LimitCost& cost : solution_.limit_costs) {
      sheet.text({row, 0},
                 cost.period == 0 ? "whole plan" : in_plan_.span(cost.from_year, cost.to_year));
      sheet.number({row, 1}, cost.shadow_price, Look::dollars);
      sheet.text({row, 2}, cost.unit);
      sheet.text({row, 3}, cost.text, Look::wrapped);
      ++row;
    }
  }

  void write_conflicts(Sheet& sheet) {
    write_title(sheet, "Limits that conflict", "What was asked, and the most that can be had.");
    write_headings(sheet, 3,
                   {{"years", 14}, {"asked"}, {"possible"}, {"unit", 30}, {"in words", 90}});
    int row = 4;
    for (const LimitConflict& conflict : solution_.conflicts) {
      sheet.text({row, 0}, conflict.period == 0
                               ? "whole plan"
                               : in_plan_.span(conflict.from_year, conflict.to_year));
      sheet.number({row, 1}, conflict.asked, Look::dollars);
      sheet.number({row, 2}, conflict.most_possible, Look::dollars);
      sheet.text({row, 3}, conflict.unit);
      sheet.text({row, 4}, conflict.text, Look::wrapped);
      ++row;
    }
  }

  sheets::Workbook book_;
  const TractFile& tract_;
  const TractSolution& solution_;
  PlanYears in_plan_;
};

}  // namespace

std::optional<std::string> write_workbook(const std::string& path, const TractFile& tract,
                                          const TractSolution& solution,
                                          const OwnerReport& report) {
  return TractWorkbook(path, tract, solution).write(report);
}

}  // namespace staddle
