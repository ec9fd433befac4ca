// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/scenario_schema.h"

#include <cmath>
#include <nlohmann/json.hpp>

namespace staddle::scenario_tests {
namespace {

using Json = nlohmann::ordered_json;

// Whole numbers are written as such.
Json json_number(double value) {
  const bool whole = value == static_cast<double>(static_cast<long long>(value));
  return whole ? Json(static_cast<long long>(value)) : Json(value);
}

Json choices_of(const Option& option) {
  Json choices = Json::array();
  std::string_view rest = option.choices;
  while (!rest.empty()) {
    const std::size_t bar = rest.find('|');
    choices.push_back(rest.substr(0, bar));
    rest = bar == std::string_view::npos ? "" : rest.substr(bar + 1);
  }
  return choices;
}

class SchemaMaker {
 public:
  explicit SchemaMaker(std::span<const Option> options) : options_(options) {}

  // Adds the keys of an object whose pattern this is.
  void describe_keys(Json& schema, std::string_view pattern) const {
    Json required = Json::array();
    Json properties = Json::object();
    Json other = false;
    for (const Option& option : options_) {
      const std::size_t slash = option.pointer.rfind('/');
      if (option.pointer.substr(0, slash) != pattern) continue;
      const std::string step(option.pointer.substr(slash + 1));
      if (step == "#") continue;
      if (step == "*") {
        other = described(option);
      } else {
        properties[step] = described(option);
        if (option.required) required.push_back(step);
      }
    }
    if (!properties.empty()) schema["properties"] = properties;
    schema["additionalProperties"] = other;
    if (!required.empty()) schema["required"] = required;
  }

 private:
  Json described(const Option& option) const {
    Json schema = Json::object();
    std::string meaning(option.meaning);
    if (!option.unit.empty()) meaning += ", " + std::string(option.unit);
    schema["description"] = meaning;
    Json kinds = Json::array();
    describe_number(schema, kinds, option);
    if (option.allowed.has(kinds::text)) describe_text(schema, kinds, option);
    if (option.allowed.has(kinds::boolean)) kinds.push_back("boolean");
    if (option.allowed.has(kinds::null)) kinds.push_back("null");
    if (option.allowed.has(kinds::list)) describe_list(schema, kinds, option);
    if (option.allowed.has(kinds::object)) {
      kinds.push_back("object");
      describe_keys(schema, option.pointer);
    }
    schema["type"] = kinds.size() == 1 ? kinds[0] : kinds;
    if (!option.default_json.empty()) schema["default"] = Json::parse(option.default_json);
    return schema;
  }

  static void describe_number(Json& schema, Json& kinds, const Option& option) {
    if (option.allowed.has(kinds::number)) {
      kinds.push_back("number");
    } else if (option.allowed.has(kinds::whole)) {
      kinds.push_back("integer");
    } else {
      return;
    }
    const NumberRange& range = option.range;
    if (std::isfinite(range.low)) {
      schema[range.low_open ? "exclusiveMinimum" : "minimum"] = json_number(range.low);
    }
    if (std::isfinite(range.high)) {
      schema[range.high_open ? "exclusiveMaximum" : "maximum"] = json_number(range.high);
    }
  }

  // An "enum" would bind the other kinds too, so beside them the texts are a pattern.
  static void describe_text(Json& schema, Json& kinds, const Option& option) {
    kinds.push_back("string");
    if (option.choices.empty()) {
      if (option.required) schema["minLength"] = 1;
    } else if (kinds.size() == 1) {
      schema["enum"] = choices_of(option);
    } else {
      schema["pattern"] = "^(" + std::string(option.choices) + ")$";
    }
  }

  void describe_list(Json& schema, Json& kinds, const Option& option) const {
    kinds.push_back("array");
    const std::string item_pointer = std::string(option.pointer) + "/#";
    for (const Option& item : options_) {
      if (item.pointer == item_pointer) schema["items"] = described(item);
    }
    if (option.least_items > 0) schema["minItems"] = option.least_items;
    if (option.most_items < 1000) schema["maxItems"] = option.most_items;
  }

  std::span<const Option> options_;
};

}  // namespace

std::string schema_of(const std::string& what, std::span<const Option> options) {
  Json schema = Json::object();
  schema["$schema"] = "http://json-schema.org/draft-07/schema#";
  schema["title"] = "staddle-" + what + "/1";
  schema["$comment"] =
      "License: GPL-3.0-or-later. Made from the options of the format by tests/io; edit those "
      "and make it again. " +
      std::string(what == "tract" ? "Tract" : "Scenario") +
      " files may hold // comments besides; rules between values are checked by the program "
      "alone.";
  schema["type"] = "object";
  SchemaMaker(options).describe_keys(schema, "");
  return schema.dump(2) + "\n";
}

}  // namespace staddle::scenario_tests
