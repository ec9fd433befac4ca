// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace staddle {

// An equation as people read it, with the coefficients that the program computes with.
struct ShownEquation {
  std::string what, key, equation;
  std::vector<std::pair<std::string, double>> coefficients;
};

// What the program adds to the equations of every model: assumptions, to be told as such.
std::vector<ShownEquation> shown_conventions();

}  // namespace staddle
