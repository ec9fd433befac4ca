// SPDX-License-Identifier: GPL-3.0-or-later
// REFUSED: '.*' is private within this context
#include "staddle/units/units.h"

#ifdef BROKEN
staddle::Height height(63.7);
#else
staddle::Height height(staddle::feet(63.7));
#endif
