// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/report/report.h"
#include "staddle/report/stand_answers.h"
#include "staddle/scenario/tract_file.h"
#include "staddle/tract/tract_solution.h"

// The report that the owner takes home: plain data, made once, so that page, Markdown and
// text cannot disagree.
namespace staddle {

// Some of the opening lines under the question that they answer.
struct AnswerGroup {
  std::string heading;             // "What to do"
  std::vector<std::string> lines;  // to be read aloud
};

// A figure of the first page, in large type: "$585 an acre" - "more than selling today".
struct KeyFigure {
  std::string value;
  std::string meaning;
};

// A file from which the answer was made, so that it can be made again.
struct InputFile {
  std::string name;  // without its folder
  std::string text;  // byte for byte
};

// `summary` is the whole answer in short lines, eleven at most.
struct OwnerReport {
  std::string title;
  std::string subject;                      // "62 acres of loblolly pine, 15 years old in 2027"
  std::string purpose, owner, prepared_by;  // may be empty
  std::vector<KeyFigure> key_figures;
  std::vector<std::string> summary;
  std::vector<AnswerGroup> answer;  // the first page; the opening lines, grouped
  std::vector<Section> sections;    // with figures
  Section assumptions, sources, cautions;
  std::string foot;  // the proof, and what it does not prove
  std::vector<InputFile> inputs;
  std::string made_by;  // program and version
};

OwnerReport owner_report(const StandAnswers& answers, std::vector<InputFile> inputs);
// REQUIRES: the solution of this tract.
OwnerReport owner_report(const TractFile& tract, const TractSolution& solution,
                         std::vector<InputFile> inputs);

// One page that needs nothing besides itself: no script, no request, fit for print.
std::string to_html(const OwnerReport& report);
std::string to_markdown(const OwnerReport& report);
std::string to_text(const OwnerReport& report);

// Title, subject and summary alone; as text twelve lines at most.
std::string summary_html(const OwnerReport& report);
std::string summary_markdown(const OwnerReport& report);
std::string summary_text(const OwnerReport& report);

}  // namespace staddle
