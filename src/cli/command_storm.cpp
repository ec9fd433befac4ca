// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_storm.h"

#include "cli/input_file.h"
#include "cli/progress_bar.h"
#include "cli/scenario_question.h"
#include "cli/whole_number.h"
#include "staddle/advise/storm_forecast.h"
#include "staddle/io/model_library.h"
#include "staddle/io/storm_writer.h"
#include "staddle/report/storm_text.h"

namespace staddle::cli {
namespace {

// Every whole number up to it survives a reader that takes numbers as doubles.
constexpr std::uint64_t largest_seed = 9'007'199'254'740'992;

struct StormOptions {
  std::string scenario;
  std::string futures = "10000";
  std::string seed = "1";
  std::string threads = "0";
  bool choices = false;
  OutputOptions output;
};

void set_up(CommandLine& line, StormOptions& options) {
  line.argument("SCENARIO", "the scenario file; - reads standard input", &options.scenario);
  line.value("futures", "N", "how many futures to draw (10000 by default)", &options.futures);
  line.value("seed", "S", "which futures: another number draws others (1 by default)",
             &options.seed);
  line.flag("choices", "also let the owner clear what a storm leaves, where that is better",
            &options.choices);
  line.value("threads", "T", "threads to work with (0, the default: all cores); changes no figure",
             &options.threads);
  add_output_options(line, {"text", "json", "csv"}, &options.output);
}

Result<FuturesOptions> futures_asked(const StormOptions& options) {
  Faults faults;
  const auto number = [&](const char* option, const std::string& typed, std::uint64_t low,
                          std::uint64_t high) {
    const Result<std::uint64_t> value = whole_number(option, typed, low, high);
    if (value) return *value;
    faults.insert(faults.end(), value.error().begin(), value.error().end());
    return low;
  };
  FuturesOptions asked;
  asked.futures = number("--futures", options.futures, FuturesOptions::least_futures,
                         FuturesOptions::most_futures);
  asked.seed = number("--seed", options.seed, 0, largest_seed);
  asked.threads = static_cast<unsigned>(number("--threads", options.threads, 0, most_threads));
  asked.choices = options.choices;
  if (!faults.empty()) return faults;
  return asked;
}

Fault no_storms() {
  std::string zones;
  for (const StormZone& zone : built_in_storm_zones()) {
    if (!zone.perils.empty()) zones += (zones.empty() ? "" : ", ") + zone.id;
  }
  return {FaultCode::missing_key, "", "/storm/zone",
          "no storm zone was chosen, so there are no storms to draw; there are " + zones,
          "or give perils of your own"};
}

Outcome run(const StormOptions& options) {
  if (const auto refused = overwriting(options.scenario, options.output)) return *refused;
  Result<FuturesOptions> asked = futures_asked(options);
  if (!asked) return {ExitCode::wrong_command_line, "", asked.error()};
  const std::string name = shown_name(options.scenario);
  const Result<ScenarioQuestion> question = load_question(options.scenario);
  if (!question) return wrong_input(question.error(), name);
  const Scenario& scenario = question->scenario;
  if (!scenario.hazard.active()) return wrong_input({no_storms()}, name);
  const Result<StormForecast> forecast = [&] {
    ProgressBar bar("drawing futures");
    FuturesOptions drawing = *asked;
    drawing.progress = bar.progress();
    return forecast_storms(question->problem, drawing);
  }();
  if (!forecast) return wrong_input(forecast.error(), name);
  if (options.output.format == "json") return done(storm_json(scenario, *forecast));
  if (options.output.format == "csv") return done(storm_csv(*forecast));
  return done(storm_text(scenario, *forecast));
}

}  // namespace

Command storm_command() {
  return {"storm",
          "what storms may do to a stand: simulated futures of the best and your own plans",
          "What the best plan and each of your own are worth in good and bad luck, how likely\n"
          "storms are to take half the stand before it is cut, and the worst that one of them\n"
          "may do. Needs a storm zone, or perils of your own, in the scenario.",
          "staddle storm scenarios/storm/half_or_a_third.json --futures 100000",
          "Heron Slough, stand 7: what storms may do\n"
          "=========================================\n"
          "...",
          binder<StormOptions>(set_up, run)};
}

}  // namespace staddle::cli
