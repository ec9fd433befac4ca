// SPDX-License-Identifier: GPL-3.0-or-later
// REFUSED: could not convert 'price' from
#include "staddle/units/units.h"

#ifdef BROKEN
staddle::MoneyPerAcre income(staddle::Yield, staddle::Price price) { return price; }
#else
staddle::MoneyPerAcre income(staddle::Yield tons, staddle::Price price) { return tons * price; }
#endif
