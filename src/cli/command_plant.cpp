// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_plant.h"

#include <filesystem>

#include "cli/input_file.h"
#include "cli/output_file.h"
#include "cli/progress_bar.h"
#include "cli/relocated.h"
#include "cli/scenario_question.h"
#include "cli/whole_number.h"
#include "staddle/io/plant_writer.h"
#include "staddle/plant/compare.h"
#include "staddle/report/plant_text.h"
#include "staddle/scenario/plant_question.h"

namespace staddle::cli {
namespace {

namespace fs = std::filesystem;

struct PlantCommandOptions {
  std::string scenario;
  std::string threads = "0";
  bool exhaustive = false;
  std::optional<std::string> to;
  OutputOptions output;
};

void set_up(CommandLine& line, PlantCommandOptions& options) {
  line.argument("SCENARIO",
                "the scenario file, with an establishment block; - reads standard input",
                &options.scenario);
  line.value("to", "FILE",
             "write the scenario with the best way in use to this new file, for every other "
             "command",
             &options.to);
  line.value("threads", "T", "threads to work with (0, the default: all cores); changes no figure",
             &options.threads);
  line.flag("exhaustive", "value every plan of every way: slower, the same answer",
            &options.exhaustive);
  add_output_options(line, {"text", "json", "csv"}, &options.output);
}

Fault nothing_to_compare() {
  return {FaultCode::missing_key, "", "/establishment",
          "this block names the ways to start the next stand, and it is missing",
          "\"establishment\": {} compares those that are built in"};
}

// What can be wrong with the file that --to names.
std::optional<Outcome> refused_target(const PlantCommandOptions& options) {
  if (!options.to) return std::nullopt;
  std::error_code error;
  if (fs::exists(fs::symlink_status(*options.to, error))) {
    return wrong_command_line("option --to: " + *options.to + " exists and is not overwritten");
  }
  if (options.output.file && fs::path(*options.output.file) == fs::path(*options.to)) {
    return wrong_command_line("--to and -o name the same file, " + *options.to);
  }
  return std::nullopt;
}

// Writes the scenario; nothing where all went well.
std::optional<Outcome> write_scenario(const PlantCommandOptions& options, const std::string& text,
                                      const std::string& best) {
  const std::string changed = scenario_using(text, best, [&](const std::string& name) {
    return relocated(name, options.scenario, *options.to);
  });
  const Result<Scenario> check = read_scenario(changed, *options.to, loader_beside(*options.to));
  if (!check) return wrong_input(check.error(), *options.to);
  const std::optional<std::string> failure = write_output(changed, options.to);
  if (!failure) return std::nullopt;
  return Outcome{ExitCode::fault, "", {{FaultCode::unreadable, "", "", *failure, ""}}};
}

PlantSolution solve(const Scenario& scenario, const PlantCommandOptions& options,
                    std::uint64_t threads) {
  ProgressBar bar("planting");
  PlantOptions comparing;
  comparing.exhaustive = options.exhaustive;
  comparing.threads = static_cast<unsigned>(threads);
  comparing.progress = bar.progress();
  return compare_establishments(make_plant_problem(scenario), comparing);
}

Outcome run(const PlantCommandOptions& options) {
  if (const auto refused = overwriting(options.scenario, options.output)) return *refused;
  if (const auto refused = refused_target(options)) return *refused;
  const Result<std::uint64_t> threads = whole_number("--threads", options.threads, 0, most_threads);
  if (!threads) return {ExitCode::wrong_command_line, "", threads.error()};
  const std::string name = shown_name(options.scenario);
  const Result<std::string> text = read_input(options.scenario);
  if (!text) return wrong_input(text.error(), name);
  const Result<Scenario> scenario = read_scenario(*text, name, loader_beside(options.scenario));
  if (!scenario) return wrong_input(scenario.error(), name);
  if (!scenario->establishment) return wrong_input({nothing_to_compare()}, name);
  const PlantSolution solution = solve(*scenario, options, *threads);
  if (solution.ranking.empty()) {
    Faults faults;
    for (const AlternativeAnswer& answer : solution.alternatives) {
      faults.push_back({FaultCode::no_regime, "", "/establishment",
                        "\"" + answer.alternative.name + "\": " + answer.reason, ""});
    }
    return wrong_input(std::move(faults), name);
  }
  if (options.to) {
    const std::string& best = solution.alternatives[solution.ranking.front()].alternative.name;
    if (const auto failed = write_scenario(options, *text, best)) return *failed;
  }
  if (options.output.format == "json") return done(plant_json(*scenario, solution));
  if (options.output.format == "csv") return done(plant_csv(solution));
  return done(plant_text(*scenario, solution));
}

}  // namespace

Command plant_command() {
  return {"plant",
          "after the cut: how to prepare the ground and what to plant, each way at its best",
          "Every way of starting the next stand that you name, with what it costs and gains, at\n"
          "its own best plan; what the next better one is worth, what would have to come true for\n"
          "two to be equal, the rules of time and law, and which species the ground asks for.",
          "staddle plant scenarios/plant/next_stand.json",
          "Fiddler Bottom: how to start the next stand\n"
          "===========================================\n"
          "...",
          binder<PlantCommandOptions>(set_up, run)};
}

}  // namespace staddle::cli
