// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/stands_csv.h"

#include <array>

namespace staddle {
namespace {

struct StandsColumn {
  const char* name;
  const char* pointer;  // of the entry
  bool is_text = false;
};
constexpr std::array<StandsColumn, 13> stands_columns = {
    {{"name", "/name", true},
     {"acres", "/acres"},
     {"group", "/group", true},
     {"model", "/stand/model", true},
     {"site_index_ft", "/stand/site_index_ft"},
     {"dominant_height_ft", "/stand/dominant_height_ft"},
     {"planted_tpa", "/stand/planted_tpa"},
     {"age_yr", "/stand/age_yr"},
     {"tpa", "/stand/tpa"},
     {"basal_area_ft2_ac", "/stand/basal_area_ft2_ac"},
     {"live_crown_ratio", "/stand/live_crown_ratio"},
     {"last_thinning_age_yr", "/stand/last_thinning/age_yr"},
     {"last_thinning_removal_fraction", "/stand/last_thinning/removal_fraction"}}};
constexpr std::array<const char*, 3> required_names = {"name", "acres", "model"};

constexpr auto names_of_columns = [] {
  std::array<const char*, stands_columns.size()> names{};
  for (std::size_t i = 0; i < names.size(); ++i) names[i] = stands_columns[i].name;
  return names;
}();

json::Node object_at(int order) {
  json::Node node;
  node.kind = kinds::object;
  node.order = order;
  return node;
}

// The object in which a pointer's last key stands, made where it is missing.
json::Node& parent_of(json::Node& entry, std::string_view pointer, int order) {
  json::Node* at = &entry;
  pointer.remove_prefix(1);
  for (std::size_t slash = pointer.find('/'); slash != std::string_view::npos;
       slash = pointer.find('/')) {
    const std::string_view step = pointer.substr(0, slash);
    if (at->find(step) == nullptr) at->members.push_back({std::string(step), object_at(order)});
    at = at->find(step);
    pointer.remove_prefix(slash + 1);
  }
  return *at;
}

}  // namespace

StandColumns::StandColumns(const CsvRow& header, const std::string& file, Faults& faults)
    : file_(&file), columns_(header, names_of_columns, required_names, file, faults) {}

std::string StandColumns::name(const CsvRow& row) const {
  Faults moot;
  return columns_.fits(row, moot) ? columns_.cell(row, "name") : "";
}

json::Node StandColumns::entry(const CsvRow& row, int order, Faults& faults) const {
  json::Node entry = object_at(order);
  parent_of(entry, "/stand/", order);
  if (!columns_.fits(row, faults)) {
    entry.usable = false;
    return entry;
  }
  for (const StandsColumn& column : stands_columns) {
    ++order;
    const std::string text = columns_.cell(row, column.name);
    if (text.empty()) continue;
    json::Node node;
    node.order = order;
    node.kind = column.is_text ? kinds::text : kinds::number;
    if (column.is_text) {
      node.text = text;
    } else {
      const auto value = csv_number(text, *file_, csv_place(row.line, column.name), faults);
      node.number = value.value_or(0.0);
      node.usable = value.has_value();
    }
    const std::string_view pointer = column.pointer;
    parent_of(entry, pointer, order)
        .members.push_back({std::string(pointer.substr(pointer.rfind('/') + 1)), std::move(node)});
  }
  return entry;
}

Fault StandColumns::placed(Fault fault, int line) const {
  fault.file = *file_;
  for (const StandsColumn& column : stands_columns) {
    if (fault.place != column.pointer) continue;
    fault.place = csv_place(line, column.name);
    return fault;
  }
  const std::string about = fault.place.empty() ? "" : ", " + fault.place;
  fault.place = "line " + std::to_string(line) + about;
  return fault;
}

}  // namespace staddle
