// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/scenario/scenario.h"

namespace staddle {

// What is to be said of an input in which nothing is wrong.
struct SoundInput {
  std::string file;
  std::vector<Assumption> assumed;
  std::vector<std::string> questions;  // values that are allowed and seldom meant
};

// For people, and as JSON, format staddle-check/1.
std::string check_text(const SoundInput& input);
std::string check_json(const SoundInput& input);

}  // namespace staddle
