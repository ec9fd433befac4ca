// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "advise/scene.h"
#include "staddle/advise/advise.h"
#include "staddle/advise/storm_forecast.h"
#include "staddle/optimise/regime_pool.h"
#include "support/loblolly_equations.h"
#include "support/money.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::usd;

// A stand of 17 years that is due for thinning, taxed, with a basis.
AdviseProblem taxed_stand() {
  const EquationSet equations = support::coastal_loblolly();
  StandCase stand{
      GrowthModel::from_equations(equations, feet(70), trees_per_acre(600)),
      Assortment::from_equations(equations, default_products()),
      {{dollars_per_ton(25)}, {dollars_per_ton(18)}, {dollars_per_ton(7)}},
      {DiscountRate::real(0.05)},
      {},
      MeasuredStand{
          age(17), trees_per_acre(480), square_feet_per_acre(132), 0.4, std::nullopt, {}}};
  stand.costs.establishment = dollars_per_acre(350);
  DecisionLattice lattice;
  lattice.max_thinnings = 1;
  lattice.removal_fractions = {0.2, 0.25, 0.3, 1.0 / 3.0, 0.4};
  lattice.thinning_from = lattice.final_from = age(17);
  lattice.guards = default_guards();
  StandProblem problem{stand, lattice, acres(40)};
  StandProblem successor = problem;
  successor.stand_case.standing.reset();
  successor.lattice.final_from = age(20);
  AdviseProblem asked{problem,
                      successor,
                      [](std::optional<MoneyPerAcre> lev) { return lev.value(); },
                      {},
                      default_ready_limits(),
                      {},
                      std::nullopt,
                      std::nullopt};
  asked.tax = TaxRules{};
  asked.tax->basis = dollars_per_acre(600);
  asked.tax->inflation = 0.05;
  return asked;
}

Hazard gales() {
  Peril gale;
  gale.name = "gale";
  gale.annual_probability = 0.03;
  gale.constant_share = 0.4;
  gale.salvage_share = 0.3;
  gale.cleanup = dollars_per_acre(100);
  Hazard hazard;
  hazard.zone = "own";
  hazard.perils = {gale};
  return hazard;
}

TEST_CASE("the best plan after tax is the best of the lattice after tax") {
  const AdviseProblem problem = taxed_stand();
  const Advice advice = advise(problem).value();
  const AdviceAfterTax& told = *advice.after_tax;
  StandProblem taxed = problem.stand;
  taxed.stand_case =
      AfterTax(problem.stand.stand_case, *problem.tax, problem.stand.acres, told.land_value)
          .stand_case();
  StandOptions plain;
  plain.method = StandOptions::Method::exhaustive;
  const StandSolution best = solve(taxed, plain);
  CHECK(usd(told.best_after_tax.after_tax->value.objective) ==
        support::relative(usd(best.best.value.objective), support::round_off));
  CHECK(told.certificate.gap == MoneyPerAcre());
  CHECK(told.best_after_tax.after_tax->value.objective >= told.best.value.objective);
}

TEST_CASE("where too many regimes have a basis the bound holds what another could add") {
  AdviseProblem problem = taxed_stand();
  DecisionLattice& lattice = problem.stand.lattice;
  lattice.max_thinnings = 2;
  lattice.removal_fractions.clear();
  for (int i = 0; i < 60; ++i) lattice.removal_fractions.push_back(0.2 + 0.01 * i);
  // All these removals are of the lattice, but few leave so much.
  lattice.guards.max_removal_fraction.reset();
  lattice.guards.dense_stand_now.reset();
  lattice.min_residual_basal_area = square_feet_per_acre(85);
  REQUIRE(RegimePool::lattice_regimes(problem.stand) > 1e6);
  const Advice advice = advise(problem).value();
  const AdviceAfterTax& told = *advice.after_tax;
  StandProblem taxed = problem.stand;
  taxed.stand_case =
      AfterTax(problem.stand.stand_case, *problem.tax, problem.stand.acres, told.land_value)
          .stand_case();
  const double best = usd(solve(taxed).best.value.objective);
  const double found = usd(told.best_after_tax.after_tax->value.objective);
  CHECK(found <= best + 1e-9);
  CHECK(best <= found + usd(told.certificate.gap) + 1e-9);
  CHECK(usd(told.certificate.gap) > 0.0);
  CHECK(usd(told.certificate.gap) < 0.15 * 600);
}

TEST_CASE("an offer of what is to be refused leaves an owner as well off as waiting after tax") {
  const AdviseProblem problem = taxed_stand();
  const Advice advice = advise(problem).value();
  REQUIRE(advice.sale_now.has_value());
  const SaleNow& sale = *advice.after_tax->sale_now;
  const AfterTax tax(problem.stand.stand_case, *problem.tax, problem.stand.acres,
                     advice.after_tax->land_value);
  const double sold = usd(tax.value(sale.plan).objective);
  const double waited = usd(tax.value(sale.patient).objective);
  CHECK(sold - usd(sale.net_revenue) + usd(sale.refuse_below) == support::within(waited, 1e-9));
  CHECK(usd(sale.net_revenue) < usd(advice.sale_now->net_revenue));
}

TEST_CASE("futures after tax scatter around what the evaluator expects after tax") {
  AdviseProblem problem = taxed_stand();
  problem.stand.stand_case.hazard = problem.successor->stand_case.hazard = gales();
  FuturesOptions asked;
  asked.futures = 4000;
  asked.choices = true;
  const StormForecast forecast = forecast_storms(problem, asked).value();
  const StormForecast::Told& best = forecast.regimes.front();
  REQUIRE(best.after_tax.has_value());
  CHECK(usd(best.after_tax->expected_value) ==
        support::relative(usd(best.plan.after_tax->value.objective), support::round_off));
  CHECK(std::fabs(usd(best.after_tax->mean - best.after_tax->expected_value)) <
        4 * usd(best.after_tax->standard_error));
  CHECK(best.after_tax->standard_error < best.futures.standard_error);
  CHECK(best.after_tax->choices->mean < best.futures.choices->mean);
  CHECK(forecast.hazard_after_tax->perils.front().cleanup == dollars_per_acre(78));
}

TEST_CASE("what storms cost after tax leaves out the basis that other acres keep") {
  AdviseProblem problem = taxed_stand();
  problem.stand.stand_case.hazard = problem.successor->stand_case.hazard = gales();
  const Advice with = advise(problem).value();
  problem.tax->basis = MoneyPerAcre();
  const Advice without = advise(problem).value();
  REQUIRE(!with.storm->thinnings.empty());
  for (std::size_t i = 0; i < with.storm->thinnings.size(); ++i) {
    CHECK(with.after_tax->storms[i].yearly_loss_after ==
          without.after_tax->storms[i].yearly_loss_after);
    CHECK(with.after_tax->storms[i].yearly_loss_after < with.storm->thinnings[i].yearly_loss_after);
  }
}

}  // namespace
}  // namespace staddle
