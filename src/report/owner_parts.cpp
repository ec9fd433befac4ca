// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/owner_parts.h"

#include <fmt/format.h>

namespace staddle {

std::vector<const Section*> parts_of(const OwnerReport& report) {
  std::vector<const Section*> parts;
  for (const Section& section : report.sections) parts.push_back(&section);
  for (const Section* section : {&report.assumptions, &report.sources, &report.cautions}) {
    if (!section->title.empty()) parts.push_back(section);
  }
  return parts;
}

std::vector<std::string> people_of(const OwnerReport& report) {
  std::vector<std::string> lines;
  if (!report.purpose.empty()) lines.push_back(report.purpose);
  if (!report.owner.empty()) lines.push_back("Owner: " + report.owner);
  if (!report.prepared_by.empty()) lines.push_back("Prepared by: " + report.prepared_by);
  return lines;
}

std::string how_to_make_again(const OwnerReport& report) {
  return fmt::format(
      "Every figure of this report was worked out from what stands below. Saved under {} and "
      "given to the same program, it makes the same report again, to the letter ({}).",
      report.inputs.size() == 1 ? "its name" : "their names, in one folder,", report.made_by);
}

std::vector<std::string> lines_of_file(const std::string& text) {
  std::vector<std::string> lines;
  std::string line;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool of_a_pair = text[i] == '\r' && i + 1 < text.size() && text[i + 1] == '\n';
    if (of_a_pair) continue;
    if (text[i] == '\n' || text[i] == '\r') {
      lines.push_back(std::move(line));
      line.clear();
    } else {
      line += text[i];
    }
  }
  if (!line.empty()) lines.push_back(std::move(line));
  return lines;
}

}  // namespace staddle
