// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "io/json_tree.h"

namespace staddle {

// A place of a checked tree, there or not: what is read from it is absent where the
// file has nothing there or something that was reported already.
class Place {
 public:
  Place(const json::Node* node, std::string pointer, int order = 0)
      : node_(node), pointer_(std::move(pointer)), order_(node ? node->order : order) {}

  Place operator[](std::string_view key) const;
  Place item(std::size_t index) const;
  // The keys of an object, in the order of the file.
  std::vector<std::string> keys() const;
  std::vector<Place> items() const;  // of a list

  bool there() const { return node_ != nullptr; }
  bool given() const { return node_ && !node_->assumed; }  // in the file, right or wrong
  bool usable() const { return node_ && node_->usable; }
  bool is(ValueKinds kind) const { return usable() && kind.has(node_->kind); }
  std::optional<double> number() const;
  std::optional<int> whole() const;
  std::optional<std::string> text() const;
  std::optional<bool> boolean() const;
  // 0 and "" where there is nothing usable: for values that a fault makes moot.
  double number_or_zero() const { return number().value_or(0.0); }
  std::string text_or_empty() const { return text().value_or(""); }

  const std::string& pointer() const { return pointer_; }
  int order() const { return order_; }  // of a missing key: that of the object it misses in
  std::string as_json() const;          // REQUIRES: there()

 private:
  const json::Node* node_;
  std::string pointer_;
  int order_;
};

}  // namespace staddle
