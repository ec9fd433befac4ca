// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/option_check.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "io/number_text.h"

namespace staddle {
namespace {

using json::Node;

// The children of one pattern: "/stand" has the child "/stand/age_yr".
class Children {
 public:
  Children(std::span<const Option> options, const std::string& pattern) {
    for (const Option& option : options) {
      const std::size_t slash = option.pointer.rfind('/');
      if (option.pointer.substr(0, slash) != pattern) continue;
      const std::string_view step = option.pointer.substr(slash + 1);
      if (step == "*") {
        any_key_ = &option;
      } else if (step == "#") {
        any_item_ = &option;
      } else {
        keys_.push_back(&option);
        names_.emplace_back(step);
      }
    }
  }

  const std::vector<const Option*>& keys() const { return keys_; }
  const std::vector<std::string>& names() const { return names_; }
  const Option* any_key() const { return any_key_; }
  const Option* any_item() const { return any_item_; }
  const Option* key(const std::string& name) const {
    const auto found = std::find(names_.begin(), names_.end(), name);
    if (found == names_.end()) return any_key_;
    return keys_[static_cast<std::size_t>(found - names_.begin())];
  }

 private:
  std::vector<const Option*> keys_;
  std::vector<std::string> names_;
  const Option* any_key_ = nullptr;
  const Option* any_item_ = nullptr;
};

// Every pattern's children, looked up once.
class OptionTree {
 public:
  explicit OptionTree(std::span<const Option> options) : options_(options) {}

  const Children& below(std::string_view pattern) {
    const auto known = children_.find(pattern);
    if (known != children_.end()) return known->second;
    std::string owned(pattern);
    Children children(options_, owned);
    return children_.emplace(std::move(owned), std::move(children)).first->second;
  }

 private:
  std::span<const Option> options_;
  std::map<std::string, Children, std::less<>> children_;
};

std::vector<std::string> choices_of(const Option& option) {
  std::vector<std::string> choices;
  std::string_view rest = option.choices;
  while (!rest.empty()) {
    const std::size_t bar = rest.find('|');
    choices.emplace_back(rest.substr(0, bar));
    rest = bar == std::string_view::npos ? "" : rest.substr(bar + 1);
  }
  return choices;
}

// "a whole number from 1 to 150 years, \"first_thinning\" or \"final_harvest\"".
std::string allowed_text(const Option& option) {
  std::vector<std::string> parts;
  const std::string range = range_text(option);
  const std::string within = range.empty() ? "" : " " + range;
  if (option.allowed.has(kinds::number)) parts.push_back("a number" + within);
  if (option.allowed.has(kinds::whole)) parts.push_back("a whole number" + within);
  if (option.allowed.has(kinds::text) && option.choices.empty()) parts.emplace_back("a text");
  if (option.allowed.has(kinds::text)) {
    for (const std::string& choice : choices_of(option)) parts.push_back(quoted_text(choice));
  }
  if (option.allowed.has(kinds::boolean)) parts.emplace_back("true or false");
  if (option.allowed.has(kinds::list)) parts.emplace_back("a list");
  if (option.allowed.has(kinds::object)) parts.emplace_back("an object");
  if (option.allowed.has(kinds::null)) parts.emplace_back("null");
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) text += i + 1 == parts.size() ? " or " : ", ";
    text += parts[i];
  }
  return text;
}

// The name nearest in spelling or, failing that, the first that the key is a part of:
// units and qualifiers are soon forgotten.
std::string nearest_key(const std::string& key, const std::vector<std::string>& known) {
  constexpr std::size_t shortest_part = 3;
  std::string nearest = nearest_name(key, known);
  if (!nearest.empty() || key.size() < shortest_part) return nearest;
  for (const std::string& name : known) {
    if (name.find(key) != std::string::npos) return name;
  }
  return "";
}

class Checker {
 public:
  Checker(std::span<const Option> options, FaultList& faults) : tree_(options), faults_(faults) {}

  void object(Node& node, std::string_view pattern, const std::string& pointer) {
    const Children& children = tree_.below(pattern);
    for (json::Member& member : node.members) {
      const std::string here = json::pointer_to(pointer, member.key);
      const Option* option = children.key(member.key);
      if (!option) {
        fault(member.value, FaultCode::unknown_key, here, "there is no such key here",
              did_you_mean(nearest_key(member.key, children.names())));
      } else {
        value(member.value, *option, here);
      }
    }
    for (const Option* option : children.keys()) {
      const std::string name(option->pointer.substr(option->pointer.rfind('/') + 1));
      if (option->required && !node.find(name)) {
        faults_.add(
            node.order, FaultCode::missing_key, json::pointer_to(pointer, name),
            "this key is required: " + std::string(option->meaning) + ", " + allowed_text(*option));
      }
    }
  }

 private:
  void value(Node& node, const Option& option, const std::string& pointer) {
    if (!node.usable) return;  // reported already
    const bool number = node.kind == kinds::number;
    const bool any_number = option.allowed.has(kinds::number | kinds::whole);
    if (number ? !any_number : !option.allowed.has(node.kind)) {
      fault(node, FaultCode::wrong_type, pointer,
            "found " + json::described(node) + "; allowed is " + allowed_text(option));
    } else if (number) {
      check_number(node, option, pointer);
    } else if (node.kind == kinds::text) {
      check_text(node, option, pointer);
    } else if (node.kind == kinds::list) {
      list(node, option, pointer);
    } else if (node.kind == kinds::object) {
      object(node, option.pointer, pointer);
    }
  }

  void check_number(Node& node, const Option& option, const std::string& pointer) {
    if (!node.finite) {
      fault(node, FaultCode::out_of_range, pointer,
            "found " + json::described(node) + ", which is no finite number; allowed is " +
                allowed_text(option));
      return;
    }
    const bool whole_only = !option.allowed.has(kinds::number);
    if (whole_only && node.number != std::floor(node.number)) {
      fault(node, FaultCode::wrong_type, pointer,
            "found " + json::described(node) + "; allowed is " + allowed_text(option));
    } else if (!option.range.contains(node.number)) {
      fault(node, FaultCode::out_of_range, pointer,
            "found " + json::described(node) + "; allowed is " + allowed_text(option));
    }
  }

  void check_text(Node& node, const Option& option, const std::string& pointer) {
    if (has_control_character(node.text)) {
      fault(node, FaultCode::out_of_range, pointer,
            "found " + json::described(node) +
                "; tabs, line ends and other control characters are not allowed");
      return;
    }
    if (option.choices.empty()) {
      const bool blank = node.text.find_first_not_of(' ') == std::string::npos;
      if (blank && option.required) {
        fault(node, FaultCode::out_of_range, pointer, "the text is empty");
      }
      return;
    }
    const std::vector<std::string> choices = choices_of(option);
    if (std::find(choices.begin(), choices.end(), node.text) != choices.end()) return;
    fault(node, FaultCode::unknown_name, pointer,
          "found " + json::described(node) + "; allowed is " + allowed_text(option),
          did_you_mean(nearest_name(node.text, choices)));
  }

  void list(Node& node, const Option& option, const std::string& pointer) {
    const std::size_t size = node.items.size();
    if (size < option.least_items || size > option.most_items) {
      const bool exact = option.least_items == option.most_items;
      const bool few = size < option.least_items;
      fault(node, FaultCode::out_of_range, pointer,
            "found " + std::to_string(size) + " items; allowed are " +
                (exact ? "exactly "
                 : few ? "at least "
                       : "at most ") +
                std::to_string(few ? option.least_items : option.most_items));
    }
    const Children& children = tree_.below(option.pointer);
    if (!children.any_item()) return;
    for (std::size_t i = 0; i < size; ++i) {
      value(node.items[i], *children.any_item(), json::pointer_to(pointer, i));
    }
  }

  void fault(Node& node, FaultCode code, const std::string& pointer, std::string text,
             std::string hint = "") {
    node.usable = false;
    faults_.add(node.order, code, pointer, std::move(text), std::move(hint));
  }

  OptionTree tree_;
  FaultList& faults_;
};

class Filler {
 public:
  Filler(const Node& root, std::span<const Option> options,
         std::span<const DefaultCondition> conditions)
      : root_(root), tree_(options), conditions_(conditions) {}

  void object(Node& node, std::string_view pattern, const std::string& pointer) {
    const Children& children = tree_.below(pattern);
    for (const Option* option : children.keys()) {
      const std::string name(option->pointer.substr(option->pointer.rfind('/') + 1));
      const std::string here = json::pointer_to(pointer, name);
      if (!node.find(name) && has_default(*option) && applies(*option, node)) {
        Node value = json::parse_default(option->implied ? "{}" : option->default_json);
        value.order = node.order;
        value.assumed = true;
        if (!option->implied) {
          assumptions_.push_back({here, json::to_text(value), "default"});
        }
        node.members.push_back({name, std::move(value)});
      }
      if (Node* value = node.find(name)) inside(*value, option->pointer, here);
    }
    if (!children.any_key()) return;
    for (json::Member& member : node.members) {
      if (std::find(children.names().begin(), children.names().end(), member.key) !=
          children.names().end()) {
        continue;
      }
      inside(member.value, children.any_key()->pointer, json::pointer_to(pointer, member.key));
    }
  }

  std::vector<Assumption> take() { return std::move(assumptions_); }

 private:
  void inside(Node& node, std::string_view pattern, const std::string& pointer) {
    if (!node.usable) return;
    if (node.kind == kinds::object) object(node, pattern, pointer);
    const Option* item = tree_.below(pattern).any_item();
    if (node.kind != kinds::list || node.assumed || !item) return;
    for (std::size_t i = 0; i < node.items.size(); ++i) {
      inside(node.items[i], item->pointer, json::pointer_to(pointer, i));
    }
  }

  static bool has_default(const Option& option) {
    return option.implied || !option.default_json.empty();
  }

  bool applies(const Option& option, const Node& parent) const {
    for (const DefaultCondition& condition : conditions_) {
      if (condition.pointer == option.pointer) return condition.applies(parent, root_);
    }
    return true;
  }

  const Node& root_;
  OptionTree tree_;
  std::span<const DefaultCondition> conditions_;
  std::vector<Assumption> assumptions_;
};

}  // namespace

void check_values(Node& root, std::span<const Option> options, FaultList& faults) {
  if (root.kind != kinds::object) {
    root.usable = false;
    faults.add(root.order, FaultCode::wrong_type, "",
               "found " + json::described(root) + "; the file is one object");
    return;
  }
  Checker(options, faults).object(root, "", "");
}

std::vector<Assumption> fill_defaults(Node& root, std::span<const Option> options,
                                      std::span<const DefaultCondition> conditions) {
  if (root.kind != kinds::object) return {};
  Filler filler(root, options, conditions);
  filler.object(root, "", "");
  return filler.take();
}

std::string did_you_mean(const std::string& nearest) {
  return nearest.empty() ? "" : "did you mean \"" + nearest + "\"?";
}

std::string range_text(const Option& option) {
  const NumberRange& range = option.range;
  if (range == NumberRange{}) return "";
  const std::string unit = option.unit.empty() ? "" : " " + std::string(option.unit);
  return (range.low_open ? "above " : "from ") + number_text(range.low) +
         (range.high_open ? " to below " : " to ") + number_text(range.high) + unit;
}

}  // namespace staddle
