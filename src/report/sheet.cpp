// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/sheet.h"

#include <fmt/format.h>

#include "report/answer.h"
#include "report/sheet_option.h"
#include "report/wrap.h"
#include "signs/plain_words.h"
#include "staddle/base/contract.h"

namespace staddle {
namespace {

using sheets::Inputs;
using sheets::Live;
using sheets::Look;
using sheets::Place;
using sheets::PlanCells;
using sheets::Sheet;

constexpr double text_column_letters = 105;

// Lines of words one below the other, each high enough for its words.
struct WordsWriter {
  Sheet& sheet;
  int row = 0;

  void line(const std::string& text, Look look = Look::wrapped) {
    if (text.empty()) return;
    sheet.text({row, 0}, text, look);
    const auto lines = lines_of_words(text, static_cast<std::size_t>(text_column_letters) - 5);
    if (look == Look::wrapped) sheet.height(row, 15.0 * static_cast<double>(lines.size()) + 3.0);
    ++row;
  }
  void heading(const std::string& text) {
    ++row;
    line(text, Look::heading);
  }
};

void write_answer(Sheet& sheet, const OwnerReport& report) {
  sheet.width(0, 0, text_column_letters);
  WordsWriter words{sheet};
  words.line(report.title, Look::title);
  words.line(report.subject);
  if (!report.owner.empty()) words.line("Owner: " + report.owner);
  if (!report.prepared_by.empty()) words.line("Prepared by: " + report.prepared_by);
  words.line(report.purpose);
  for (const AnswerGroup& group : report.answer) {
    words.heading(group.heading);
    for (const std::string& line : group.lines) words.line(line);
  }
  for (const Section* section : {&report.assumptions, &report.cautions, &report.sources}) {
    if (section->paragraphs.empty() && section->items.empty()) continue;
    words.heading(section->title);
    for (const std::string& paragraph : section->paragraphs) words.line(paragraph);
    for (const std::string& item : section->items) words.line("- " + item);
  }
  ++words.row;
  words.line(report.foot);
  words.line(report.made_by, Look::note);
  sheet.print_setup(false);
}

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
  ratio(7, option.cells.benefit_cost, option.cells.benefit_cost_now, Look::share);
  ratio(8, option.cells.internal_rate, option.cells.internal_rate_now, Look::percent);
  sheet.text({row, 9}, option.words);
}

void write_options(Sheet& sheet, const std::vector<Compared>& options, bool standing) {
  sheet.text({0, 0}, "The options side by side", Look::title);
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
  sheet.height(heading, 45);
  sheet.width(0, 0, 34);
  sheet.width(1, 8, 13);
  sheet.width(9, 9, 70);
  const Live first(sheets::fixed_cell_name({heading + 1, 1}), options.front().solved);
  int row = heading + 1;
  for (const Compared& option : options) write_option_row(sheet, row++, option, first);
  sheet.bars({{row + 1, 0},
              "What each option is worth",
              "$ an acre",
              "worth now",
              0,
              1,
              heading + 1,
              row - 1});
  sheet.freeze({heading + 1, 1});
  sheet.print_setup(true);
}

}  // namespace

std::optional<std::string> write_workbook(const std::string& path, const StandAnswers& answers,
                                          const OwnerReport& report) {
  require(!answers.options.empty(), "a workbook shows at least one option");
  const Answer words(answers.scenario, answers.advice, answers.storm_zones);
  sheets::Workbook book(path);
  write_answer(book.add_sheet("Answer"), report);
  const Inputs inputs = write_inputs(book.add_sheet("Prices and rate"), answers);
  Sheet& side_by_side = book.add_sheet("Options");
  std::vector<Compared> compared;
  for (std::size_t i = 0; i < answers.options.size(); ++i) {
    const OwnerOption& option = answers.options[i];
    const sheets::PlanSheet plan{option.name, words.brief(option.report.regime()), option.report,
                                 answers.advice.standing};
    // Numbered, so that names which agree in their first letters stay apart.
    Sheet& sheet = book.add_sheet(fmt::format("{} {}", i + 1, option.name));
    compared.push_back({option.name, plan.words, option.report.value.objective.in(dollars_per_acre),
                        write_plan(sheet, plan, answers.scenario, inputs)});
  }
  write_options(side_by_side, compared, answers.advice.standing);
  if (answers.advice.successor) {
    const sheets::PlanSheet next{"the stand that follows",
                                 "The rotation behind the worth of the land after the harvest",
                                 *answers.advice.successor, false};
    write_plan(book.add_sheet("Next rotation"), next, answers.scenario, inputs);
  }
  return book.close();
}

}  // namespace staddle
