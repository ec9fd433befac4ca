// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "io/option_check.h"
#include "io/place.h"
#include "staddle/io/scenario_reader.h"

// A scenario file is read block by block, each in a file of its own: its options, the
// conditions of its defaults, and the rules between its values.
namespace staddle {

// As many as /decisions/max_thinnings can ask for: the evaluator remembers no more cuts.
inline constexpr std::size_t most_stated_thinnings = 6;

// What one block learns and a later one needs.
struct ScenarioReading {
  const json::Node& tree;
  Place root;  // of the tree
  FaultList& faults;
  const FileLoader& load;
  std::vector<Assumption>& assumed;
  std::vector<std::string>& questions;

  bool standing = false;
  std::optional<int> present_age;  // 0 on bare land; absent: not known for a fault
  // The ages that the stand's yield tables cover, of several their union.
  std::optional<int> first_table_age, last_table_age;
  bool from_tables = false;  // of either kind
  bool tabled_regimes = false;
  std::optional<std::vector<std::string>> products;  // absent: not known for a fault

  void fault(const Place& at, FaultCode code, std::string text, std::string hint = "") {
    faults.add(at.order(), code, at.pointer(), std::move(text), std::move(hint));
  }
};

struct ScenarioBlock {
  std::span<const Option> options;
  std::span<const DefaultCondition> conditions;
  // Fills its part of the scenario; what a fault makes meaningless stays as it was.
  void (*read)(ScenarioReading& reading, Scenario& scenario);
};

// Tables that stand in a file of their own.
std::span<const Option> stand_options();
std::span<const Option> economics_options();
std::span<const Option> decisions_options();
std::span<const Option> establishment_options();

ScenarioBlock head_block();
ScenarioBlock stand_block();
ScenarioBlock products_block();
ScenarioBlock economics_block();
ScenarioBlock decisions_block();
ScenarioBlock storm_block();
ScenarioBlock tax_block();
ScenarioBlock site_block();
ScenarioBlock ready_block();
ScenarioBlock regimes_block();

// In the order in which they are read.
std::vector<ScenarioBlock> scenario_blocks();

// The scenario of a tree whose single values were checked: fills in the defaults and reads
// block after block. What a fault makes meaningless stays as it was.
Scenario read_scenario_tree(json::Node& tree, const FileLoader& load, FaultList& faults);

// One option of scenario_options(). REQUIRES: that there is one with this pointer.
const Option& scenario_option(std::string_view pointer);

// Whether a stand block describes trees that stand already.
bool describes_standing_stand(const json::Node& root);
// Whether the stand grows by built-in equations.
bool grows_by_equations(const json::Node& root);

}  // namespace staddle
