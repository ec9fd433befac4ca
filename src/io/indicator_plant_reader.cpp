// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/model_head.h"
#include "io/model_readers.h"
#include "io/option_check.h"
#include "io/place.h"

namespace staddle {
namespace {

constexpr Option own[] = {
    {.pointer = "/plants",
     .meaning = "the plants",
     .allowed = kinds::list,
     .least_items = 1,
     .required = true},
    {.pointer = "/plants/#", .meaning = "a plant", .allowed = kinds::object},
    {.pointer = "/plants/#/name", .meaning = "name", .allowed = kinds::text, .required = true},
    {.pointer = "/plants/#/indicates",
     .meaning = "what it says of the ground",
     .allowed = kinds::text,
     .choices = "deep sand|wet flatwoods",
     .required = true},
    {.pointer = "/plants/#/mark",
     .meaning = "where the statement comes from",
     .allowed = kinds::text,
     .required = true},
};
constexpr auto plant_rows = with_model_head("staddle-indicator-plants/1", own);

}  // namespace

Result<std::vector<IndicatorPlant>> read_indicator_plants(const std::string& text,
                                                          const std::string& file) {
  FaultList faults(file);
  auto tree = json::parse(text, faults);
  if (!tree) return faults.in_file_order();
  check_values(*tree, plant_rows, faults);
  std::vector<IndicatorPlant> plants;
  for (const Place& place : Place(&*tree, "")["plants"].items()) {
    plants.push_back({place["name"].text_or_empty(), place["indicates"].text_or_empty(),
                      place["mark"].text_or_empty()});
  }
  if (!faults.empty()) return faults.in_file_order();
  return plants;
}

}  // namespace staddle
