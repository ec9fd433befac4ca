// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_grow.h"

#include <algorithm>

#include "advise/scene.h"
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
             "best (the default), none (nothing is cut), or the name of a stated regime",
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

// The regime that was asked for, or the outcome that says why there is none.
struct Told {
  std::optional<RegimeReport> regime;
  Outcome refused;
};

Told tell(const StandCase& stand_case, const StatedRegime& regime, const std::string& place,
          const std::string& file) {
  Result<RegimeReport> report = simulate(stand_case, regime);
  if (report) return {std::move(report).value(), {}};
  Faults faults = report.error();
  for (Fault& fault : faults) fault.place = place + fault.place;
  return {std::nullopt, wrong_input(faults, file)};
}

Told tell_best(const AdviseProblem& problem, const std::string& file) {
  const Scene scene = solve_scene(problem, {});
  if (!scene.solved()) {
    return {std::nullopt,
            wrong_input({{FaultCode::no_regime, "", "", scene.solution.reason, ""}}, file)};
  }
  return tell(scene.stand.stand_case, stated("best", scene.best().regime), "", file);
}

Told tell_stated(const ScenarioQuestion& question, const std::string& name) {
  const std::vector<StatedRegime>& regimes = question.problem.stated;
  const auto at = std::find_if(regimes.begin(), regimes.end(),
                               [&](const StatedRegime& regime) { return regime.name == name; });
  if (at != regimes.end()) {
    return tell(question.problem.stand.stand_case, *at,
                "/regimes/" + std::to_string(at - regimes.begin()), question.scenario.file);
  }
  Words names{"best", "none"};
  for (const StatedRegime& regime : regimes) names.push_back(regime.name);
  std::string known;
  for (const std::string& candidate : names) known += (known.empty() ? "" : ", ") + candidate;
  const std::string nearest = nearest_name(name, names);
  return {std::nullopt, wrong_command_line("option --regime: no regime is called \"" + name +
                                               "\"; there are: " + known,
                                           nearest.empty() ? "" : "did you mean " + nearest + "?")};
}

Told tell_regime(const ScenarioQuestion& question, const std::string& name) {
  if (name == "best") return tell_best(question.problem, question.scenario.file);
  if (name != "none") return tell_stated(question, name);
  const StandProblem& stand = question.problem.stand;
  const Age last = std::min(std::max(stand.lattice.final_to, stand.stand_case.present()),
                            stand.stand_case.growth.last_age());
  return tell(stand.stand_case, {"none", {}, last}, "", question.scenario.file);
}

Outcome run(const GrowOptions& options) {
  if (const auto refused = overwriting(options.scenario, options.output)) return *refused;
  const Result<ScenarioQuestion> question = load_question(options.scenario);
  if (!question) return wrong_input(question.error(), shown_name(options.scenario));
  const Told told = tell_regime(*question, options.regime);
  if (!told.regime) return told.refused;
  const auto write = options.output.format == "json"  ? growth_json
                     : options.output.format == "csv" ? growth_csv
                                                      : growth_text;
  return done(write(question->scenario, *told.regime));
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
