// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_report.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <filesystem>

#include "cli/input_file.h"
#include "cli/input_files.h"
#include "cli/progress_bar.h"
#include "cli/round_line.h"
#include "cli/scenario_question.h"
#include "cli/storm_zone_ids.h"
#include "cli/whole_number.h"
#include "cli/written_bytes.h"
#include "staddle/io/tract_reader.h"
#include "staddle/report/calendar.h"
#include "staddle/report/owner_report.h"
#include "staddle/report/sheet.h"
#include "staddle/report/stand_answers.h"
#include "staddle/tract/solve.h"

namespace staddle::cli {
namespace {

struct ReportCommandOptions {
  std::string file;
  bool summary = false;
  std::string threads = "0";
  OutputOptions output;
};

void set_up(CommandLine& line, ReportCommandOptions& options) {
  line.argument("FILE", "the scenario or tract file; - reads standard input", &options.file);
  line.flag("summary", "the answer alone, in twelve lines at most", &options.summary);
  line.value("threads", "T", "threads to work with (0, the default: all cores); changes no figure",
             &options.threads);
  line.choice("format", "FORMAT",
              "what to print where no file is named: text (the default), md or html",
              {"text", "md", "html"}, &options.output.format);
  line.value("output,o", "FILE",
             "write there; its ending chooses the form: .html .md .txt .xlsx .ics (default: "
             "standard output)",
             &options.output.file);
}

// A report, and what a spreadsheet and a calendar are made from besides: the answers on a
// stand, or a tract and its solution.
struct Made {
  OwnerReport report;
  std::optional<StandAnswers> answers = std::nullopt;
  std::optional<TractFile> tract = std::nullopt;
  std::optional<TractSolution> solution = std::nullopt;
  ExitCode code = ExitCode::done;
};

// A form of the report, by the ending of the file that is to hold it.
struct Form {
  const char* ending;
  Outcome (*whole)(const Made& made);
  std::string (*summary)(const OwnerReport& report);  // null: it has none
  bool needs_year = false;                            // the year of the present
};

template <std::string (*write)(const OwnerReport&)>
Outcome whole_text(const Made& made) {
  return {made.code, write(made.report)};
}

Outcome workbook(const Made& made) {
  const Result<std::string> bytes = written_bytes([&](const std::string& path) {
    return made.answers ? write_workbook(path, *made.answers, made.report)
                        : write_workbook(path, *made.tract, *made.solution, made.report);
  });
  if (!bytes) return {ExitCode::fault, "", bytes.error()};
  return {made.code, *bytes};
}

Outcome calendar(const Made& made) {
  const Result<std::string> text =
      made.answers ? stand_calendar(made.answers->scenario, made.answers->advice)
                   : tract_calendar(*made.tract, *made.solution);
  if (!text) return wrong_input(text.error(), "");
  return {made.code, *text};
}

constexpr std::array<Form, 5> forms{{{".html", whole_text<to_html>, summary_html},
                                     {".md", whole_text<to_markdown>, summary_markdown},
                                     {".xlsx", workbook, nullptr},
                                     {".ics", calendar, nullptr, true},
                                     {".txt", whole_text<to_text>, summary_text}}};

const Form* form_of(const OutputOptions& output) {
  const bool to_a_file = output.file && *output.file != "-";
  const std::string ending = to_a_file ? std::filesystem::path(*output.file).extension().string()
                             : output.format == "text" ? ".txt"
                                                       : "." + output.format;
  const auto found =
      std::ranges::find_if(forms, [&](const Form& form) { return ending == form.ending; });
  return found == forms.end() ? nullptr : &*found;
}

Outcome refuse_form(const std::string& file, const std::string& why, bool texts_alone) {
  std::string endings;
  for (const Form& form : forms) {
    if (!texts_alone || form.summary != nullptr) endings += std::string(" ") + form.ending;
  }
  return wrong_command_line(
      fmt::format("-o {}: the ending chooses the form of the report, and {}", file, why),
      "allowed are" + endings);
}

// What is wrong with the ending of the output file; nothing where it is a form.
std::optional<Outcome> refused_form(const ReportCommandOptions& options) {
  const Form* form = form_of(options.output);
  if (form == nullptr) return refuse_form(*options.output.file, "this is none", options.summary);
  if (options.summary && form->summary == nullptr) {
    return refuse_form(*options.output.file, "this form has no summary", true);
  }
  return std::nullopt;
}

// A calendar without its year is refused before the long work.
Faults faults_of_year(const Form& form, std::optional<CalendarYear> present_year) {
  return form.needs_year ? faults_of_calendar(present_year) : Faults();
}

Result<Made> report_on_tract(InputFiles& inputs, const std::string& name, const Form& form,
                             unsigned threads) {
  Result<TractFile> tract = read_tract(inputs.text(), name, inputs.loader());
  if (!tract) return tract.error();
  Faults faults = faults_of_year(form, tract->present_year);
  if (!faults.empty()) return faults;
  Result<TractSolution> solution = [&] {
    RoundLine line;
    TractOptions solving;
    solving.threads = threads;
    solving.progress = line.progress();
    return solve(make_tract_problem(*tract), solving);
  }();
  if (!solution) return solution.error();
  Made made{owner_report(*tract, *solution, inputs.take())};
  if (solution->status == TractSolution::Status::infeasible) made.code = ExitCode::no_regime;
  made.tract = std::move(tract).value();
  made.solution = std::move(solution).value();
  return made;
}

Result<Made> report_on_stand(InputFiles& inputs, const std::string& name, const Form& form,
                             unsigned threads) {
  const Result<Scenario> scenario = read_scenario(inputs.text(), name, inputs.loader());
  if (!scenario) return scenario.error();
  Faults faults = faults_of_year(form, scenario->present_year);
  if (!faults.empty()) return faults;
  Result<StandAnswers> answers = [&] {
    ProgressBar bar("working out the report");
    StandAnswersOptions answering;
    answering.threads = threads;
    answering.progress = bar.progress();
    return answer_stand(*scenario, storm_zone_ids(), answering);
  }();
  if (!answers) return answers.error();
  OwnerReport report = owner_report(*answers, inputs.take());
  return Made{std::move(report), std::move(answers).value()};
}

Outcome run(const ReportCommandOptions& options) {
  if (const auto refused = overwriting(options.file, options.output)) return *refused;
  if (const auto refused = refused_form(options)) return *refused;
  const Result<std::uint64_t> threads = whole_number("--threads", options.threads, 0, most_threads);
  if (!threads) return {ExitCode::wrong_command_line, "", threads.error()};
  const std::string name = shown_name(options.file);
  Result<InputFiles> inputs = InputFiles::read(options.file);
  if (!inputs) return wrong_input(inputs.error(), name);
  const Form& form = *form_of(options.output);
  const auto make = says_it_is_a_tract(inputs->text()) ? report_on_tract : report_on_stand;
  const Result<Made> made = make(inputs.value(), name, form, static_cast<unsigned>(*threads));
  if (!made) return wrong_input(made.error(), name);
  if (options.summary) return {made->code, form.summary(made->report)};
  return form.whole(*made);
}

const char* const example_summary =
    R"(Juniper Creek, stand 4: 62 acres of loblolly pine, 15 years old in 2027
)";

}  // namespace

Command report_command() {
  return {
      "report",
      "the report that the owner takes home: page, text, spreadsheet or calendar",
      "The answer to a scenario or a tract as one file to hand over: first a page in plain\n"
      "words (what to do, when, what it earns, what could go wrong, what to do next month), then\n"
      "the ways side by side, the money, the growth, the years that are as good, storms, prices,\n"
      "plots and tax as far as the file names them, each with its figure and its table; what is\n"
      "taken for granted, sources, cautions, and the inputs to make it again. A page (.html)\n"
      "works without a network and prints on Letter paper. A spreadsheet (.xlsx) lets a\n"
      "consultant change rate and prices under the plans as they are; a calendar (.ics) holds the\n"
      "work by its seasons, and needs the year of the present (calendar_year).",
      "staddle report scenarios/stand/juniper_creek.json --summary",
      example_summary,
      binder<ReportCommandOptions>(set_up, run)};
}

}  // namespace staddle::cli
