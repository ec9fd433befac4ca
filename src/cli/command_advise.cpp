// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_advise.h"

#include "advise/scene.h"
#include "cli/input_file.h"
#include "cli/many_stands.h"
#include "cli/scenario_question.h"
#include "cli/storm_zone_ids.h"
#include "staddle/io/advice_writer.h"
#include "staddle/io/proof_writer.h"
#include "staddle/optimise/prove.h"
#include "staddle/report/text.h"

namespace staddle::cli {
namespace {

struct AdviseCommandOptions {
  std::string scenario;
  bool exhaustive = false;
  bool prove = false;
  ManyStandsOptions many;
  OutputOptions output;
};

void set_up(CommandLine& line, AdviseCommandOptions& options) {
  line.argument("SCENARIO", "the scenario file; - reads standard input", &options.scenario);
  line.flag("exhaustive", "value every regime instead of proving most of them worse (slow)",
            &options.exhaustive);
  line.flag("prove", "also prove the value as a linear program (lattices of up to 5,000 states)",
            &options.prove);
  add_many_stands_options(line, options.many);
  add_output_options(line, {"text", "json"}, &options.output);
}

// The same lattice after tax, solved and proved, unless a basis enters.
Faults prove_after_tax(const Scene& scene, StandProblem problem, std::optional<Proof>& proof) {
  problem.stand_case = after_tax(scene, problem.stand_case).stand_case();
  if (problem.stand_case.basis) return {};
  const Result<Proof> proved = prove(problem, solve(problem));
  if (!proved) return proved.error();
  proof = *proved;
  return {};
}

// Proves the optimum of the scenario, and that of the stand which follows a standing one.
Result<AnswerProof> prove_answer(const AdviseProblem& problem) {
  const Scene scene = solve_scene(problem, {});
  const Result<Proof> stand = prove(scene.stand, scene.solution);
  if (!stand) return stand.error();
  AnswerProof proof{*stand, std::nullopt, std::nullopt};
  if (scene.successor) {
    const Result<Proof> successor = prove(*problem.successor, *scene.successor);
    if (!successor) return successor.error();
    proof.successor = *successor;
  }
  if (!scene.tax) return proof;
  proof.after_tax.emplace();
  Faults faults = prove_after_tax(scene, scene.stand, proof.after_tax->stand);
  if (faults.empty() && scene.successor) {
    faults = prove_after_tax(scene, *problem.successor, proof.after_tax->successor);
  }
  if (!faults.empty()) return faults;
  return proof;
}

// A proof that fails means that the program is wrong, and with it perhaps the answer.
Outcome disagreement(const AnswerProof& proof) {
  return {ExitCode::fault,
          "",
          {{FaultCode::contradiction, "", "",
            "the proof failed and no answer is given; please "
            "report it with the scenario: " +
                proof_text(proof),
            ""}}};
}

// Why a proof cannot be had, asked before anything is solved; nothing where it can.
std::optional<Outcome> refused_proof(const AdviseProblem& problem, const std::string& file) {
  if (!problem.tabled.empty()) {
    return wrong_command_line("option --prove: tables of fixed regimes leave no lattice to prove");
  }
  std::optional<Fault> refusal = refusal_to_prove(problem.stand);
  if (!refusal && problem.successor) refusal = refusal_to_prove(*problem.successor);
  if (refusal) return wrong_input({*refusal}, file);
  return std::nullopt;
}

Outcome run(const AdviseCommandOptions& options) {
  if (const auto refused = overwriting(options.scenario, options.output)) return *refused;
  if (options.many.file) {
    if (options.prove) return wrong_command_line("option --prove: one stand alone can be proved");
    return advise_many_stands(options.scenario, options.many, options.exhaustive, options.output);
  }
  if (options.many.part) return wrong_command_line("option --part: it needs --stands beside it");
  const std::string file = shown_name(options.scenario);
  const Result<ScenarioQuestion> question = load_question(options.scenario);
  if (!question) return wrong_input(question.error(), file);
  if (options.prove) {
    if (const auto refused = refused_proof(question->problem, file)) return *refused;
  }
  AdviseOptions how;
  how.exhaustive = options.exhaustive;
  const Result<Advice> advice = advise(question->problem, how);
  if (!advice) return wrong_input(advice.error(), file);
  std::optional<AnswerProof> proof;
  if (options.prove) {
    const Result<AnswerProof> proved = prove_answer(question->problem);
    if (!proved) return wrong_input(proved.error(), file);
    if (!proved->agrees()) return disagreement(*proved);
    proof = *proved;
  }
  if (options.output.format == "json") {
    return done(advice_json(question->scenario, *advice, proof ? &*proof : nullptr));
  }
  return done(text_answer(question->scenario, *advice, storm_zone_ids()) +
              (proof ? "\n" + proof_text(*proof) : ""));
}

const char* const example_answer =
    R"(Juniper Creek, stand 4
======================
A stand that is ready for its first thinning: when to thin, how much, and what waiting earns.
Owner: Marlow Pettibone (invented)

 1. 62 acres of loblolly pine, 15 years old in 2027: 500 trees and 125 square feet of basal area an
    acre, 6.8 inches in mean diameter, 49 feet tall, live crown 39 percent; site index 70 feet at
    age 25; averages as the owner gives them, not measured by plots here.
 2. A thinning is due. Waiting two years, to 2029, earns about $5 an acre, so thin when a good buyer
    is found, this season or later: in 2029 leave 91 square feet of basal area and 302 trees an
    acre, which takes about 33 percent of the basal area (cut this season, leave 83 square feet);
    take out every fifth row for access (20 percent of the basal area) and the rest from below
    between the rows: forked, cankered and suppressed trees first; never every second row. With a
    factor-10 prism that leaves 9.1 "in" trees at a point on average.)";

}  // namespace

Command advise_command() {
  return {
      "advise",
      "when to thin and cut a stand, how much, and what it is worth",
      "What to do with one stand, this season and later: the thinnings and the final harvest\n"
      "that are worth most among all that the scenario allows, what each of your own plans\n"
      "would cost beside them, how sure the advice is, and what could go wrong.\n"
      "\n"
      "With --stands it answers every row of a CSV of stands with the scenario's prices and\n"
      "choices: a line of JSON for each, in the order of the file. A row with a fault gives a\n"
      "line with its errors, and the rest go on. Columns: name,acres,group,model,site_index_ft,\n"
      "dominant_height_ft,planted_tpa,age_yr,tpa,basal_area_ft2_ac,live_crown_ratio,\n"
      "last_thinning_age_yr,last_thinning_removal_fraction; a blank cell is a key left out.\n"
      "Long files are cut for several machines or sittings: --part 3/20 -o 3.jsonl answers the\n"
      "third of twenty parts, and the parts put together in order are the whole. A file of -o is\n"
      "there only when it is whole: after an interruption run the parts whose file is missing.",
      "staddle advise scenarios/stand/juniper_creek.json",
      example_answer,
      binder<AdviseCommandOptions>(set_up, run)};
}

}  // namespace staddle::cli
