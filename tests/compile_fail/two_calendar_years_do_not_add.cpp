// SPDX-License-Identifier: GPL-3.0-or-later
// REFUSED: no match for 'operator\+'
#include "staddle/units/age.h"

#ifdef BROKEN
auto span(staddle::CalendarYear one, staddle::CalendarYear other) { return one + other; }
#else
auto span(staddle::CalendarYear one, staddle::CalendarYear other) { return one - other; }
#endif
