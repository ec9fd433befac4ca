// SPDX-License-Identifier: GPL-3.0-or-later
#include "signs/plain_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle::words {
namespace {

// The steps to which money is rounded: false precision would promise what the growth
// equations cannot keep.
constexpr double step_per_acre = 5.0;
constexpr double step_per_tract = 500.0;

double rounded_to(double value, double step) { return std::round(value / step) * step; }

std::string dollars_text(double value, double step) {
  const double rounded = rounded_to(value, step);
  return (rounded < 0.0 ? "-$" : "$") + number(std::fabs(rounded));
}

std::string size_text(double value, double step) {
  if (value != 0.0 && rounded_to(value, step) == 0.0) return "less than $" + number(step);
  return "$" + number(std::fabs(rounded_to(value, step)));
}

bool near(double a, double b) { return std::fabs(a - b) <= tolerance::limit_slack; }

}  // namespace

std::string number(double value, int decimals) {
  require(std::isfinite(value), "a number in words is finite");
  std::string digits = fmt::format("{:.{}f}", std::fabs(value), decimals);
  const bool zero = digits.find_first_not_of("0.") == std::string::npos;
  const std::size_t point = std::min(digits.find('.'), digits.size());
  for (std::size_t place = point; place > 3; place -= 3) digits.insert(place - 3, ",");
  return value < 0.0 && !zero ? "-" + digits : digits;
}

std::string money(MoneyPerAcre amount) {
  return dollars_text(amount.in(dollars_per_acre), step_per_acre);
}
std::string size_of(MoneyPerAcre amount) {
  return size_text(amount.in(dollars_per_acre), step_per_acre);
}
std::string about(MoneyPerAcre amount) {
  const std::string size = size_of(amount);
  return size.starts_with("less than") ? size : "about " + size;
}
std::string tract_money(Money amount) { return dollars_text(amount.in(dollars), step_per_tract); }
std::string size_of(Money amount) { return size_text(amount.in(dollars), step_per_tract); }

std::string percent(double share) {
  const double value = 100.0 * share;
  const bool small = value != 0.0 && std::fabs(value) < 0.95;
  return number(value, small ? (std::fabs(value) < 0.095 ? 2 : 1) : 0) + " percent";
}

std::string chance(double probability) {
  return fmt::format("{:.4g} percent", 100.0 * probability);
}

std::string removal(double fraction) {
  if (near(fraction, 1.0 / 3.0)) return "a third";
  if (near(fraction, 0.5)) return "half";
  if (near(fraction, 0.25)) return "a quarter";
  return percent(fraction);
}

std::string count(std::size_t things) {
  static constexpr std::array<const char*, 11> names = {
      "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"};
  return things < names.size() ? names[things] : number(static_cast<double>(things));
}

std::string list(const std::vector<std::string>& items, const std::string& last) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? " " + last + " " : ", ";
    text += items[i];
  }
  return text;
}

std::string product(const std::string& name) {
  std::string text = name;
  std::replace(text.begin(), text.end(), '_', '-');
  return text;
}

std::string peril(const std::string& name) {
  const std::size_t comma = name.find(", ");
  if (comma == std::string::npos || name.find(',', comma + 1) != std::string::npos) return name;
  return name.substr(comma + 2) + " " + name.substr(0, comma);
}

std::string capital(std::string text) {
  if (!text.empty()) {
    text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  }
  return text;
}

}  // namespace staddle::words
