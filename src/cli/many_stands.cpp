// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/many_stands.h"

#include <fmt/format.h>

#include "cli/input_file.h"
#include "cli/interruption.h"
#include "cli/output_file.h"
#include "cli/progress_bar.h"
#include "cli/scenario_question.h"
#include "cli/whole_number.h"
#include "staddle/io/stands_answers.h"

namespace staddle::cli {
namespace {

constexpr std::uint64_t most_parts = 1'000'000;

Fault wrong_part(const std::string& typed) {
  return {FaultCode::out_of_range, "", "",
          fmt::format("option --part: found \"{}\", allowed is I/N, such as 3/20", typed),
          "part I of N, I from 1 to N"};
}

Result<StandsPart> read_part(const std::optional<std::string>& typed) {
  if (!typed) return StandsPart{};
  const std::size_t slash = typed->find('/');
  if (slash == std::string::npos) return Faults{wrong_part(*typed)};
  const auto of = whole_number("--part", typed->substr(slash + 1), 1, most_parts);
  if (!of) return Faults{wrong_part(*typed)};
  const auto number = whole_number("--part", typed->substr(0, slash), 1, *of);
  if (!number) return Faults{wrong_part(*typed)};
  return StandsPart{*number, *of};
}

Result<StandsReader> open_stands(const std::string& scenario, const std::string& stands) {
  Result<std::string> scenario_text = read_input(scenario);
  Result<std::string> stands_text = read_input(stands);
  Faults faults;
  for (const auto* text : {&scenario_text, &stands_text}) {
    if (!*text) faults.insert(faults.end(), text->error().begin(), text->error().end());
  }
  if (!faults.empty()) return faults;
  return StandsReader::open({std::move(scenario_text).value(), shown_name(scenario),
                             std::move(stands_text).value(), shown_name(stands)});
}

Outcome told(ExitCode code, const std::string& file, const std::string& text) {
  return {code, "", {{FaultCode::malformed, file, "", text, ""}}, true};
}

Outcome outcome_of(const StandsTally& tally, const std::string& file) {
  if (tally.faulty == 0) return {ExitCode::done, "", {}, true};
  return told(ExitCode::wrong_input, file,
              fmt::format("{} of {} stands have faults; their lines say why, and the rest are "
                          "answered",
                          tally.faulty, tally.answered + tally.faulty));
}

}  // namespace

void add_many_stands_options(CommandLine& line, ManyStandsOptions& options) {
  line.value("stands", "FILE",
             "a CSV of stands: answers every row, a line of JSON each, in the place of the "
             "scenario's stand",
             &options.file);
  line.value("part", "I/N", "with --stands: only the I-th of N parts of the rows", &options.part);
  line.value("threads", "T",
             "with --stands: threads to work with (0, the default: all cores); changes no byte",
             &options.threads);
}

Outcome advise_many_stands(const std::string& scenario, const ManyStandsOptions& options,
                           bool exhaustive, const OutputOptions& output) {
  const Result<StandsPart> part = read_part(options.part);
  const auto threads = whole_number("--threads", options.threads, 0, most_threads);
  Faults faults;
  if (!part) faults = part.error();
  if (!threads) faults.insert(faults.end(), threads.error().begin(), threads.error().end());
  if (!faults.empty()) return {ExitCode::wrong_command_line, "", faults};
  if (scenario == "-" && *options.file == "-") {
    return wrong_command_line("scenario and stands cannot both come from standard input");
  }
  if (const auto refused = overwriting(*options.file, output)) return *refused;
  const std::string file = shown_name(*options.file);
  const Result<StandsReader> reader = open_stands(scenario, *options.file);
  if (!reader) return wrong_input(reader.error(), shown_name(scenario));

  const Interruption interruption;
  OutputStream stream(output.file);
  StandsOptions how;
  how.part = *part;
  how.threads = static_cast<unsigned>(*threads);
  how.exhaustive = exhaustive;
  how.stop = interruption.token();
  const StandsTally tally = [&] {
    ProgressBar bar("advising");
    how.progress = bar.progress();
    return answer_stands(*reader, how, [&](const std::string& line) { return stream.write(line); });
  }();
  if (tally.complete) stream.finish();
  if (stream.failure()) {
    return {ExitCode::fault, "", {{FaultCode::unreadable, "", "", *stream.failure(), ""}}, true};
  }
  if (!tally.complete) {
    return told(ExitCode::fault, file,
                stream.replaces_file()
                    ? "stopped before all stands were answered; nothing was written"
                    : "stopped before all stands were answered; the lines written are whole");
  }
  return outcome_of(tally, file);
}

}  // namespace staddle::cli
