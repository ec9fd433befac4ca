// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/regime/regime.h"

namespace staddle {

StatedRegime stated(const std::string& name, const Regime& regime) {
  StatedRegime result{name, {}, regime.final_harvest};
  for (const Thinning& thinning : regime.thinnings) {
    StatedThinning entry;
    entry.at = thinning.at;
    entry.removal_fraction = thinning.removal_fraction;
    result.thinnings.push_back(entry);
  }
  return result;
}

}  // namespace staddle
