// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_grow.h"

#include "cli/chosen_regime.h"
#include "cli/input_file.h"
#include "cli/scenario_question.h"
#include "staddle/io/growth_writer.h"

namespace staddle::cli {
namespace {

struct GrowOptions {
  std::string scenario;
  std::string regime = "best";
  OutputOptions output;
};

void set_up(CommandLine& line, GrowOptions& options) {
  line.argument("SCENARIO", "the scenario file; - reads standard input", &options.scenario);
  line.value("regime", "NAME",
             "best (the default), none (nothing is cut), or the name of a regime stated in the "
             "scenario",
             &options.regime);
  add_output_options(line, {"text", "csv", "json"}, &options.output);
}

const char* const growth_example =
    "Juniper Creek, stand 4\n"
    "none: nothing is cut\n"
    "\n"
    "                                                                                "
    "                      live\n"
    "                                               stumpage  dominant               "
    "             mean    crown\n"
    "year    age  sawtimber  chip-n-saw   pulpwood     value    height     trees  "
    "basal area  diameter    ratio\n"
    "      years  tons/acre   tons/acre  tons/acre    $/acre      feet  per acre  "
    "sq ft/acre    inches  percent\n"
    "--------------------------------------------------------------------------------"
    "--------------------------\n"
    "2027     15        0.0         8.9       58.7       572        49       500     "
    "    125       6.8       39\n"
    "2028     16        0.0        13.8       62.4       685        51       489     "
    "    131       7.0       37";

Outcome run(const GrowOptions& options) {
  if (const auto refused = overwriting(options.scenario, options.output)) return *refused;
  const Result<ScenarioQuestion> question = load_question(options.scenario);
  if (!question) return wrong_input(question.error(), shown_name(options.scenario));
  const ChosenRegime chosen = choose_regime(*question, options.regime);
  if (!chosen.regime) return chosen.refused;
  const auto write = options.output.format == "json"  ? growth_json
                     : options.output.format == "csv" ? growth_csv
                                                      : growth_text;
  GrowthContext context;
  if (chosen.after_tax) context.after_tax = &*chosen.after_tax;
  const AdviseProblem& problem = question->problem;
  if (problem.equations) {
    context.outside_fitted_range = outside_fitted_range_by_year(
        {*problem.equations, problem.site_index}, *chosen.regime);
  }
  return done(write(question->scenario, *chosen.regime, context));
}

}  // namespace

Command grow_command() {
  return {"grow",
          "the stand year by year under one regime",
          "What stands on an acre each year: height, trees, basal area, diameter, crowns, tons by\n"
          "product and what they are worth. A year with a thinning has two rows.",
          "staddle grow scenarios/stand/juniper_creek.json --regime none",
          growth_example,
          binder<GrowOptions>(set_up, run)};
}

}  // namespace staddle::cli
