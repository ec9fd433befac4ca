// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace staddle {

// The style sheet of a page: large type, plain colours, Letter paper.
extern const char* const page_style;

}  // namespace staddle
