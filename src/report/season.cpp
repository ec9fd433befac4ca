// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/season.h"

#include <algorithm>

namespace staddle::season {
namespace {

constexpr int weeks_of_bids = 6;             // 4 to 6
constexpr int days_to_sign = 14;             // between the last bid and the first tree
constexpr int longest_contract_months = 24;  // 12 to 24
constexpr int weeks_from_spray_to_burn = 8;
constexpr int last_month_sprayed_same_year = 2;

std::chrono::sys_days days_of(CalendarDay day) { return std::chrono::sys_days(day); }

Sale sold_from(CalendarDay marking_begins, Days cutting) {
  Sale sale;
  const CalendarDay bids_begin = plus_months(marking_begins, 2);
  sale.marking = {marking_begins, plus_days(bids_begin, -1)};
  sale.bids = {bids_begin, plus_days(bids_begin, 7 * weeks_of_bids - 1)};
  const CalendarDay awarded = plus_days(sale.bids.last, 1);
  sale.contract = {awarded, plus_days(plus_months(awarded, longest_contract_months), -1)};
  sale.cutting = cutting;
  return sale;
}

}  // namespace

CalendarDay day(int year, unsigned month, unsigned day_of_month) {
  return {std::chrono::year(year), std::chrono::month(month), std::chrono::day(day_of_month)};
}

CalendarDay plus_days(CalendarDay from, int days) {
  return CalendarDay(days_of(from) + std::chrono::days(days));
}

CalendarDay plus_months(CalendarDay from, int months) {
  const CalendarDay moved = from + std::chrono::months(months);
  if (moved.ok()) return moved;
  return CalendarDay(moved.year() / moved.month() / std::chrono::last);
}

Days months(int year, unsigned from, unsigned to) {
  return {day(year, from, 1),
          CalendarDay(std::chrono::year(year) / std::chrono::month(to) / std::chrono::last)};
}

Sale sale(int year, const SiteFacts& site, int present_year) {
  const CalendarDay january = day(year, 1, 1);
  const bool wet = site.drainage == SiteFacts::Drainage::wet;
  const Days usual = wet ? months(year, 7, 10) : Days{day(year, 4, 15), day(year, 12, 31)};
  if (!site.month_of_cut) return sold_from(january, usual);
  const auto month = static_cast<unsigned>(*site.month_of_cut);
  const Days asked = months(year, month, month);
  const CalendarDay bids_begin = plus_days(asked.first, -days_to_sign - 7 * weeks_of_bids);
  const CalendarDay marking_begins = plus_months(bids_begin, -2);
  if (days_of(marking_begins) >= days_of(day(present_year, 1, 1))) {
    return sold_from(marking_begins, asked);
  }
  Sale late = sold_from(january, usual);
  late.month_too_early = true;
  return late;
}

Planting planting(int harvest_year, int delay_yr, std::optional<int> last_month_cut) {
  Planting work;
  work.sprouts_wait = !last_month_cut || *last_month_cut > last_month_sprayed_same_year;
  // The land is planted in the winter that begins in this year.
  const int winter = std::max(harvest_year, harvest_year + delay_yr - (work.sprouts_wait ? 0 : 1));
  work.spray = months(winter, 9, 10);
  work.burn = {plus_days(work.spray.first, 7 * weeks_from_spray_to_burn), day(winter + 1, 1, 31)};
  work.plant = {day(winter, 12, 1), day(winter + 1, 3, 10)};
  work.order_seedlings = {plus_months(work.plant.first, -12), plus_months(work.plant.first, -6)};
  work.herbaceous = months(winter + 1, 3, 5);
  work.release = months(winter + 2, 8, 10);
  return work;
}

}  // namespace staddle::season
