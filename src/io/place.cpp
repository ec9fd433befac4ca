// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/place.h"

#include <cmath>

#include "staddle/base/contract.h"

namespace staddle {

Place Place::operator[](std::string_view key) const {
  const json::Node* child = is(kinds::object) ? node_->find(key) : nullptr;
  return Place(child, json::pointer_to(pointer_, key), order_);
}

Place Place::item(std::size_t index) const {
  const bool has = is(kinds::list) && index < node_->items.size();
  return Place(has ? &node_->items[index] : nullptr, json::pointer_to(pointer_, index), order_);
}

std::vector<std::string> Place::keys() const {
  std::vector<std::string> keys;
  if (!is(kinds::object)) return keys;
  for (const json::Member& member : node_->members) keys.push_back(member.key);
  return keys;
}

std::vector<Place> Place::items() const {
  std::vector<Place> places;
  if (!is(kinds::list)) return places;
  for (std::size_t i = 0; i < node_->items.size(); ++i) places.push_back(item(i));
  return places;
}

std::optional<double> Place::number() const {
  if (!is(kinds::number)) return std::nullopt;
  return node_->number;
}

std::optional<int> Place::whole() const {
  const std::optional<double> value = number();
  const bool fits = value && *value == std::floor(*value) && std::fabs(*value) < 2e9;
  if (!fits) return std::nullopt;
  return static_cast<int>(*value);
}

std::optional<std::string> Place::text() const {
  if (!is(kinds::text)) return std::nullopt;
  return node_->text;
}

std::optional<bool> Place::boolean() const {
  if (!is(kinds::boolean)) return std::nullopt;
  return node_->boolean;
}

std::string Place::as_json() const {
  require(there(), "Place::as_json needs a value");
  return json::to_text(*node_);
}

}  // namespace staddle
