// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "staddle/report/operations.h"
#include "staddle/signs/site.h"

// When in the year the work of a pine stand is done, on days of the calendar. Common
// practice, no source; the months of the dry season are from memory.
namespace staddle::season {

struct Days {
  CalendarDay first, last;  // both included
};

CalendarDay day(int year, unsigned month, unsigned day_of_month);
CalendarDay plus_days(CalendarDay from, int days);
// The same day of the month so many months later, or its last day where that is shorter.
CalendarDay plus_months(CalendarDay from, int months);
// From the first day of one month to the last day of another in the same year.
Days months(int year, unsigned from, unsigned to);

// A sale and the cut that it sells: marking 2 months, bids 6 weeks, a contract that runs 24
// months at the longest, and the time within the year of the cut in which it is done.
struct Sale {
  Days marking, bids, contract, cutting;
  bool month_too_early = false;  // the month that the site names leaves no time to sell
};
Sale sale(int year, const SiteFacts& site, int present_year);

// Work between a harvest and the second summer of the trees planted after it.
struct Planting {
  Days spray, burn, order_seedlings, plant, herbaceous, release;
  bool sprouts_wait = false;  // cut in March or later: sprayed in the year after
};
// `harvest_year`, `delay_yr`: the land is bare from that year, and waits so long.
// `last_month_cut`: in which the cut ends, absent where it is not known.
Planting planting(int harvest_year, int delay_yr, std::optional<int> last_month_cut);

}  // namespace staddle::season
