// SPDX-License-Identifier: GPL-3.0-or-later
// REFUSED: no match for 'operator\+'
#include "staddle/units/units.h"

#ifdef BROKEN
auto sum(staddle::Height one, staddle::Diameter other) { return one + other; }
#else
auto sum(staddle::Height one, staddle::Height other) { return one + other; }
#endif
