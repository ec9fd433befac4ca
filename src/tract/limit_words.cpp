// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "signs/plain_words.h"
#include "staddle/base/tolerance.h"
#include "tract/tract_answer.h"

namespace staddle {
namespace {

using Measure = LimitRow::Measure;

// "2031-2035"; without a calendar year of the present "years 5 to 9".
std::string when(const TractProblem& problem, int from_year, int to_year) {
  if (problem.calendar_year) {
    const int from = *problem.calendar_year + from_year;
    const int to = *problem.calendar_year + to_year;
    return from == to ? fmt::format("{}", from) : fmt::format("{}-{}", from, to);
  }
  return from_year == to_year ? fmt::format("year {}", from_year)
                              : fmt::format("years {} to {}", from_year, to_year);
}

std::string timber(const std::string& product) {
  return product == "all" ? "timber" : words::product(product);
}

// "$75", for so much of the limit's unit.
std::string usd(double amount) { return words::size_of(dollars_per_acre(amount)); }

class Words {
 public:
  Words(const TractProblem& problem, const LimitRow& row)
      : row_(row), at_(when(problem, row.from_year, row.to_year)) {}

  std::string unit() const {
    switch (row_.measure) {
      case Measure::income:
        return "usd of income";
      case Measure::establishment:
        return "usd of establishment";
      case Measure::final_harvest:
      case Measure::open:
        return "acre";
      case Measure::tons:
        return "ton";
      case Measure::ending_value:
        return "usd of ending value";
    }
    return "";
  }

  std::string cost_text(double price) const {
    switch (row_.measure) {
      case Measure::income:
        if (row_.is_relative) {
          return fmt::format(
              "each $1,000 by which income in {} might fall further below that of the period "
              "before would add {} of present value",
              at_, usd(1000.0 * price));
        }
        return fmt::format("each further $1,000 of income wanted in {} costs {} of present value",
                           at_, usd(1000.0 * price));
      case Measure::establishment:
        return fmt::format(
            "each further $1,000 that may be spent on planting in {} would add {} of present value",
            at_, usd(1000.0 * price));
      case Measure::final_harvest:
        return fmt::format(
            "each further acre of final harvest allowed{} in {} would add {} of present value",
            of_group(), at_, usd(price));
      case Measure::open:
        return fmt::format("each further acre kept open at the end of {} costs {} of present value",
                           at_, usd(price));
      case Measure::tons:
        return tons_text(100.0 * price);
      case Measure::ending_value:
        return fmt::format(
            "each further $1,000 of value wanted at the end of the plan costs {} of present value",
            usd(1000.0 * price));
    }
    return "";
  }

  std::string conflict_text(double asked, double possible) const {
    switch (row_.measure) {
      case Measure::income:
        if (row_.is_relative) {
          return fmt::format(
              "income in {} falls {} further below that of the period before than the plan allows, "
              "at the least",
              at_, amount(asked - possible));
        }
        return fmt::format(
            "an income of {} in {} cannot be had with the other limits: the most is {}",
            amount(asked), at_, amount(possible));
      case Measure::establishment:
        return fmt::format("planting in {} cannot be held to {} with the other limits: it needs {}",
                           at_, amount(asked), amount(possible));
      case Measure::final_harvest:
        return fmt::format(
            "final harvests{} in {} cannot be held to {} acres with the other limits: they need {}",
            of_group(), at_, words::number(asked, 1), words::number(possible, 1));
      case Measure::open:
        return fmt::format(
            "{} acres cannot be kept open at the end of {} with the other limits: the most is {}",
            words::number(asked, 1), at_, words::number(possible, 1));
      case Measure::tons:
        return tons_conflict(asked, possible);
      case Measure::ending_value:
        return fmt::format(
            "the tract cannot be worth {} at the end of the plan with the other limits: the most "
            "is {}",
            amount(asked), amount(possible));
    }
    return "";
  }

 private:
  static std::string amount(double usd) { return "$" + words::number(std::round(usd)); }

  std::string of_group() const {
    return row_.group.empty() ? "" : fmt::format(" in the group {}", row_.group);
  }

  std::string tons_text(double price_of_hundred) const {
    const std::string product = timber(row_.of);
    if (row_.is_relative) {
      return fmt::format(
          "each 100 tons by which the {} cut in {} might {} that of the period before would add {} "
          "of present value",
          product, at_, row_.is_floor ? "fall further below" : "rise further above",
          usd(price_of_hundred));
    }
    if (row_.is_floor) {
      return fmt::format("each further 100 tons of {} wanted in {} cost {} of present value",
                         product, at_, usd(price_of_hundred));
    }
    return fmt::format(
        "each further 100 tons of {} that may be cut in {} would add {} of present value", product,
        at_, usd(price_of_hundred));
  }

  std::string tons_conflict(double asked, double possible) const {
    const std::string product = timber(row_.of);
    if (row_.is_relative) {
      return fmt::format(
          "the {} cut in {} is {} tons further from that of the period before than the plan "
          "allows, "
          "at the least",
          product, at_, words::number(std::fabs(asked - possible)));
    }
    if (row_.is_floor) {
      return fmt::format(
          "{} tons of {} in {} cannot be had with the other limits: the most is {} tons",
          words::number(asked), product, at_, words::number(possible));
    }
    return fmt::format(
        "the {} cut in {} cannot be held to {} tons with the other limits: it needs {} tons",
        product, at_, words::number(asked), words::number(possible));
  }

  const LimitRow& row_;
  std::string at_;
};

}  // namespace

std::vector<LimitCost> limit_costs_of(const TractProblem& problem, const Limits& limits,
                                      const Schedule& schedule) {
  std::vector<LimitCost> costs;
  for (std::size_t r = 0; r < schedule.worths.size(); ++r) {
    const LimitRow& row = limits.rows[r];
    const double price = std::fabs(schedule.worths[r]);
    if (price <= tolerance::lp_relative) continue;
    const Words words(problem, row);
    costs.push_back({row.limit, row.of, row.period, row.from_year, row.to_year, price,
                     "usd of present value per " + words.unit(), words.cost_text(price),
                     row.is_floor});
  }
  return costs;
}

std::vector<LimitConflict> conflicts_of(const TractProblem& problem, const Limits& limits,
                                        const Schedule& schedule) {
  std::vector<LimitConflict> conflicts;
  for (std::size_t r = 0; r < schedule.given_way.size(); ++r) {
    const LimitRow& row = limits.rows[r];
    const double by = schedule.given_way[r];
    if (by <= tolerance::limit_kept * schedule.scales[r]) continue;
    const double possible = row.is_floor ? row.bound - by : row.bound + by;
    const Words words(problem, row);
    conflicts.push_back({row.limit, row.of, row.period, row.from_year, row.to_year, row.bound,
                         possible, words.unit(), words.conflict_text(row.bound, possible),
                         row.is_floor});
  }
  return conflicts;
}

}  // namespace staddle
