// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/shared_scenario.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "io/scenario_blocks.h"

namespace staddle {
namespace {

constexpr std::array<std::string_view, 3> blocks_of_entry = {"economics", "decisions", "storm"};
// What every stand says for itself, or nobody asks of a stand among others.
constexpr std::array<std::string_view, 6> not_shared = {"format", "title",   "acres",
                                                        "stand",  "regimes", "vary"};

bool is_object(const json::Node* node) {
  return node != nullptr && node->usable && node->kind == kinds::object;
}

template <std::size_t count>
bool is_one_of(std::string_view key, const std::array<std::string_view, count>& keys) {
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}

void remove(json::Node& object, std::string_view key) {
  std::erase_if(object.members, [&](const json::Member& member) { return member.key == key; });
}

// Puts the keys of `over` in the place of those of `object`; objects inside objects alike.
void replace_keys(json::Node& object, const json::Node& over) {
  for (const json::Member& member : over.members) {
    json::Node* present = object.find(member.key);
    if (present == nullptr) {
      object.members.push_back(member);
    } else if (is_object(present) && is_object(&member.value)) {
      replace_keys(*present, member.value);
    } else {
      *present = member.value;
    }
  }
}

void replace_block(json::Node& tree, std::string_view key, const json::Node& over) {
  json::Node* shared = tree.find(key);
  if (shared == nullptr) {
    tree.members.push_back({std::string(key), over});
    return;
  }
  if (!is_object(shared) || !is_object(&over)) {
    *shared = over;
    return;
  }
  if (over.find("zone") != nullptr) remove(*shared, "perils");
  if (over.find("perils") != nullptr) remove(*shared, "zone");
  replace_keys(*shared, over);
}

bool is_scenario_key(const std::string& key) {
  const std::string pointer = "/" + key;
  const auto options = scenario_options();
  return std::any_of(options.begin(), options.end(),
                     [&](const Option& option) { return option.pointer == pointer; });
}

// Shared keys that have no meaning for this stand.
void drop_moot_keys(json::Node& tree) {
  if (!describes_standing_stand(tree)) {
    if (json::Node* economics = tree.find("economics")) remove(*economics, "after_harvest");
  }
  if (!grows_by_equations(tree)) remove(tree, "products");
}

// Whether the steps of the rest of a pointer end in what `over` put in the place of
// `shared`, rather than in what it left.
bool replaced(std::string_view rest, const json::Node* shared, const json::Node* over) {
  if (over == nullptr) return false;
  if (rest.empty() || !is_object(over) || !is_object(shared)) return true;
  rest.remove_prefix(1);
  const std::size_t slash = rest.find('/');
  const std::string_view step = rest.substr(0, slash);
  return replaced(slash == std::string_view::npos ? "" : rest.substr(slash), shared->find(step),
                  over->find(step));
}

}  // namespace

json::Node scenario_tree_of(const json::Node& shared, const json::Node& entry) {
  json::Node tree;
  tree.kind = kinds::object;
  tree.order = entry.order;
  json::Node format;
  format.kind = kinds::text;
  format.text = scenario_option("/format").choices;
  tree.members.push_back({"format", std::move(format)});
  const auto take = [&](const char* from, const char* key) {
    if (const json::Node* node = entry.find(from)) tree.members.push_back({key, *node});
  };
  take("name", "title");
  take("acres", "acres");
  take("stand", "stand");
  for (const json::Member& member : shared.members) {
    if (is_one_of(member.key, not_shared) || !is_scenario_key(member.key)) continue;
    tree.members.push_back(member);
  }
  drop_moot_keys(tree);
  for (const std::string_view key : blocks_of_entry) {
    if (const json::Node* over = entry.find(key)) replace_block(tree, key, *over);
  }
  return tree;
}

Origin origin_of(const std::string& pointer, const json::Node& shared, const json::Node& entry) {
  if (pointer == "/title") return {true, "/name"};
  const std::size_t slash = pointer.find('/', 1);
  const std::string key = pointer.substr(std::min<std::size_t>(1, pointer.size()), slash - 1);
  if (key == "acres" || key == "stand" || key.empty()) return {true, pointer};
  const std::string_view rest =
      slash == std::string::npos ? std::string_view() : std::string_view(pointer).substr(slash);
  const bool own =
      is_one_of(key, blocks_of_entry) && replaced(rest, shared.find(key), entry.find(key));
  return {own, pointer};
}

}  // namespace staddle
