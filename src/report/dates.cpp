// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/dates.h"

#include <fmt/format.h>

#include "signs/plain_words.h"
#include "staddle/base/contract.h"

namespace staddle {

Dates::Dates(const Scenario& scenario)
    : present_(scenario.is_standing() ? scenario.stand.standing->at : age(0)),
      present_year_(scenario.present_year) {}

int Dates::year_of(Age at) const {
  require(calendar(), "a calendar year needs the year of the present");
  return present_year_->whole() + years_until(at);
}

std::string Dates::in(Age at) const {
  if (!calendar()) return fmt::format("at age {}", at.whole());
  return fmt::format("in {}, at age {}", year_of(at), at.whole());
}

std::string Dates::name(Age at) const {
  return calendar() ? std::to_string(year_of(at)) : fmt::format("age {}", at.whole());
}

std::string Dates::on(Age at) const { return (calendar() ? "in " : "at ") + name(at); }

std::string Dates::within(Age from, Age to) const {
  if (from == to) return on(from);
  return fmt::format("from {} to {}", name(from), calendar() ? year_of(to) : to.whole());
}

std::string Dates::wait(Age at) const {
  const int wait = years_until(at);
  return words::count(static_cast<std::size_t>(wait)) + (wait == 1 ? " year" : " years");
}

}  // namespace staddle
