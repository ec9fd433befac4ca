// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_vary.h"

#include "cli/input_file.h"
#include "cli/progress_bar.h"
#include "cli/scenario_question.h"
#include "cli/whole_number.h"
#include "staddle/io/vary_writer.h"
#include "staddle/report/vary_text.h"
#include "staddle/scenario/vary_question.h"
#include "staddle/vary/vary.h"

namespace staddle::cli {
namespace {

struct VaryCommandOptions {
  std::string scenario;
  std::string threads = "0";
  bool separate = false;
  OutputOptions output;
};

void set_up(CommandLine& line, VaryCommandOptions& options) {
  line.argument("SCENARIO", "the scenario file, with a vary block; - reads standard input",
                &options.scenario);
  line.value("threads", "T", "threads to work with (0, the default: all cores); changes no figure",
             &options.threads);
  line.flag("separate", "search every case on its own: slower, the same answer", &options.separate);
  add_output_options(line, {"text", "json", "csv"}, &options.output);
}

Fault nothing_to_vary() {
  return {FaultCode::missing_key, "", "/vary",
          "this block says what is to be varied, and it is missing",
          "\"vary\": {} asks for the break-evens alone"};
}

Outcome run(const VaryCommandOptions& options) {
  if (const auto refused = overwriting(options.scenario, options.output)) return *refused;
  const Result<std::uint64_t> threads = whole_number("--threads", options.threads, 0, most_threads);
  if (!threads) return {ExitCode::wrong_command_line, "", threads.error()};
  const std::string name = shown_name(options.scenario);
  const Result<Scenario> scenario = load_scenario(options.scenario);
  if (!scenario) return wrong_input(scenario.error(), name);
  if (!scenario->vary) return wrong_input({nothing_to_vary()}, name);
  const Result<VarySolution> solution = [&] {
    ProgressBar bar("varying");
    VaryOptions varying;
    varying.threads = static_cast<unsigned>(*threads);
    varying.progress = bar.progress();
    if (options.separate) varying.method = VaryOptions::Method::separate;
    return vary(make_vary_problem(*scenario), varying);
  }();
  if (!solution) return wrong_input(solution.error(), name);
  if (options.output.format == "json") return done(vary_json(*scenario, *solution));
  if (options.output.format == "csv") return done(vary_csv(*solution));
  return done(vary_text(*scenario, *solution));
}

}  // namespace

Command vary_command() {
  return {"vary",
          "other prices, rates and costs: what would change the advice, and where it turns",
          "The best plan again at every rate and price set you name; what each plan would lose\n"
          "if it came otherwise, and which is never far from the best; one figure at a time, two\n"
          "at a time; and the rate, prices and costs at which the advice turns.",
          "staddle vary scenarios/vary/will_prices_hold.json",
          "Whippoorwill Bench: what would change the advice\n"
          "================================================\n"
          "...",
          binder<VaryCommandOptions>(set_up, run)};
}

}  // namespace staddle::cli
