// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/scenario_reader.h"

#include <algorithm>

#include "io/establishment_block.h"
#include "io/scenario_blocks.h"
#include "io/vary_block.h"
#include "staddle/base/contract.h"

namespace staddle {

std::vector<ScenarioBlock> scenario_blocks() {
  return {head_block(),  stand_block(), products_block(), economics_block(), decisions_block(),
          storm_block(), tax_block(),   site_block(),     ready_block(),     regimes_block(),
          establishment_block(), vary_block()};
}

std::span<const Option> scenario_options() {
  static const std::vector<Option> all = [] {
    std::vector<Option> options;
    for (const ScenarioBlock& block : scenario_blocks()) {
      options.insert(options.end(), block.options.begin(), block.options.end());
    }
    return options;
  }();
  return all;
}

const Option& scenario_option(std::string_view pointer) {
  const std::span<const Option> all = scenario_options();
  const auto found = std::find_if(all.begin(), all.end(),
                                  [&](const Option& option) { return option.pointer == pointer; });
  require(found != all.end(), "scenario_option is asked for an option of the format");
  return *found;
}

Scenario read_scenario_tree(json::Node& tree, const FileLoader& load, FaultList& faults) {
  std::vector<DefaultCondition> conditions;
  for (const ScenarioBlock& block : scenario_blocks()) {
    conditions.insert(conditions.end(), block.conditions.begin(), block.conditions.end());
  }
  Scenario scenario;
  scenario.file = faults.file();
  scenario.assumed = fill_defaults(tree, scenario_options(), conditions);
  ScenarioReading reading{.tree = tree,
                          .root = Place(&tree, ""),
                          .faults = faults,
                          .load = load,
                          .assumed = scenario.assumed,
                          .questions = scenario.questions};
  for (const ScenarioBlock& block : scenario_blocks()) block.read(reading, scenario);
  return scenario;
}

Result<Scenario> read_scenario(const std::string& text, const std::string& file,
                               const FileLoader& load) {
  FaultList faults(file);
  auto tree = json::parse(text, faults);
  if (!tree) return faults.in_file_order();
  check_values(*tree, scenario_options(), faults);
  Scenario scenario = read_scenario_tree(*tree, load, faults);
  if (!faults.empty()) return faults.in_file_order();
  return scenario;
}

}  // namespace staddle
