// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/sheet.h"

#include <fmt/format.h>

#include <algorithm>

#include "report/answer.h"
#include "report/sheet_answer.h"
#include "report/sheet_option.h"
#include "signs/plain_words.h"
#include "staddle/base/contract.h"
#include "staddle/regime/after_tax.h"
#include "staddle/scenario/planting.h"

namespace staddle {
namespace {

using sheets::Inputs;
using sheets::Live;
using sheets::Look;
using sheets::Place;
using sheets::PlanCells;
using sheets::Sheet;

struct Compared {
  std::string name, words;
  double solved = 0.0;
  PlanCells cells;
};

void write_option_row(Sheet& sheet, int row, const Compared& option, const Live& first) {
  sheet.text({row, 0}, option.name);
  sheet.formula({row, 1}, option.cells.value, Look::total);
  sheet.number({row, 2}, option.solved, Look::dollars);
  const Live value(sheets::cell_name({row, 1}), option.solved);
  sheet.formula({row, 3}, value - Live(sheets::cell_name({row, 2}), option.solved), Look::dollars);
  sheet.formula({row, 4}, value - first, Look::dollars);
  sheet.formula({row, 5}, option.cells.net_present_value, Look::dollars);
  sheet.formula({row, 6}, option.cells.annual_equivalent, Look::dollars);
  const auto ratio = [&](int column, const std::string& cell, std::optional<double> now,
                         Look look) {
    if (now) {
      sheet.formula({row, column}, Live(cell, *now), look);
    } else {
      sheet.formula({row, column}, cell, "none", look);
    }
  };
  ratio(7, option.cells.benefit_cost, option.cells.benefit_cost_now, Look::dollars);
  ratio(8, option.cells.internal_rate, option.cells.internal_rate_now, Look::percent);
  sheet.text({row, 9}, option.words);
}

void write_options(Sheet& sheet, const std::vector<Compared>& options, bool standing) {
  sheet.text({0, 0}, "The options side by side", Look::title);
  sheet.height(0, 22);
  sheet.text({1, 0},
             standing
                 ? "Forest value: what timber and land are worth today under each plan, $/acre."
                 : "Land expectation value: what bare land is worth under each plan, $/acre.",
             Look::note);
  const int heading = 3;
  const std::vector<std::string> columns = {"option",
                                            "worth now, $/acre",
                                            "as solved, $/acre",
                                            "moved by, $/acre",
                                            "more than the first, $/acre",
                                            "this rotation alone, $/acre",
                                            "a year for ever, $/acre",
                                            "income over cost",
                                            "rate of return",
                                            "plan"};
  for (std::size_t i = 0; i < columns.size(); ++i) {
    sheet.text({heading, static_cast<int>(i)}, columns[i], Look::column);
  }
  sheet.height(heading, 60);
  sheet.width(0, 0, 34);
  sheet.width(1, 8, 13);
  sheet.width(9, 9, 70);
  const Live first(sheets::fixed_cell_name({heading + 1, 1}), options.front().solved);
  int row = heading + 1;
  for (const Compared& option : options) write_option_row(sheet, row++, option, first);
  const bool positive =
      std::ranges::all_of(options, [](const Compared& option) { return option.solved >= 0.0; });
  sheet.bars({.at = {row + 1, 0},
              .title = "What each option is worth",
              .axis = "$ an acre",
              .series = "worth now",
              .names_column = 0,
              .values_column = 1,
              .first_row = heading + 1,
              .last_row = row - 1,
              .from_zero = positive});
  sheet.freeze({heading + 1, 1});
  sheet.print_setup({.landscape = true});
}

// Tax as the answer counts it; absent also where every plan has a case of its own.
std::optional<AfterTax> tax_of(const StandAnswers& answers) {
  if (!answers.scenario.tax || !answers.advice.after_tax || !answers.stand_case) {
    return std::nullopt;
  }
  return AfterTax(*answers.stand_case, *answers.scenario.tax, answers.scenario.area,
                  answers.advice.after_tax->land_value);
}

}  // namespace

std::optional<std::string> write_workbook(const std::string& path, const StandAnswers& answers,
                                          const OwnerReport& report) {
  require(!answers.options.empty(), "a workbook shows at least one option");
  const Answer words(answers.scenario, answers.advice, answers.storm_zones);
  sheets::Workbook book(path);
  sheets::write_answer(book.add_sheet("Answer"), report);
  const Inputs inputs = write_inputs(book.add_sheet("Prices and rate"), answers);
  Sheet& side_by_side = book.add_sheet("Options");
  const std::vector<Practice> practices = sheets::stand_practices(answers.scenario);
  const std::optional<AfterTax> tax = tax_of(answers);
  std::vector<Compared> compared;
  for (std::size_t i = 0; i < answers.options.size(); ++i) {
    const OwnerOption& option = answers.options[i];
    std::optional<RegimeReport> taxed;
    if (tax) {
      taxed = tax->report(stated(option.name, option.report.regime())).value();
    }
    const sheets::PlanSheet plan{option.name,
                                 words.brief(option.report.regime()),
                                 option.report,
                                 answers.advice.standing,
                                 practices,
                                 inputs.practices,
                                 taxed ? &*taxed : nullptr};
    // Numbered, so that names which agree in their first letters stay apart.
    Sheet& sheet = book.add_sheet(fmt::format("{} {}", i + 1, option.name));
    compared.push_back({option.name, plan.words, option.report.value.objective.in(dollars_per_acre),
                        write_plan(sheet, plan, answers.scenario, inputs)});
  }
  write_options(side_by_side, compared, answers.advice.standing);
  if (answers.advice.successor) {
    const Planting planting = planting_of(answers.scenario);
    const sheets::PlanSheet next{"the stand that follows",
                                 "The rotation behind the worth of the land after the harvest",
                                 *answers.advice.successor,
                                 false,
                                 planting.practices,
                                 inputs.next_practices,
                                 tax && answers.advice.after_tax->successor
                                     ? &*answers.advice.after_tax->successor
                                     : nullptr};
    write_plan(book.add_sheet("Next rotation"), next, answers.scenario, inputs);
  }
  return book.close();
}

}  // namespace staddle
