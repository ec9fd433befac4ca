// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/report/figure.h"

namespace staddle {

// The figure as an <svg> element to stand in a page: 480 units wide, scaled to the width
// it is given; with a title and a description; its ids begin with `id`; every element
// bears its own attributes, none leans on a style sheet. Series differ by dash or hatch as
// well as by colour. The same figure gives the same bytes.
// REQUIRES: finite numbers; at least one series, category or cell; id a plain word.
std::string to_svg(const Figure& figure, const std::string& id);

}  // namespace staddle
