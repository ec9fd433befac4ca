// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/json_tree.h"

#include <limits>
#include <memory>
#include <nlohmann/json.hpp>
#include <set>

#include "io/json_scan.h"
#include "io/number_text.h"
#include "staddle/base/contract.h"

namespace staddle::json {
namespace {

constexpr int most_levels = 64;  // a scenario has six
constexpr std::size_t most_bytes_shown = 40;

// Builds the tree from the parser's events. A repeated key's value is built too, in a
// place of its own, and dropped.
class TreeBuilder final : public nlohmann::json_sax<nlohmann::json> {
 public:
  TreeBuilder(const ScannedText& scanned, FaultList& faults) : scanned_(scanned), faults_(faults) {}

  Node take_root() { return std::move(root_); }
  const std::string& error() const { return error_; }
  std::size_t error_offset() const { return error_offset_; }

  bool null() override { return scalar({}); }
  bool boolean(bool value) override { return scalar({.kind = kinds::boolean, .boolean = value}); }
  bool number_integer(number_integer_t value) override {
    return number(static_cast<double>(value));
  }
  bool number_unsigned(number_unsigned_t value) override {
    return number(static_cast<double>(value));
  }
  bool number_float(number_float_t value, const string_t&) override { return number(value); }
  bool string(string_t& value) override { return scalar({.kind = kinds::text, .text = value}); }
  bool binary(binary_t&) override { return false; }  // no part of JSON text

  bool start_object(std::size_t) override { return open({.kind = kinds::object}); }
  bool start_array(std::size_t) override { return open({.kind = kinds::list}); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }
  bool key(string_t& name) override {
    key_ = name;
    return true;
  }

  bool parse_error(std::size_t offset, const std::string&,
                   const nlohmann::detail::exception& thrown) override {
    error_ = thrown.what();
    error_offset_ = offset;
    return false;
  }

 private:
  struct Level {
    Node* node;
    std::string pointer;
    std::set<std::string> keys;  // of an object, so far
  };

  bool number(double value) {
    Node node{.kind = kinds::number, .number = value + 0.0};
    const auto written = scanned_.without_value.find(numbers_++);
    if (written != scanned_.without_value.end()) {
      node.finite = false;
      node.text = written->second;
    }
    return scalar(std::move(node));
  }

  bool scalar(Node node) {
    add(std::move(node));
    return true;
  }

  bool open(Node node) {
    std::string pointer;
    Node* added = add(std::move(node), &pointer);
    levels_.push_back({added, std::move(pointer), {}});
    return true;
  }

  bool close() {
    levels_.pop_back();
    if (!dropped_.empty() && levels_.size() == dropped_.back().level) dropped_.pop_back();
    return true;
  }

  // Only the value added last can grow, so the pointers in levels_ stay valid.
  Node* add(Node node, std::string* pointer = nullptr) {
    node.order = values_++;
    if (levels_.empty()) {
      root_ = std::move(node);
      return &root_;
    }
    Level& parent = levels_.back();
    if (parent.node->kind == kinds::list) {
      if (pointer) *pointer = pointer_to(parent.pointer, parent.node->items.size());
      return &parent.node->items.emplace_back(std::move(node));
    }
    const std::string here = pointer_to(parent.pointer, key_);
    if (pointer) *pointer = here;
    if (!parent.keys.insert(key_).second) {
      faults_.add(node.order, FaultCode::repeated_key, here, "this key stands here twice");
      const bool opens = node.kind == kinds::list || node.kind == kinds::object;
      if (!opens) return nullptr;
      dropped_.push_back({levels_.size(), std::make_unique<Node>(std::move(node))});
      return dropped_.back().node.get();
    }
    return &parent.node->members.emplace_back(Member{key_, std::move(node)}).value;
  }

  struct Dropped {
    std::size_t level;
    std::unique_ptr<Node> node;
  };

  const ScannedText& scanned_;
  FaultList& faults_;
  Node root_;
  std::vector<Level> levels_;
  std::vector<Dropped> dropped_;
  std::string key_;
  std::size_t numbers_ = 0;
  int values_ = 0;
  std::string error_;
  std::size_t error_offset_ = 0;
};

// The parser's message without its prefix and without the bytes it read last, which
// need not be text.
std::string plain_message(std::string message) {
  const std::size_t column = message.find(", column ");
  const std::size_t begin = message.find(": ", column == std::string::npos ? 0 : column);
  if (begin != std::string::npos) message.erase(0, begin + 2);
  const std::size_t last_read = message.find("; last read: ");
  if (last_read != std::string::npos) {
    const std::size_t behind = message.find("'; expected", last_read);
    message.erase(last_read,
                  behind == std::string::npos ? std::string::npos : behind + 1 - last_read);
  }
  return message;
}

bool is_blank(std::string_view text) {
  return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

}  // namespace

const Node* Node::find(std::string_view key) const {
  for (const Member& member : members) {
    if (member.key == key) return &member.value;
  }
  return nullptr;
}

Node* Node::find(std::string_view key) {
  return const_cast<Node*>(static_cast<const Node*>(this)->find(key));
}

std::optional<Node> parse(std::string_view text, FaultList& faults) {
  static constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
  if (text.substr(0, 3) == byte_order_mark) text.remove_prefix(3);
  if (text.find('\0') != std::string_view::npos || !is_utf8(text)) {
    faults.add(0, FaultCode::unreadable, "", "this is not a text in UTF-8",
               "save it as plain text in UTF-8");
    return std::nullopt;
  }
  const ScannedText scanned = scan(text, most_levels);
  if (is_blank(scanned.text)) {
    faults.add(0, FaultCode::malformed, "", "the file is empty");
    return std::nullopt;
  }
  if (scanned.too_deep) {
    faults.add(0, FaultCode::malformed, line_and_column(text, *scanned.too_deep),
               "brackets stand more than " + std::to_string(most_levels) + " deep");
    return std::nullopt;
  }
  TreeBuilder builder(scanned, faults);
  if (!nlohmann::json::sax_parse(scanned.text, &builder)) {
    const std::size_t offset = builder.error_offset() == 0 ? 0 : builder.error_offset() - 1;
    faults.add(
        std::numeric_limits<int>::max(), FaultCode::malformed, line_and_column(text, offset),
        "not well-formed JSON: " + plain_message(builder.error()),
        text.substr(offset, 2) == "/*" ? "comments begin with // and end with the line" : "");
    return std::nullopt;
  }
  return builder.take_root();
}

Node parse_default(std::string_view text) {
  FaultList faults("");
  std::optional<Node> node = parse(text, faults);
  require(node.has_value() && faults.empty(), "a default is well-formed JSON");
  return std::move(*node);
}

std::string pointer_to(const std::string& pointer, std::string_view key) {
  std::string longer = pointer + "/";
  for (const char c : without_controls(key)) {
    if (c == '~') {
      longer += "~0";
    } else if (c == '/') {
      longer += "~1";
    } else {
      longer += c;
    }
  }
  return longer;
}

std::string pointer_to(const std::string& pointer, std::size_t index) {
  return pointer + "/" + std::to_string(index);
}

std::string to_text(const Node& node) {
  std::string text;
  if (node.kind == kinds::boolean) return node.boolean ? "true" : "false";
  if (node.kind == kinds::number) return number_text(node.number);
  if (node.kind == kinds::text) return quoted_text(node.text);
  if (node.kind == kinds::list) {
    for (const Node& item : node.items) text += (text.empty() ? "" : ",") + to_text(item);
    return "[" + text + "]";
  }
  if (node.kind == kinds::object) {
    for (const Member& member : node.members) {
      if (!text.empty()) text += ",";
      text += quoted_text(member.key) + ":" + to_text(member.value);
    }
    return "{" + text + "}";
  }
  return "null";
}

std::string described(const Node& node) {
  if (node.kind == kinds::null) return "null";
  if (node.kind == kinds::boolean) return node.boolean ? "true" : "false";
  if (node.kind == kinds::text) return "the text " + quoted_text(node.text, most_bytes_shown);
  if (node.kind == kinds::list) return "a list";
  if (node.kind == kinds::object) return "an object";
  return node.finite ? number_text(node.number) : node.text.substr(0, most_bytes_shown);
}

}  // namespace staddle::json
