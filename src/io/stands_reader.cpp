// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/stands_reader.h"

#include <algorithm>

#include "io/scenario_blocks.h"
#include "io/shared_scenario.h"
#include "io/stands_csv.h"
#include "staddle/io/model_library.h"

namespace staddle {
namespace {

Result<std::string> load_nothing(const std::string& name) {
  return Faults{{FaultCode::unreadable, name, "", "no file can be named here", ""}};
}

// A stand with which nothing is wrong, to find what is wrong with the blocks around it.
json::Node sound_entry(bool standing) {
  json::Node entry = json::parse_default(
      standing ? R"({"name": "any", "acres": 1, "stand": {"site_index_ft": 70, "age_yr": 15,
                     "tpa": 500, "basal_area_ft2_ac": 120, "planted_tpa": 600}})"
               : R"({"name": "any", "acres": 1, "stand": {"site_index_ft": 70,
                     "planted_tpa": 600}})");
  json::Node model;
  model.kind = kinds::text;
  model.text = built_in_equation_sets().front().id;
  entry.find("stand")->members.push_back({"model", model});
  return entry;
}

void put(json::Node& object, const std::string& key, const json::Node& value) {
  std::erase_if(object.members, [&](const json::Member& member) { return member.key == key; });
  object.members.push_back({key, value});
}

// What is wrong with a scenario beside its stand.
void check_shared_blocks(const json::Node& root, const std::string& file, Faults& faults) {
  json::Node tree = root;
  if (tree.kind == kinds::object) {
    const json::Node bare = sound_entry(false);
    put(tree, "acres", *bare.find("acres"));
    put(tree, "stand", *bare.find("stand"));
    std::erase_if(tree.members, [](const json::Member& member) {
      return member.key == "regimes" || member.key == "vary";
    });
  }
  FaultList found(file);
  check_values(tree, scenario_options(), found);
  if (tree.kind == kinds::object) {
    json::Node scenario = scenario_tree_of(tree, sound_entry(true));
    read_scenario_tree(scenario, load_nothing, found);
  }
  const Faults in_order = found.in_file_order();
  faults.insert(faults.end(), in_order.begin(), in_order.end());
}

}  // namespace

struct StandsReader::Content {
  StandsInput input;
  json::Node shared;
  std::optional<CsvRows> rows;
  std::optional<StandColumns> columns;
  std::size_t size = 0;
};

Result<StandsReader> StandsReader::open(StandsInput input) {
  auto content = std::make_shared<Content>();
  content->input = std::move(input);
  const StandsInput& kept = content->input;
  FaultList unreadable(kept.scenario_file);
  auto tree = json::parse(kept.scenario_text, unreadable);
  Faults faults = unreadable.in_file_order();
  if (tree) check_shared_blocks(*tree, kept.scenario_file, faults);
  const Result<CsvRows> rows = CsvRows::of(kept.stands_text, kept.stands_file);
  if (!rows) {
    faults.insert(faults.end(), rows.error().begin(), rows.error().end());
    return faults;
  }
  content->rows = *rows;
  const std::optional<CsvRow> header = content->rows->next(faults);
  if (!header) {
    faults.push_back({FaultCode::malformed, kept.stands_file, "", "the file is empty", ""});
    return faults;
  }
  content->columns.emplace(*header, kept.stands_file, faults);
  Faults of_rows;
  for (CsvRows counted = *content->rows; counted.next(of_rows);) ++content->size;
  if (content->size == 0) {
    faults.push_back({FaultCode::malformed, kept.stands_file, "", "no stand stands in it", ""});
  }
  if (!faults.empty()) return faults;
  content->shared = std::move(*tree);
  return StandsReader(std::move(content));
}

std::size_t StandsReader::size() const { return content_->size; }

std::optional<StandRow> StandsReader::next() {
  StandRow row;
  std::optional<CsvRow> cells = content_->rows->next(row.faults);
  if (!cells) return std::nullopt;
  row.line = cells->line;
  row.name = content_->columns->name(*cells);
  row.cells = std::move(cells->cells);
  return row;
}

Result<Scenario> StandsReader::scenario_of(const StandRow& row) const {
  if (!row.faults.empty()) return row.faults;
  Faults faults;
  const json::Node entry = content_->columns->entry({row.line, row.cells}, 0, faults);
  if (!entry.usable) return faults;
  json::Node tree = scenario_tree_of(content_->shared, entry);
  FaultList found(content_->input.scenario_file);
  check_values(tree, scenario_options(), found);
  Scenario scenario = read_scenario_tree(tree, load_nothing, found);
  for (Fault& fault : found.in_file_order()) {
    const Origin origin = origin_of(fault.place, content_->shared, entry);
    fault.place = origin.pointer;
    faults.push_back(origin.in_entry ? content_->columns->placed(fault, row.line) : fault);
  }
  if (!faults.empty()) return faults;
  return scenario;
}

}  // namespace staddle
