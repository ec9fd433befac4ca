// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "report/escape.h"
#include "report/owner_parts.h"
#include "staddle/report/owner_report.h"

namespace staddle {
namespace {

using escape::markdown;

std::string heading(int level, const std::string& text) {
  return std::string(static_cast<std::size_t>(level), '#') + " " + markdown(text) + "\n\n";
}

std::string markdown_paragraph(const std::string& text) { return markdown(text) + "\n\n"; }

std::string list(const std::vector<std::string>& items) {
  std::string text;
  for (const std::string& item : items) text += "- " + markdown(item) + "\n";
  return text.empty() ? "" : text + "\n";
}

// An empty cell would join its neighbours in some readers.
std::string cell(const std::string& text) {
  return text.empty() ? " " : escape::markdown_within(text);
}

std::string table_text(const Table& table) {
  std::string heads = "|", rules = "|", rows;
  for (const Column& column : table.columns) {
    const std::string unit = column.unit.empty() ? "" : " (" + column.unit + ")";
    heads += fmt::format(" {} |", cell(column.heading + unit));
    rules += column.words ? " :--- |" : " ---: |";
  }
  for (const std::vector<Cell>& row : table.rows) {
    rows += "|";
    for (const Cell& one : row) rows += fmt::format(" {} |", cell(one.text));
    rows += "\n";
  }
  return heads + "\n" + rules + "\n" + rows + "\n";
}

std::string titled_table(const Table& table, const std::string& title) {
  return (title.empty() ? "" : "**" + markdown(title) + "**\n\n") + table_text(table);
}

std::string markdown_section(const Section& section) {
  std::string text = heading(2, section.title);
  for (const std::string& words : section.paragraphs) text += markdown_paragraph(words);
  for (const Figure& figure : section.figures) text += titled_table(figure.table, figure.title);
  for (const Table& table : section.tables) text += titled_table(table, table.title);
  return text + list(section.items);
}

std::string opening(const OwnerReport& report) {
  std::string text = heading(1, report.title) + markdown_paragraph(report.subject);
  for (const std::string& line : people_of(report)) text += markdown_paragraph(line);
  return text;
}

// A fence longer than any run of the sign inside it.
std::string fenced(const InputFile& file) {
  std::size_t longest = 0, run = 0;
  for (const char c : file.text) {
    run = c == '`' ? run + 1 : 0;
    longest = std::max(longest, run);
  }
  const std::string fence(std::max<std::size_t>(3, longest + 1), '`');
  std::string text = fence + "\n";
  for (const std::string& line : lines_of_file(file.text)) text += line + "\n";
  return text + fence + "\n\n";
}

}  // namespace

std::string to_markdown(const OwnerReport& report) {
  std::string text = opening(report);
  for (const AnswerGroup& group : report.answer) {
    text += heading(2, group.heading);
    for (const std::string& line : group.lines) text += markdown_paragraph(line);
  }
  for (const Section* section : parts_of(report)) text += markdown_section(*section);
  if (!report.inputs.empty()) {
    text += heading(2, inputs_title) + markdown_paragraph(how_to_make_again(report));
    for (const InputFile& file : report.inputs) text += heading(3, file.name) + fenced(file);
  }
  return text + markdown_paragraph(report.foot) + markdown(report.made_by) + "\n";
}

std::string summary_markdown(const OwnerReport& report) {
  return heading(1, report.title) + markdown_paragraph(report.subject) + list(report.summary);
}

}  // namespace staddle
