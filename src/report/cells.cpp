// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/cells.h"

#include "signs/plain_words.h"

namespace staddle::cells {
namespace {

// Tables carry the dollar sign in their heads.
std::string without_sign(std::string money) {
  money.erase(money.find('$'), 1);
  return money;
}

}  // namespace

Cell words(const std::string& text) { return {text}; }
Cell number(double value, int decimals) { return {staddle::words::number(value, decimals), value}; }
Cell whole(int value) { return {std::to_string(value), static_cast<double>(value)}; }
Cell per_acre(MoneyPerAcre amount) {
  return {without_sign(staddle::words::money(amount)), amount.in(dollars_per_acre)};
}
Cell cost_per_acre(MoneyPerAcre amount) {
  Cell cell = per_acre(amount);
  constexpr double nothing = 0.005;  // half a cent
  if (cell.text == "0" && amount > dollars_per_acre(nothing)) cell.text = "under 5";
  return cell;
}
Cell as_given(MoneyPerAcre amount) { return number(amount.in(dollars_per_acre)); }
Cell tract(Money amount) {
  return {without_sign(staddle::words::tract_money(amount)), amount.in(dollars)};
}
Cell percent(double share) { return {staddle::words::number(100.0 * share), 100.0 * share}; }
Cell blank() { return {""}; }

void add_date_columns(const Dates& dates, std::vector<Column>& columns) {
  if (dates.calendar()) columns.push_back({"year"});
  columns.push_back({"age", "years"});
}

void add_date(const Dates& dates, Age at, std::vector<Cell>& row) {
  if (dates.calendar()) row.push_back(whole(dates.year_of(at)));
  row.push_back(whole(at.whole()));
}

}  // namespace staddle::cells
