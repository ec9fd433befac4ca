// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "futures/fixture.h"
#include "futures/future_table.h"
#include "staddle/hazard/damage.h"
#include "staddle/regime/simulate.h"
#include "support/money.h"
#include "support/near.h"
#include "support/seed.h"

// A future written down year by year, the plain way, from the report of its regime: the
// accounting of simulate_futures' headers without its tables.
namespace staddle::support {
namespace {

class Ledger {
 public:
  Ledger(const StandCase& stand_case, const Regime& regime)
      : case_(stand_case),
        regime_(regime),
        report_(simulate(stand_case, stated("", regime)).value()),
        land_usd_ac_(usd(stand_case.standing ? stand_case.land_value : report_.value.objective)) {}

  struct Outcome {
    double value = 0, choices_value = 0;
  };

  Outcome future(std::uint64_t seed, std::uint64_t number) const {
    RandomStream random(seed, number);
    double money = case_.standing ? 0.0 : -usd(case_.costs.establishment);
    double standing = 1.0;
    std::optional<double> cleared;
    act(report_.years.front(), standing, money);
    for (std::size_t i = 1; i < report_.years.size(); ++i) {
      const YearRecord& year = report_.years[i];
      const double v = discount(year);
      money += v * standing * yearly(year);
      const Peril* peril = strike(random.next_uniform());
      const double share = peril == nullptr ? 0.0 : damage_share(*peril, exposure(year));
      if (share > 0.0) {
        money += standing * share * v *
                 (peril->salvage_share * usd(year.stumpage_value) - usd(peril->cleanup) + bare());
        standing *= 1.0 - share;
        if (!cleared && i + 1 < report_.years.size() && clears(year, standing)) {
          cleared = money + standing * v * (sale(year) + bare());
        }
      }
      for (const Practice& practice : case_.costs.practices) {
        if (practice.at == year.at) money -= v * standing * usd(practice.cost);
      }
      act(year, standing, money);
    }
    return {money, cleared.value_or(money)};
  }

 private:
  double discount(const YearRecord& year) const {
    return case_.costs.rate.discount_factor(year.at - case_.present());
  }

  // Thinning or final harvest at the end of the year.
  void act(const YearRecord& year, double standing, double& money) const {
    for (const ThinningRecord& thinning : report_.thinnings) {
      if (thinning.at == year.at) money += discount(year) * standing * usd(thinning.revenue);
    }
    if (year.at == regime_.final_harvest) {
      money += discount(year) * standing * (usd(report_.final_harvest.revenue) + bare());
    }
  }

  double annual() const { return usd(case_.costs.annual_income - case_.costs.annual_cost); }

  double yearly(const YearRecord& year) const {
    double sum = annual();
    for (const DatedFlow& flow : case_.costs.flows) {
      bool pays = year.at >= flow.from;
      if (flow.until == DatedFlow::Until::age) pays = pays && year.at <= flow.to;
      if (flow.until == DatedFlow::Until::first_thinning) {
        pays = pays && !(case_.standing && case_.standing->last_thinning) &&
               (regime_.thinnings.empty() || year.at <= regime_.thinnings.front().at);
      }
      if (pays) sum += usd(flow.per_year);
    }
    return sum;
  }

  // The wait and the land, at the moment the acre turns bare.
  double bare() const {
    const int delay = case_.costs.regeneration_delay_yr;
    double sum = case_.costs.rate.discount_factor(years(delay)) * land_usd_ac_;
    for (int j = 1; j <= delay; ++j) sum += case_.costs.rate.discount_factor(years(j)) * annual();
    return sum;
  }

  double sale(const YearRecord& year) const {
    const double kept = 1.0 - case_.costs.sale_fee_fraction - case_.costs.harvest_tax_fraction;
    return usd(year.stumpage_value) * kept - usd(case_.costs.final_sale_cost);
  }

  const Peril* strike(double draw) const {
    double chance = 0.0;
    for (const Peril& peril : case_.hazard.perils) {
      chance += peril.annual_probability;
      if (draw < chance) return &peril;
    }
    return nullptr;
  }

  Exposure exposure(const YearRecord& year) const {
    const auto slenderness = [](const StandMeasures& stand) {
      return capped_slenderness(stand.dominant_height.in(feet),
                                stand.quadratic_mean_diameter.in(inches));
    };
    Exposure exposure{year.at >= case_.growth.first_age(), year.measures.dominant_height,
                      slenderness(year.measures), 0.0};
    const auto remember = [&](Age at, double removal, double slenderness_before) {
      const double since = (year.at - at).in(years) - 1;
      if (since < 0) return;
      const double recovery = case_.hazard.recovery_yr;
      exposure.opening = std::max(exposure.opening, opening_of_cut(removal) *
                                                        remaining_opening(since, recovery));
      if (since < recovery) {
        exposure.slenderness = std::max(exposure.slenderness, slenderness_before);
      }
    };
    if (case_.standing && case_.standing->last_thinning) {
      remember(case_.standing->last_thinning->at,
               case_.standing->last_thinning->removal_fraction, 0.0);
    }
    for (const ThinningRecord& cut : report_.thinnings) {
      remember(cut.at, cut.removal_fraction, slenderness(cut.before));
    }
    return exposure;
  }

  bool clears(const YearRecord& year, double standing) const {
    const double left = standing * year.measures.basal_area.in(square_feet_per_acre);
    return standing > 0.0 && (left < 30.0 || sale(year) + bare() > going_on(year) + 1e-7);
  }

  // Expected worth, at the end of that year, of an acre that came through its storm.
  double going_on(const YearRecord& from) const {
    double money = 0.0, standing = 1.0;
    for (const YearRecord& year : report_.years) {
      if (year.at < from.at) continue;
      const double v = discount(year);
      if (year.at > from.at) {
        money += v * standing * yearly(year);
        double lost_share = 0.0;
        for (const Peril& peril : case_.hazard.perils) {
          const double lost = peril.annual_probability * damage_share(peril, exposure(year));
          money += v * standing * lost *
                   (peril.salvage_share * usd(year.stumpage_value) - usd(peril.cleanup) + bare());
          lost_share += lost;
        }
        standing *= 1.0 - lost_share;
      }
      for (const Practice& practice : case_.costs.practices) {
        if (practice.at == year.at) money -= v * standing * usd(practice.cost);
      }
      act(year, standing, money);
    }
    return money / discount(from);
  }

  const StandCase& case_;
  const Regime& regime_;
  RegimeReport report_;
  double land_usd_ac_;
};

// Dollars: the order of a few hundred additions differs.
constexpr double same_sum = 1e-7;

}  // namespace

TEST_CASE("futures written down year by year give the same mean and the same choices") {
  const TaggedSeed seed("ledgers");
  constexpr std::uint64_t futures = 300;
  for (std::uint64_t number = 0; number < 40; ++number) {
    CAPTURE(number);
    RandomStream random = seed.stream(number);
    const FuturesProblem problem = random_problem(random);
    FuturesOptions options;
    options.futures = futures;
    options.seed = number;
    options.choices = true;
    const FuturesSolution solution = simulate_futures(problem, options);
    for (std::size_t i = 0; i < problem.regimes.size(); ++i) {
      const Ledger ledger(problem.stand_case, problem.regimes[i]);
      double sum = 0.0, choices_sum = 0.0;
      for (std::uint64_t future = 0; future < futures; ++future) {
        const Ledger::Outcome outcome = ledger.future(number, future);
        sum += outcome.value;
        choices_sum += outcome.choices_value;
      }
      CHECK(usd(solution.regimes[i].mean) == within(sum / futures, same_sum));
      CHECK(usd(solution.regimes[i].choices->mean) == within(choices_sum / futures, same_sum));
    }
  }
}

TEST_CASE("the table of a regime looks back to the evaluator's expected value") {
  const TaggedSeed seed("tables of futures");
  for (std::uint64_t number = 0; number < 200; ++number) {
    CAPTURE(number);
    RandomStream random = seed.stream(number);
    const FuturesProblem problem = random_problem(random);
    const CaseKernel kernel(problem.stand_case);
    for (const Regime& regime : problem.regimes) {
      const FutureTable table(kernel, problem.stand_case, regime);
      CHECK(table.expected_value() ==
            within(usd(evaluate(problem.stand_case, regime).objective), same_sum));
    }
  }
}

}  // namespace staddle::support
