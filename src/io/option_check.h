// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "io/fault_list.h"
#include "io/json_tree.h"
#include "staddle/io/option.h"
#include "staddle/scenario/scenario.h"

// What a table of options says of a tree: the checks of single values, and the
// defaults. Rules between values are written out in each block's own reader.
namespace staddle {

// When the default of an option does not always apply.
struct DefaultCondition {
  std::string_view pointer;
  // `parent`: the object that the key would stand in.
  bool (*applies)(const json::Node& parent, const json::Node& root);
};

// Reports unknown and missing keys, wrong kinds, numbers out of range, texts that are
// no choice, control characters, and lists too short or too long, and marks what it
// reports as not usable. What is marked so already is passed over.
void check_values(json::Node& root, std::span<const Option> options, FaultList& faults);

// Adds the missing keys that have a default, marked as assumed, and lists them.
std::vector<Assumption> fill_defaults(json::Node& root, std::span<const Option> options,
                                      std::span<const DefaultCondition> conditions);

// "from 30 to 120 ft": what the range of an option allows.
std::string range_text(const Option& option);

// "did you mean \"planted_tpa\"?", or nothing where no name is near.
std::string did_you_mean(const std::string& nearest);

}  // namespace staddle
