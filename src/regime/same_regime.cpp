// SPDX-License-Identifier: GPL-3.0-or-later
#include "regime/same_regime.h"

#include <algorithm>

namespace staddle {

bool same_regime(const Regime& a, const Regime& b) {
  return a.final_harvest == b.final_harvest &&
         std::equal(a.thinnings.begin(), a.thinnings.end(), b.thinnings.begin(), b.thinnings.end(),
                    [](const Thinning& x, const Thinning& y) {
                      return x.at == y.at && x.removal_fraction == y.removal_fraction;
                    });
}

}  // namespace staddle
