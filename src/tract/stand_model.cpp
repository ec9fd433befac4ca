// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/stand_model.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "staddle/base/parallel.h"
#include "staddle/optimise/solve.h"

namespace staddle {
namespace {

struct Making {
  std::optional<StandModel> model;
  Faults faults;
};

Fault no_regime(std::size_t place, const std::string& name, const StandSolution& solution,
                const std::string& which) {
  return {FaultCode::no_regime, "", fmt::format("/stands/{}", place),
          fmt::format("{}{} has no regime within its limits: {}", which, name, solution.reason),
          ""};
}

class Maker {
 public:
  Maker(const TractProblem& problem, const TractOptions& options,
        const std::vector<std::string>& products)
      : problem_(problem), options_(options), products_(products) {}

  Making make(std::size_t place) const {
    const TractStand& stand = problem_.stands[place];
    Making making;
    StandModel model{place,         stand.name, stand.group, stand.problem.acres.in(acres),
                     stand.problem, {},         {},          {},
                     0.0,           {},         {},          {}};
    model.problem.stand_case.land_value = MoneyPerAcre();
    model.reading = reading_of(stand.problem);
    if (model.standing() && !settle_land(stand, model, making)) return making;
    const StandSolution own = solve(model.problem, own_options());
    if (own.status == StandSolution::Status::no_regime) {
      making.faults.push_back(no_regime(place, stand.name, own, ""));
      return making;
    }
    if (!model.standing()) plant(model.problem, own.best, model);
    model.own_best = own.best;
    model.own_value = model.present_value(own.best.value);
    for (const std::optional<PricedRegime>& best : own.by_count) {
      if (best) model.own_by_count.push_back(*best);
    }
    making.model = std::move(model);
    return making;
  }

 private:
  StandOptions own_options() const {
    StandOptions options;
    options.by_count = true;
    options.stop = options_.stop;
    return options;
  }

  YearReading reading_of(const StandProblem& problem) const {
    YearReading reading;
    reading.products = products_.size();
    for (const std::string& name : problem.stand_case.assortment.product_names()) {
      reading.product_of.push_back(static_cast<std::size_t>(
          std::find(products_.begin(), products_.end(), name) - products_.begin()));
    }
    if (problem_.plan.open_stand) {
      reading.open_below = problem_.plan.open_stand->basal_area_below;
    }
    return reading;
  }

  // The best regime of a bare-land problem, for ever.
  void plant(const StandProblem& bare, const PricedRegime& best, StandModel& model) const {
    model.rotation = simulate(bare.stand_case, stated("", best.regime)).value();
    model.land = replanted_land(years_of(bare.stand_case, *model.rotation, reading_of(bare)),
                                best.value.objective.in(dollars_per_acre),
                                bare.stand_case.costs.rate.per_year(),
                                bare.stand_case.costs.regeneration_delay_yr, problem_.plan.years);
  }

  // What follows a standing stand.
  bool settle_land(const TractStand& stand, StandModel& model, Making& making) const {
    const Costs& costs = stand.problem.stand_case.costs;
    Land& land = model.land;
    land.fate = Land::Fate::sold;
    land.delay_yr = costs.regeneration_delay_yr;
    land.rate = costs.rate.per_year();
    land.value = stand.after_harvest.price.in(dollars_per_acre);
    const bool priced = stand.after_harvest.kind == LandAfterHarvest::Kind::land_price;
    if (stand.successor) {
      StandOptions options;
      options.stop = options_.stop;
      const StandSolution successor = solve(*stand.successor, options);
      if (successor.status != StandSolution::Status::no_regime) {
        model.successor_lev = successor.best.value.objective;
      } else if (!priced) {
        making.faults.push_back(no_regime(model.place, stand.name, successor, "what follows "));
        return false;
      }
      if (!priced) take_successor(stand, successor.best, model);
    }
    model.problem.stand_case.land_value = dollars_per_acre(land.value);
    return true;
  }

  void take_successor(const TractStand& stand, const PricedRegime& best, StandModel& model) const {
    const bool only_if_worth =
        stand.after_harvest.kind == LandAfterHarvest::Kind::replant_if_worthwhile;
    if (only_if_worth && best.value.objective < MoneyPerAcre()) {
      model.land.fate = Land::Fate::left_bare;
      model.land.value = 0.0;
    } else {
      plant(*stand.successor, best, model);
    }
  }

  const TractProblem& problem_;
  const TractOptions& options_;
  const std::vector<std::string>& products_;
};

}  // namespace

RegimeReport StandModel::report_of(const Regime& regime) const {
  return simulate(problem.stand_case, stated("", regime)).value();
}

AcreFlows StandModel::flows_of(const RegimeReport& report, int plan_years) const {
  AcreFlows flows =
      staddle::flows_of(years_of(problem.stand_case, report, reading), land, plan_years);
  flows.present_value = present_value(report.value);
  return flows;
}

Result<std::vector<StandModel>> make_stand_models(const TractProblem& problem,
                                                  const TractOptions& options) {
  const std::vector<std::string> products = product_names(problem);
  std::vector<std::size_t> order(problem.stands.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return problem.stands[a].name < problem.stands[b].name;
  });
  const Maker maker(problem, options, products);
  std::vector<Making> makings(order.size());
  const bool done = for_each_chunk(
      order.size(), options.threads, [&](std::size_t i) { makings[i] = maker.make(order[i]); },
      options.stop);
  std::vector<StandModel> models;
  if (!done) return models;
  Faults faults;
  for (Making& making : makings) {
    faults.insert(faults.end(), making.faults.begin(), making.faults.end());
    if (making.model) models.push_back(std::move(*making.model));
  }
  std::sort(faults.begin(), faults.end(),
            [](const Fault& a, const Fault& b) { return a.place < b.place; });
  if (!faults.empty()) return faults;
  return models;
}

}  // namespace staddle
