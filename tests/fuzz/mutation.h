// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/base/random.h"

namespace staddle::fuzz {

// The text with one to four small harms done to it: bytes flipped, parts cut out, doubled
// or moved, tokens replaced by others, numbers by nearby or impossible ones, brackets
// heaped up, a part of another text put in. `others`: the texts to take parts of.
std::string mutated(const std::string& text, const std::vector<std::string>& others,
                    RandomStream& random);

// Only numbers replaced, by others a scenario could well hold.
std::string renumbered(const std::string& text, RandomStream& random);

}  // namespace staddle::fuzz
