// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/commands.h"

#include <algorithm>

#include "cli/command_advise.h"
#include "cli/command_check.h"
#include "cli/command_cruise.h"
#include "cli/command_grow.h"
#include "cli/command_hold.h"
#include "cli/command_models.h"
#include "cli/command_plant.h"
#include "cli/command_report.h"
#include "cli/command_storm.h"
#include "cli/command_tract.h"
#include "cli/command_vary.h"

namespace staddle::cli {

const std::vector<Command>& commands() {
  static const std::vector<Command> table{
      advise_command(),
      grow_command(),
      cruise_command(),
      hold_command(),
      storm_command(),
      vary_command(),
      tract_command(),
      plant_command(),
      report_command(),
      check_command(),
      models_command(),
  };
  return table;
}

const Command* find_command(const std::string& name) {
  const auto at = std::find_if(commands().begin(), commands().end(),
                               [&](const Command& command) { return command.name == name; });
  return at == commands().end() ? nullptr : &*at;
}

}  // namespace staddle::cli
