// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "report/answer.h"

namespace staddle {

// The work of the plan by its days; nothing where the year of the present is not known.
std::optional<Section> calendar_section(const Answer& answer);

}  // namespace staddle
