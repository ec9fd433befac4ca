// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "staddle/plant/establishment.h"

namespace staddle {

// The texts that name methods in files; "none" names the lack of any.
inline constexpr std::string_view site_method_choices =
    "chemical|burn|one_pass|two_pass|bed|herbaceous|release|none";

// REQUIRES: one of the choices, not "none".
SiteMethod site_method(const std::string& name);
std::string site_method_name(SiteMethod method);

}  // namespace staddle
