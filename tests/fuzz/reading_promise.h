// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>

namespace staddle::fuzz {

// The files beside a scenario, by name.
using Files = std::map<std::string, std::string>;

enum class Outcome { refused, accepted };

// Reads a scenario, whatever it is, and checks what the reader promises: a scenario or
// faults that say something, never both, never an exception; and of a scenario that it
// can be made into problems and its regimes priced with finite numbers, or refused.
// Throws std::logic_error where a promise is broken.
Outcome check_reading(const std::string& scenario, const Files& files);

}  // namespace staddle::fuzz
