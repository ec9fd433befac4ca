// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/check_writer.h"

#include <fmt/format.h>

#include "io/value_writer.h"

namespace staddle {

std::string check_text(const SoundInput& input) {
  std::string text = fmt::format("{}: nothing wrong\n", input.file);
  if (!input.questions.empty()) text += "\nIt asks\n";
  for (const std::string& question : input.questions) text += "  " + question + "\n";
  if (input.assumed.empty()) return text;
  text += "\nIt assumes\n";
  for (const Assumption& assumption : input.assumed) {
    text += fmt::format("  {} = {}", assumption.pointer, assumption.value_json);
    text += assumption.why == "default" ? "\n" : fmt::format(" ({})\n", assumption.why);
  }
  return text;
}

std::string check_json(const SoundInput& input) {
  return json::result_text({{"format", "staddle-check/1"},
                            {"file", input.file},
                            {"faults", json::Value::array()},
                            {"questions", input.questions},
                            {"assumed", json::assumptions(input.assumed)}});
}

}  // namespace staddle
