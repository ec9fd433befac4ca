// SPDX-License-Identifier: GPL-3.0-or-later
// REFUSED: no match for 'operator\+'
#include "staddle/units/age.h"

#ifdef BROKEN
auto later(staddle::Age one, staddle::Age other) { return one + other; }
#else
auto later(staddle::Age one, staddle::Years other) { return one + other; }
#endif
