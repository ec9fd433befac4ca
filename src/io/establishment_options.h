// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

#include "staddle/io/option.h"

// The formats of models/establishment.
namespace staddle {

std::span<const Option> establishment_cost_options();
std::span<const Option> establishment_response_options();
std::span<const Option> establishment_alternative_options();

}  // namespace staddle
