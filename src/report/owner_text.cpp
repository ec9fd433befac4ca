// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/escape.h"
#include "report/owner_parts.h"
#include "report/wrap.h"
#include "staddle/report/owner_report.h"
#include "staddle/report/text.h"

namespace staddle {
namespace {

// Where nothing can be drawn the table of a figure stands for it.
Section with_tables(const Section& section) {
  Section told = section;
  std::vector<Table> tables;
  for (const Figure& figure : section.figures) {
    tables.push_back(figure.table);
    tables.back().title = figure.title;
  }
  told.tables.insert(told.tables.begin(), tables.begin(), tables.end());
  told.figures.clear();
  return told;
}

std::string file_text(const InputFile& file) {
  std::string text = "\n" + escape::one_line(file.name) + ":\n\n";
  for (const std::string& line : lines_of_file(file.text)) {
    text += "  " + escape::one_line(line) + "\n";
  }
  return text;
}

Report plain_report(const OwnerReport& report) {
  Report plain;
  plain.title = escape::one_line(report.title);
  plain.head.push_back(report.subject);
  for (const std::string& line : people_of(report)) plain.head.push_back(escape::one_line(line));
  for (const AnswerGroup& group : report.answer) {
    plain.sections.push_back({group.heading, group.lines, {}, {}});
  }
  for (const Section* section : parts_of(report)) plain.sections.push_back(with_tables(*section));
  plain.foot = report.foot;
  return plain;
}

}  // namespace

std::string to_text(const OwnerReport& report) {
  std::string text = to_text(plain_report(report));
  if (!report.inputs.empty()) {
    text += std::string("\n\n") + inputs_title + "\n" +
            std::string(std::string(inputs_title).size(), '-') + "\n\n";
    text += wrapped(how_to_make_again(report), "", "", text_width) + "\n";
    for (const InputFile& file : report.inputs) text += file_text(file);
  }
  return text + "\n" + report.made_by + "\n";
}

std::string summary_text(const OwnerReport& report) {
  std::string text =
      wrapped(escape::one_line(report.title) + ": " + report.subject, "", "  ", text_width) + "\n";
  for (const std::string& line : report.summary) {
    text += wrapped(escape::one_line(line), "", "  ", text_width) + "\n";
  }
  return text;
}

}  // namespace staddle
