// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_check.h"

#include "cli/input_file.h"
#include "cli/scenario_question.h"
#include "staddle/io/check_writer.h"
#include "staddle/io/yield_table_reader.h"

namespace staddle::cli {
namespace {

struct CheckOptions {
  std::string file;
  OutputOptions output;
};

void set_up(CommandLine& line, CheckOptions& options) {
  line.argument("FILE",
                "a scenario or a tract (JSON), or a yield table (CSV); - reads JSON from "
                "standard input",
                &options.file);
  add_output_options(line, {"text", "json"}, &options.output);
}

Result<SoundInput> check_yield_table(const std::string& path) {
  const Result<std::string> text = read_input(path);
  if (!text) return text.error();
  const Result<YieldTable> table = read_yield_table(*text, shown_name(path));
  if (!table) return table.error();
  return SoundInput{shown_name(path), {}, {}};
}

Result<SoundInput> check_json_file(const std::string& path) {
  const Result<std::string> text = read_input(path);
  if (!text) return text.error();
  if (says_it_is_a_tract(*text)) {
    const Result<TractFile> tract = read_tract(*text, shown_name(path), loader_beside(path));
    if (!tract) return tract.error();
    return SoundInput{shown_name(path), tract->assumed, tract->questions};
  }
  const Result<Scenario> scenario = read_scenario(*text, shown_name(path), loader_beside(path));
  if (!scenario) return scenario.error();
  Faults faults = stated_regime_faults(*scenario);
  for (Fault& fault : no_plan_faults(*scenario)) faults.push_back(std::move(fault));
  if (!faults.empty()) return faults;
  return SoundInput{shown_name(path), scenario->assumed, scenario->questions};
}

Outcome run(const CheckOptions& options) {
  if (const auto refused = overwriting(options.file, options.output)) return *refused;
  const Result<SoundInput> checked = options.file.ends_with(".csv")
                                         ? check_yield_table(options.file)
                                         : check_json_file(options.file);
  if (!checked) return wrong_input(checked.error(), shown_name(options.file));
  return done(options.output.format == "json" ? check_json(*checked) : check_text(*checked));
}

const char* const check_example_output =
    R"(scenarios/stand/own_yield_table.json: nothing wrong

It assumes
  /stand/yield_table_options/recovery_per_yr = 0.09
  /stand/yield_table_options/density_exponent = 0.45
  /economics/thinning_price_discount_usd_per_ton = 0
  /economics/sale_fee_fraction = 0
  /economics/harvest_tax_fraction = 0
  /economics/regeneration_delay_yr = 1
  /economics/annual_cost_usd_ac = 8
  /economics/annual_income_usd_ac = 0
  /economics/practices = []
  /economics/flows = []
  /economics/after_harvest = "replant"
  /decisions/max_thinnings = 2
  /decisions/thinning_age_yr = [12,35]
  /decisions/removal_fraction = [0.2,0.25,0.3,0.3333333333333333,0.4,0.45,0.5]
  /decisions/years_between_entries = 5
  /decisions/final_harvest_age_yr = [20,45]
  /decisions/min_removal_tons_ac = 0
  /decisions/min_sale_tons = 0
  /decisions/min_residual_basal_area_ft2_ac = 0)";

}  // namespace

Command check_command() {
  return {"check",
          "all faults of a file at once, or what it leaves to defaults",
          "Is anything wrong with this file? Every fault is named at once, with its place, what\n"
          "was found and what is allowed. Where nothing is wrong: which values it does not give,\n"
          "and what is assumed for them.",
          "staddle check scenarios/stand/own_yield_table.json",
          check_example_output,
          binder<CheckOptions>(set_up, run)};
}

}  // namespace staddle::cli
