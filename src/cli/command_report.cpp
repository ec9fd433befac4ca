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
#include "staddle/io/tract_reader.h"
#include "staddle/report/calendar.h"
#include "staddle/report/owner_report.h"
#include "staddle/report/sheet.h"
#include "staddle/report/stand_answers.h"
#include "staddle/tract/solve.h"

namespace staddle::cli {
namespace {

constexpr std::uint64_t most_threads = 1024;

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
  line.value("output,o", "FILE",
             "write there; its ending chooses the form: .html .md .txt .xlsx .ics (without it, "
             "text to standard output)",
             &options.output.file);
}

// A report, and the answers that a spreadsheet and a calendar are made from; a tract has
// none of these.
struct Made {
  OwnerReport report;
  std::optional<StandAnswers> answers = std::nullopt;
  ExitCode code = ExitCode::done;
};

// A form of the report, by the ending of the file that is to hold it; those without a
// summary are of one stand alone.
struct Form {
  const char* ending;
  Outcome (*whole)(const Made& made, const std::string& path);
  std::string (*summary)(const OwnerReport& report);
};

template <std::string (*write)(const OwnerReport&)>
Outcome whole_text(const Made& made, const std::string&) {
  return {made.code, write(made.report)};
}

Outcome workbook(const Made& made, const std::string& path) {
  const std::optional<std::string> failure = write_workbook(path, *made.answers, made.report);
  if (failure) return {ExitCode::fault, "", {{FaultCode::unreadable, path, "", *failure, ""}}};
  Outcome outcome = done("");
  outcome.written = true;
  return outcome;
}

Outcome calendar(const Made& made, const std::string&) {
  const Scenario& scenario = made.answers->scenario;
  const Result<std::string> text = stand_calendar(scenario, made.answers->advice);
  if (!text) return wrong_input(text.error(), scenario.file);
  return done(*text);
}

constexpr std::array<Form, 5> forms{{{".html", whole_text<to_html>, summary_html},
                                     {".md", whole_text<to_markdown>, summary_markdown},
                                     {".xlsx", workbook, nullptr},
                                     {".ics", calendar, nullptr},
                                     {".txt", whole_text<to_text>, summary_text}}};

// Standard output takes text.
const Form* form_of(const OutputOptions& output) {
  if (!output.file || *output.file == "-") return &forms.back();
  const std::string ending = std::filesystem::path(*output.file).extension().string();
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

Result<Made> report_on_tract(InputFiles& inputs, const std::string& name, unsigned threads) {
  const Result<TractFile> tract = read_tract(inputs.text(), name, inputs.loader());
  if (!tract) return tract.error();
  const Result<TractSolution> solution = [&] {
    RoundLine line;
    TractOptions solving;
    solving.threads = threads;
    solving.progress = line.progress();
    return solve(make_tract_problem(*tract), solving);
  }();
  if (!solution) return solution.error();
  Made made{owner_report(*tract, *solution, inputs.take())};
  if (solution->status == TractSolution::Status::infeasible) made.code = ExitCode::no_regime;
  return made;
}

Result<Made> report_on_stand(InputFiles& inputs, const std::string& name, unsigned threads) {
  const Result<Scenario> scenario = read_scenario(inputs.text(), name, inputs.loader());
  if (!scenario) return scenario.error();
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
  const bool tract = says_it_is_a_tract(inputs->text());
  if (tract && form.summary == nullptr) {
    return refuse_form(*options.output.file, "this form is of one stand, not of a tract", true);
  }
  const auto make = tract ? report_on_tract : report_on_stand;
  const Result<Made> made = make(inputs.value(), name, static_cast<unsigned>(*threads));
  if (!made) return wrong_input(made.error(), name);
  if (options.summary) return {made->code, form.summary(made->report)};
  return form.whole(*made, options.output.file.value_or("-"));
}

const char* const example_output =
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
      "works without a network and prints on Letter paper. Of one stand also a spreadsheet\n"
      "(.xlsx), in which a consultant changes rate and prices under the plans as they are, and a\n"
      "calendar (.ics) of the work by its seasons.",
      "staddle report scenarios/stand/juniper_creek.json --summary",
      example_output,
      binder<ReportCommandOptions>(set_up, run)};
}

}  // namespace staddle::cli
