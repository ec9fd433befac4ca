// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_tract.h"

#include <chrono>

#include "cli/input_file.h"
#include "cli/interruption.h"
#include "cli/number_option.h"
#include "cli/round_line.h"
#include "cli/scenario_question.h"
#include "cli/whole_number.h"
#include "staddle/io/tract_reader.h"
#include "staddle/io/tract_writer.h"
#include "staddle/report/tract_report.h"
#include "staddle/tract/solve.h"

namespace staddle::cli {
namespace {

constexpr NumberRange time_limits = above_to(0, 1e7);
constexpr NumberRange gaps = from_to(0, 1);

struct TractCommandOptions {
  std::string tract;
  std::optional<std::string> max_seconds;
  std::string max_gap = "0";
  std::string threads = "0";
  bool exhaustive = false;
  OutputOptions output;
};

void set_up(CommandLine& line, TractCommandOptions& options) {
  line.argument("TRACT", "the tract file; - reads standard input", &options.tract);
  line.value("max-seconds", "S", "stop after S seconds with the best plan so far, and its gap",
             &options.max_seconds);
  line.value("max-gap", "G",
             "stop when no plan can be worth more by a share G; 0, the default: proved best",
             &options.max_gap);
  line.value("threads", "T", "threads to work with (0, the default: all cores); changes no figure",
             &options.threads);
  line.flag("exhaustive", "put every regime of every stand into the linear program (slow)",
            &options.exhaustive);
  add_output_options(line, {"text", "json", "csv"}, &options.output);
}

// What the words of the command line mean; the clock starts here.
Result<TractOptions> read_options(const TractCommandOptions& options) {
  TractOptions how;
  Faults faults;
  const auto keep = [&](const auto& read) {
    if (!read) faults.insert(faults.end(), read.error().begin(), read.error().end());
    return read.has_value();
  };
  const auto threads = whole_number("--threads", options.threads, 0, most_threads);
  if (keep(threads)) how.threads = static_cast<unsigned>(*threads);
  const auto gap = number_option("--max-gap", options.max_gap, gaps, "");
  if (keep(gap)) how.max_gap = *gap;
  if (options.max_seconds) {
    const auto limit = number_option("--max-seconds", *options.max_seconds, time_limits, "seconds");
    if (keep(limit)) {
      using Clock = std::chrono::steady_clock;
      how.seconds_left = [start = Clock::now(), seconds = *limit] {
        return seconds - std::chrono::duration<double>(Clock::now() - start).count();
      };
    }
  }
  if (options.exhaustive) how.method = TractOptions::Method::enumerate;
  if (!faults.empty()) return faults;
  return how;
}

std::string written(const TractFile& tract, const TractSolution& solution,
                    const std::string& format) {
  if (format == "json") return tract_json(tract, solution);
  if (format == "csv") return tract_csv(solution);
  return tract_text(tract, solution);
}

Outcome run(const TractCommandOptions& options) {
  if (const auto refused = overwriting(options.tract, options.output)) return *refused;
  Result<TractOptions> how = read_options(options);
  if (!how) return {ExitCode::wrong_command_line, "", how.error()};
  const std::string name = shown_name(options.tract);
  const Result<TractFile> tract = load_tract(options.tract);
  if (!tract) return wrong_input(tract.error(), name);
  const Result<TractSolution> solution = [&] {
    const Interruption interruption;
    RoundLine line;
    how.value().stop = interruption.token();
    how.value().progress = line.progress();
    return solve(make_tract_problem(*tract), *how);
  }();
  if (!solution) return wrong_input(solution.error(), name);
  const bool infeasible = solution->status == TractSolution::Status::infeasible;
  return {infeasible ? ExitCode::no_regime : ExitCode::done,
          written(*tract, *solution, options.output.format)};
}

}  // namespace

Command tract_command() {
  return {
      "tract",
      "several stands together: income when it is wanted, and what every limit costs",
      "A tract of several stands, and income in certain years without cutting everything at\n"
      "once: what to do in which year in which stand, the money of every period, what each\n"
      "limit costs (\"each further $1,000 of income ...\"), and what the tract would be worth\n"
      "without any limit. Limits that no plan can keep are named with the most that can be had\n"
      "(exit status 4). Ctrl-C and --max-seconds give the best plan found, and its gap.",
      "staddle tract scenarios/tract/sweetgum_fork.json",
      "Sweetgum Fork: a plan for the whole tract\n"
      "=========================================\n"
      "...",
      binder<TractCommandOptions>(set_up, run)};
}

}  // namespace staddle::cli
