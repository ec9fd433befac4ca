// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/plan_words.h"

#include <fmt/format.h>

#include "signs/plain_words.h"

namespace staddle {

std::string plan_in_words(const Dates& dates, const Regime& regime) {
  std::vector<std::string> parts;
  for (const Thinning& cut : regime.thinnings) {
    parts.push_back(fmt::format("{} {} {}", words::removal(cut.removal_fraction),
                                dates.calendar() ? "in" : "at", dates.name(cut.at)));
  }
  if (parts.empty()) parts.push_back("no thinning");
  return fmt::format("{}, final harvest {} {}", words::list(parts),
                     dates.calendar() ? "in" : "at", dates.name(regime.final_harvest));
}

}  // namespace staddle
