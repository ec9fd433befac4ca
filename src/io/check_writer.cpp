// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/check_writer.h"

#include <fmt/format.h>

#include "io/text_table_writer.h"
#include "io/value_writer.h"

namespace staddle {

std::string check_text(const SoundInput& input) {
  std::string text = fmt::format("{}: nothing wrong\n", input.file);
  if (!input.questions.empty()) text += "\nIt asks\n";
  for (const std::string& question : input.questions) text += "  " + question + "\n";
  if (input.assumed.empty()) return text;
  std::vector<std::vector<std::string>> rows;
  for (const Assumption& assumption : input.assumed) {
    rows.push_back({assumption.pointer, assumption.value_json, assumption.why});
  }
  return text + "\nIt assumes\n" +
         text_table({{"key", "", true}, {"value", "", true}, {"why", "", true}}, rows);
}

std::string check_json(const SoundInput& input) {
  return json::result_text({{"format", "staddle-check/1"},
                            {"file", input.file},
                            {"faults", json::Value::array()},
                            {"questions", input.questions},
                            {"assumed", json::assumptions(input.assumed)}});
}

}  // namespace staddle
