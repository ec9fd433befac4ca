// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_advise.h"

#include "cli/input_file.h"
#include "cli/scenario_question.h"
#include "staddle/io/advice_writer.h"

namespace staddle::cli {
namespace {

struct AdviseCommandOptions {
  std::string scenario;
  bool exhaustive = false;
  OutputOptions output;
};

void set_up(CommandLine& line, AdviseCommandOptions& options) {
  line.argument("SCENARIO", "the scenario file; - reads standard input", &options.scenario);
  line.flag("exhaustive", "value every regime instead of proving most of them worse (slow)",
            &options.exhaustive);
  add_output_options(line, {"text", "json"}, &options.output);
}

Outcome run(const AdviseCommandOptions& options) {
  if (const auto refused = overwriting(options.scenario, options.output)) return *refused;
  const Result<ScenarioQuestion> question = load_question(options.scenario);
  if (!question) return wrong_input(question.error(), shown_name(options.scenario));
  AdviseOptions how;
  how.exhaustive = options.exhaustive;
  const Result<Advice> advice = advise(question->problem, how);
  if (!advice) return wrong_input(advice.error(), shown_name(options.scenario));
  return done(advice_json(question->scenario, *advice));
}

}  // namespace

Command advise_command() {
  return {"advise",
          "when to thin and cut a stand, how much, and what it is worth",
          "What to do with one stand, this season and later: the thinnings and the final harvest\n"
          "that are worth most among all that the scenario allows, what each of your own plans\n"
          "would cost beside them, how sure the advice is, and what could go wrong.",
          "staddle advise scenarios/stand/SCENARIO.json",
          "",
          binder<AdviseCommandOptions>(set_up, run)};
}

}  // namespace staddle::cli
