// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/plant/establishment.h"

#include <algorithm>
#include <iterator>

namespace staddle {

bool EstablishmentAlternative::has(SiteMethod method) const {
  return std::find(methods.begin(), methods.end(), method) != methods.end();
}

MoneyPerAcre EstablishmentAlternative::establishment() const {
  MoneyPerAcre sum;
  for (const Practice& practice : practices) {
    if (practice.at == age(0)) sum += practice.cost;
  }
  return sum;
}

std::vector<Practice> EstablishmentAlternative::later_practices() const {
  std::vector<Practice> later;
  std::copy_if(practices.begin(), practices.end(), std::back_inserter(later),
               [](const Practice& practice) { return practice.at > age(0); });
  return later;
}

}  // namespace staddle
