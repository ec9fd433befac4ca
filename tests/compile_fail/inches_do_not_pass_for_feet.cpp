// SPDX-License-Identifier: GPL-3.0-or-later
// REFUSED: could not convert .* from 'Quantity<staddle::DiameterDimension>'
#include "staddle/units/units.h"

#ifdef BROKEN
double number(staddle::Height height) { return height.in(staddle::feet); }
double tall = number(staddle::inches(9.0));
#else
double number(staddle::Height height) { return height.in(staddle::feet); }
double tall = number(staddle::feet(9.0));
#endif
