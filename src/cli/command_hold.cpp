// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_hold.h"

#include "advise/scene.h"
#include "cli/input_file.h"
#include "cli/scenario_question.h"
#include "staddle/hold/ledger.h"
#include "staddle/io/hold_writer.h"
#include "staddle/report/hold_text.h"

namespace staddle::cli {
namespace {

struct HoldOptions {
  std::string scenario;
  OutputOptions output;
};

void set_up(CommandLine& line, HoldOptions& options) {
  line.argument("SCENARIO", "the scenario file; - reads standard input", &options.scenario);
  add_output_options(line, {"text", "json", "csv"}, &options.output);
}

Outcome run(const HoldOptions& options) {
  if (const auto refused = overwriting(options.scenario, options.output)) return *refused;
  const std::string name = shown_name(options.scenario);
  const Result<ScenarioQuestion> question = load_question(options.scenario);
  if (!question) return wrong_input(question.error(), name);
  if (!question->scenario.is_standing()) {
    return wrong_input(
        {{FaultCode::contradiction, "", "/stand", "bare land has no timber to hold or cut",
          "give age_yr, tpa and basal_area_ft2_ac of a standing stand"}},
        name);
  }
  const Scene scene = prepare(question->problem, {});
  if (scene.successor && !scene.successor_lev()) {
    return wrong_input({{FaultCode::no_regime, "", "",
                         "of the stand planted after the harvest: " + scene.successor->reason, ""}},
                       name);
  }
  const HoldAnswer answer = hold_or_cut(scene.stand);
  std::optional<HoldAnswer> taxed;
  if (scene.tax) {
    taxed = hold_after_tax(scene.stand, answer, scene.tax->rules, scene.tax->land_value);
  }
  const HoldAnswer* after_tax = taxed ? &*taxed : nullptr;
  if (options.output.format == "json") {
    return done(hold_json(question->scenario, answer, after_tax));
  }
  if (options.output.format == "csv") return done(hold_csv(question->scenario, answer));
  return done(hold_text(question->scenario, answer, after_tax));
}

constexpr const char* hold_example =
    "Juniper Creek, stand 4: hold or cut\n"
    "===================================\n"
    "\n"
    "\n"
    "If nothing is thinned\n"
    "---------------------\n"
    "\n"
    "If you wait 3 more years you gain $335/ac, about 16.7 % a year.\n"
    "...\n";

}  // namespace

Command hold_command() {
  return {
      "hold",
      "hold or cut: what a standing stand earns if it stands one year more",
      "Year by year what the timber is worth, how fast and why that grows, what it would have\n"
      "to earn at your rate, and in which year the stand is best sold; the same after the best\n"
      "thinning. For standing stands.",
      "staddle hold scenarios/stand/juniper_creek.json",
      hold_example,
      binder<HoldOptions>(set_up, run)};
}

}  // namespace staddle::cli
