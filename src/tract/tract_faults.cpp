// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "staddle/tract/tract_problem.h"

namespace staddle {
namespace {

constexpr int most_years = 200;

class Checker {
 public:
  explicit Checker(const TractProblem& problem) : problem_(problem) {}

  Faults check() {
    check_stands();
    check_years();
    check_income_floors();
    check_tons();
    const TractPlan& plan = problem_.plan;
    if (plan.open_stand) {
      check_year("/plan/open_stand/from_year", plan.open_stand->from_year, 1, plan.years);
    }
    return std::move(faults_);
  }

 private:
  void add(FaultCode code, const std::string& place, const std::string& text,
           const std::string& hint = "") {
    faults_.push_back({code, "", place, text, hint});
  }

  void check_year(const std::string& place, int found, int from, int to) {
    if (found >= from && found <= to) return;
    add(FaultCode::out_of_range, place,
        fmt::format("found {}, allowed are the plan's years {} to {}", found, from, to));
  }

  void check_stands() {
    if (problem_.stands.empty()) {
      add(FaultCode::missing_key, "/stands", "a tract has at least one stand");
    }
    std::map<std::string, std::size_t> seen;
    for (std::size_t i = 0; i < problem_.stands.size(); ++i) {
      const TractStand& stand = problem_.stands[i];
      const auto [first, is_new] = seen.emplace(stand.name, i);
      if (!is_new) {
        add(FaultCode::repeated_key, fmt::format("/stands/{}/name", i),
            fmt::format("\"{}\" is already the name of stand {}: every stand has its own",
                        stand.name, first->second));
      }
      const bool needs_successor = stand.problem.stand_case.standing && !stand.successor &&
                                   stand.after_harvest.kind != LandAfterHarvest::Kind::land_price;
      if (needs_successor) {
        add(FaultCode::missing_key, fmt::format("/stands/{}/stand/planted_tpa", i),
            "what is planted after the final harvest is not known",
            "give planted_tpa, or a price of the land as after_harvest");
      }
    }
  }

  void check_years() {
    const TractPlan& plan = problem_.plan;
    if (plan.years < 1 || plan.years > most_years) {
      add(FaultCode::out_of_range, "/plan/years",
          fmt::format("found {}, allowed 1 to {}", plan.years, most_years));
    }
    if (plan.period_yr < 1 || plan.years % plan.period_yr != 0) {
      add(FaultCode::contradiction, "/plan/period_yr",
          fmt::format("found {}: the plan's {} years must be a whole number of periods",
                      plan.period_yr, plan.years));
    }
  }

  void check_income_floors() {
    for (std::size_t i = 0; i < problem_.plan.income_floors.size(); ++i) {
      const IncomeFloor& floor = problem_.plan.income_floors[i];
      const std::string place = fmt::format("/plan/income_floor_usd/{}", i);
      check_year(place + "/from_year", floor.from_year, 1, problem_.plan.years);
      check_year(place + "/to_year", floor.to_year, floor.from_year, problem_.plan.years);
    }
  }

  void check_tons() {
    const std::vector<std::string> products = product_names(problem_);
    for (std::size_t i = 0; i < problem_.plan.tons.size(); ++i) {
      const TonsLimit& limit = problem_.plan.tons[i];
      const std::string place = fmt::format("/plan/tons/{}", i);
      const bool known = limit.product == "all" || std::find(products.begin(), products.end(),
                                                             limit.product) != products.end();
      if (!known) {
        std::vector<std::string> names = products;
        names.push_back("all");
        const std::string nearest = nearest_name(limit.product, names);
        add(FaultCode::unknown_name, place + "/product",
            fmt::format("found \"{}\", which is no product of any stand, nor \"all\"",
                        limit.product),
            nearest.empty() ? "" : fmt::format("did you mean \"{}\"?", nearest));
      }
      if (limit.min_per_period && limit.max_per_period &&
          *limit.min_per_period > *limit.max_per_period) {
        add(FaultCode::contradiction, place,
            "min_per_period is above max_per_period: no period can have both");
      }
    }
  }

  const TractProblem& problem_;
  Faults faults_;
};

}  // namespace

Faults faults_of(const TractProblem& problem) { return Checker(problem).check(); }

std::vector<std::string> product_names(const TractProblem& problem) {
  std::vector<std::string> names;
  for (const TractStand& stand : problem.stands) {
    for (const std::string& name : stand.problem.stand_case.assortment.product_names()) {
      if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
  }
  return names;
}

}  // namespace staddle
