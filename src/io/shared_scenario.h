// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "io/json_tree.h"

// Several stands that share one file's products, economics, decisions and storms. An entry
// is one of them: {name, acres, group, stand, economics, decisions, storm}, the last three
// naming the shared keys that they replace, one by one and at any depth.
namespace staddle {

// The scenario of one stand: the blocks of `shared` that a scenario can have, with what the
// entry says instead. Its own stand, acres, stated regimes and sweeps are left out; so is a
// shared after_harvest where the land of the entry is bare, and shared products where its
// growth comes from a table. A zone and own perils replace each other.
json::Node scenario_tree_of(const json::Node& shared, const json::Node& entry);

// Where a pointer of that tree leads.
struct Origin {
  bool in_entry = false;
  std::string pointer;  // of the entry, or of the shared file
};
Origin origin_of(const std::string& pointer, const json::Node& shared, const json::Node& entry);

}  // namespace staddle
