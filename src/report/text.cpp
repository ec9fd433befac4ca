// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/text.h"

#include <fmt/format.h>

#include <algorithm>

#include "report/wrap.h"
#include "staddle/report/advice_report.h"

namespace staddle {
namespace {

std::string underlined(const std::string& heading, char rule) {
  const std::string text = wrapped(heading, "", "", text_width);
  return text + "\n" + std::string(std::min(width_of(heading), text_width), rule) + "\n";
}

std::string wrapped_paragraph(const std::string& text) {
  return wrapped(text, "", "", text_width) + "\n";
}

std::string wrapped_section(const Section& section) {
  std::string text = underlined(section.title, '-');
  for (const std::string& words : section.paragraphs) text += "\n" + wrapped_paragraph(words);
  for (const Table& table : section.tables) text += "\n" + to_text(table);
  if (!section.items.empty()) text += "\n";
  for (const std::string& item : section.items) {
    text += wrapped(item, "- ", "  ", text_width) + "\n";
  }
  return text;
}

}  // namespace

std::string to_text(const Report& report) {
  std::string text = underlined(report.title, '=');
  for (const std::string& line : report.head) text += wrapped_paragraph(line);
  if (!report.lines.empty()) text += "\n";
  std::size_t number = 0;
  for (const Line& line : report.lines) {
    text += wrapped(line.text, fmt::format("{:>2}. ", ++number), "    ", text_width) + "\n";
  }
  for (const Section& section : report.sections) text += "\n\n" + wrapped_section(section);
  return text + "\n\n" + wrapped_paragraph(report.foot);
}

std::string text_answer(const Scenario& scenario, const Advice& advice,
                        const std::vector<std::string>& storm_zones) {
  return to_text(advice_report(scenario, advice, storm_zones));
}

}  // namespace staddle
