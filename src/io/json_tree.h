// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "io/fault_list.h"
#include "staddle/io/option.h"

// A JSON text as a tree that keeps what the checks need and a JSON library drops: the
// order of keys, repeated keys, and numbers that no double can hold.
namespace staddle::json {

struct Member;

struct Node {
  ValueKinds kind = kinds::null;  // one of them; numbers are never `whole`
  bool boolean = false;
  double number = 0.0;
  std::string text;             // of a text; of a number without a value: as written
  bool finite = true;           // false: NaN, infinite, or too large for a double
  std::vector<Node> items;      // of a list
  std::vector<Member> members;  // of an object, in the order of the file, keys unique
  int order = 0;                // values of the file that begin before this one
  bool usable = true;           // false once a fault was found here
  bool assumed = false;         // not in the file: a default

  const Node* find(std::string_view key) const;
  Node* find(std::string_view key);
};

struct Member {
  std::string key;
  Node value;
};

// What cannot be read as JSON is a fault at a line and column, and there is no tree.
// A repeated key is a fault at its pointer; the first of the values is kept.
// Comments begin with // and end with the line.
std::optional<Node> parse(std::string_view text, FaultList& faults);

// The tree of a default, which is well-formed JSON. Throws ContractViolation otherwise.
Node parse_default(std::string_view text);

// `pointer` with one more step, escaped as RFC 6901 asks.
std::string pointer_to(const std::string& pointer, std::string_view key);
std::string pointer_to(const std::string& pointer, std::size_t index);

// The value as JSON text on one line.
std::string to_text(const Node& node);

// "a text, \"abc\"", "the number 5", "an object": for messages.
std::string described(const Node& node);

}  // namespace staddle::json
