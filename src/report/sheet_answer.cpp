// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/sheet_answer.h"

#include "report/wrap.h"

namespace staddle::sheets {
namespace {

constexpr double text_column_letters = 105;

// Lines of words one below the other, each high enough for its words.
struct WordsWriter {
  Sheet& sheet;
  int row = 0;

  void line(const std::string& text, Look look = Look::wrapped) {
    if (text.empty()) return;
    sheet.text({row, 0}, text, look);
    const auto lines = lines_of_words(text, static_cast<std::size_t>(text_column_letters) - 14);
    if (look == Look::wrapped) sheet.height(row, 15.0 * static_cast<double>(lines.size()) + 3.0);
    ++row;
  }
  void heading(const std::string& text) {
    ++row;
    line(text, Look::heading);
  }
};

}  // namespace

void write_answer(Sheet& sheet, const OwnerReport& report) {
  sheet.width(0, 0, text_column_letters);
  WordsWriter words{sheet};
  words.line(report.title, Look::title);
  sheet.height(0, 22);
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
  sheet.print_setup({});
}

}  // namespace staddle::sheets
