// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/report/owner_report.h"

// What every writer of an owner's report says alike.
namespace staddle {

// All sections in their order: the report's own, then assumptions, sources and cautions.
std::vector<const Section*> parts_of(const OwnerReport& report);

// "Owner: ...", "Prepared by: ...", the purpose; what is known of them.
std::vector<std::string> people_of(const OwnerReport& report);

inline constexpr const char* inputs_title = "To make this report again";
std::string how_to_make_again(const OwnerReport& report);

// The text broken at its line breaks, whichever they are.
std::vector<std::string> lines_of_file(const std::string& text);

}  // namespace staddle
