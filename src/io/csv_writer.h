// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace staddle::csv {

// One line of RFC 4180: cells with a comma, a quotation mark or an end of line are quoted.
std::string line(const std::vector<std::string>& cells);

// A number in full precision. Throws ContractViolation where it is NaN or infinite.
std::string number(double value);

}  // namespace staddle::csv
