// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/outcome.h"

#include <algorithm>

namespace staddle::cli {

Outcome done(std::string text) { return {ExitCode::done, std::move(text), {}}; }

Outcome wrong_command_line(const std::string& text, const std::string& hint) {
  return {ExitCode::wrong_command_line, "", {{FaultCode::unknown_name, "", "", text, hint}}};
}

Outcome wrong_input(Faults faults, const std::string& file) {
  bool well_formed = true;
  for (Fault& fault : faults) {
    if (fault.file.empty()) fault.file = file;
    well_formed = well_formed && fault.code == FaultCode::no_regime;
  }
  return {well_formed ? ExitCode::no_regime : ExitCode::wrong_input, "", std::move(faults)};
}

}  // namespace staddle::cli
