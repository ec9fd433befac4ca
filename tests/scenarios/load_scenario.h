// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/advise/advise.h"
#include "staddle/io/scenario_reader.h"
#include "staddle/scenario/advise_problem.h"
#include "support/files.h"

namespace staddle::support {

// A file of scenarios/stand as the program reads it. Throws where it does not.
inline Scenario load_scenario(const std::string& name) {
  const std::string folder = "scenarios/stand/";
  const auto load = [&](const std::string& beside) -> Result<std::string> {
    return read_file(in_source_tree(folder + beside));
  };
  return read_scenario(read_file(in_source_tree(folder + name)), name, load).value();
}

inline Advice advise_on(const Scenario& scenario) {
  return advise(make_advise_problem(scenario).value()).value();
}

}  // namespace staddle::support
