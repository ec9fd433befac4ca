// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "io/scenario_blocks.h"

namespace staddle {
namespace {

constexpr std::array<Option, 7> head_rows = {{
    {.pointer = "/format",
     .meaning = "the format of the file and its version",
     .allowed = kinds::text,
     .choices = "staddle-scenario/1",
     .required = true},
    {.pointer = "/title",
     .meaning = "a name for the stand or the question",
     .allowed = kinds::text,
     .required = true},
    {.pointer = "/purpose", .meaning = "what the file is for, a sentence", .allowed = kinds::text},
    {.pointer = "/owner", .meaning = "the owner, for the report", .allowed = kinds::text},
    {.pointer = "/prepared_by", .meaning = "the forester, for the report", .allowed = kinds::text},
    {.pointer = "/acres",
     .meaning = "net area of the stand",
     .unit = "ac",
     .allowed = kinds::number,
     .range = above_to(0, 1e6),
     .required = true},
    {.pointer = "/calendar_year",
     .meaning = "the year of the present",
     .allowed = kinds::whole,
     .range = from_to(1900, 2200)},
}};

void read_head(ScenarioReading& reading, Scenario& scenario) {
  const Place& root = reading.root;
  scenario.title = root["title"].text_or_empty();
  scenario.purpose = root["purpose"].text_or_empty();
  scenario.owner = root["owner"].text_or_empty();
  scenario.prepared_by = root["prepared_by"].text_or_empty();
  scenario.area = acres(root["acres"].number_or_zero());
  if (const auto year = root["calendar_year"].whole()) {
    scenario.present_year = calendar_year(*year);
  }
}

}  // namespace

ScenarioBlock head_block() { return {head_rows, {}, read_head}; }

}  // namespace staddle
