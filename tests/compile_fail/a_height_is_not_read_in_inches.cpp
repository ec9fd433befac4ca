// SPDX-License-Identifier: GPL-3.0-or-later
// REFUSED: cannot convert 'Unit<staddle::DiameterDimension>'
#include "staddle/units/units.h"

#ifdef BROKEN
double number(staddle::Height height) { return height.in(staddle::inches); }
#else
double number(staddle::Height height) { return height.in(staddle::feet); }
#endif
