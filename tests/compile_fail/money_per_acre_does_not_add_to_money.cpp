// SPDX-License-Identifier: GPL-3.0-or-later
// REFUSED: no match for 'operator\+'
#include "staddle/units/units.h"

#ifdef BROKEN
auto sum(staddle::MoneyPerAcre one, staddle::Money other) { return one + other; }
#else
auto sum(staddle::Money one, staddle::Money other) { return one + other; }
#endif
