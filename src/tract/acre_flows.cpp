// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/acre_flows.h"

#include <algorithm>
#include <cmath>

namespace staddle {
namespace {

class YearReader {
 public:
  YearReader(const StandCase& stand_case, const RegimeReport& report, const YearReading& reading)
      : report_(report), reading_(reading), present_(stand_case.present()) {
    const auto size =
        nth(year_of(report.final_harvest_age) + stand_case.costs.regeneration_delay_yr + 1);
    for (auto* measure : {&years_.income, &years_.cost, &years_.establishment,
                          &years_.final_harvest, &years_.turned_bare, &years_.open}) {
      measure->assign(size, 0.0);
    }
    years_.tons.assign(reading.products, std::vector<double>(size, 0.0));
  }

  RegimeYears read() {
    for (const CashFlowLine& line : report_.cash_flow) add_money(line);
    for (const ThinningRecord& thinning : report_.thinnings) {
      add_tons(thinning.at, thinning.tons, thinning.share_standing);
    }
    const HarvestRecord& harvest = report_.final_harvest;
    const std::size_t last = nth(year_of(report_.final_harvest_age));
    add_tons(report_.final_harvest_age, harvest.tons, harvest.share_standing);
    years_.final_harvest[last] = harvest.share_standing;
    add_acres();
    years_.turned_bare[last] += harvest.share_standing;
    return std::move(years_);
  }

 private:
  int year_of(Age age) const { return age.whole() - present_.whole(); }

  void add_money(const CashFlowLine& line) {
    const std::size_t year = nth(year_of(line.at));
    const double amount = line.amount.in(dollars_per_acre);
    if (amount > 0.0 || line.kind == CashFlowLine::Kind::cut) {
      years_.income[year] += amount;
    } else {
      years_.cost[year] -= amount;
    }
    if (line.kind == CashFlowLine::Kind::establishment) years_.establishment[year] -= amount;
  }

  void add_tons(Age age, const std::vector<Yield>& tons, double share_standing) {
    for (std::size_t i = 0; i < tons.size(); ++i) {
      years_.tons[reading_.product_of[i]][nth(year_of(age))] +=
          share_standing * tons[i].in(tons_per_acre);
    }
  }

  // Bared by storms, and open. After a cut it is what the cut left that counts.
  void add_acres() {
    auto thinning = report_.thinnings.begin();
    double standing = 1.0;
    for (const YearRecord& record : report_.years) {
      const std::size_t year = nth(year_of(record.at));
      years_.turned_bare[year] += standing * record.expected_loss_share;
      standing = record.share_standing;
      BasalArea basal_area = record.measures.basal_area;
      if (thinning != report_.thinnings.end() && thinning->at == record.at) {
        basal_area = thinning->after.basal_area;
        ++thinning;
      }
      const bool stays = record.at < report_.final_harvest_age;
      if (stays && reading_.open_below && basal_area < *reading_.open_below) {
        years_.open[year] = standing;
      }
    }
  }

  const RegimeReport& report_;
  const YearReading& reading_;
  Age present_;
  RegimeYears years_;
};

// Adds `share` times a land's flows from its planting on.
void add_land(const Land& land, double share, int bare_year, AcreFlows& flows) {
  const int last = static_cast<int>(flows.income.size()) - 1;
  for (int year = bare_year; year <= last; ++year) {
    flows.open[nth(year)] += share * land.open_in(year, bare_year);
  }
  if (land.fate != Land::Fate::replanted) return;
  const int planted = bare_year + land.delay_yr;
  for (int year = planted; year <= last; ++year) {
    const std::size_t from = nth(year - planted);
    const std::size_t to = nth(year);
    flows.income[to] += share * land.flows.income[from];
    flows.cost[to] += share * land.flows.cost[from];
    flows.establishment[to] += share * land.flows.establishment[from];
    flows.final_harvest[to] += share * land.flows.final_harvest[from];
    for (std::size_t i = 0; i < flows.tons.size(); ++i) {
      flows.tons[i][to] += share * land.flows.tons[i][from];
    }
  }
}

AcreFlows own_flows(const RegimeYears& regime, int plan_years) {
  const auto cut = [&](const std::vector<double>& measure) {
    std::vector<double> result(nth(plan_years + 1), 0.0);
    std::copy_n(measure.begin(), std::min(measure.size(), result.size()), result.begin());
    return result;
  };
  AcreFlows flows{cut(regime.income),        cut(regime.cost), cut(regime.establishment),
                  cut(regime.final_harvest), cut(regime.open), {}};
  for (const std::vector<double>& tons : regime.tons) flows.tons.push_back(cut(tons));
  return flows;
}

double ending_value(const RegimeYears& regime, const Land& land, int last_year) {
  double value = 0.0;
  for (int year = last_year + 1; nth(year) < regime.size(); ++year) {
    value += land.discount(year - last_year) * (regime.income[nth(year)] - regime.cost[nth(year)]);
  }
  for (int year = 0; nth(year) < regime.size(); ++year) {
    if (regime.turned_bare[nth(year)] == 0.0) continue;
    value += regime.turned_bare[nth(year)] * land.ending_value(last_year, year);
  }
  return value;
}

}  // namespace

RegimeYears years_of(const StandCase& stand_case, const RegimeReport& report,
                     const YearReading& reading) {
  return YearReader(stand_case, report, reading).read();
}

double Land::discount(int years) const { return std::pow(1.0 + rate, -years); }

double Land::open_in(int year, int bare_year) const {
  const int planted = bare_year + delay_yr;
  if (year < planted) return 1.0;
  if (fate == Fate::replanted) return flows.open[nth(year - planted)];
  return fate == Fate::left_bare ? 1.0 : 0.0;
}

double Land::ending_value(int last_year, int bare_year) const {
  const int planted = bare_year + delay_yr;
  if (planted > last_year) return discount(planted - last_year) * value;
  return fate == Fate::replanted ? standing_value[nth(last_year - planted)] : value;
}

// Year by year: what an acre does depends on what acres planted later have done by then.
Land replanted_land(const RegimeYears& rotation, double value, double rate, int delay_yr,
                    int plan_years) {
  Land land;
  land.delay_yr = delay_yr;
  land.value = value;
  land.rate = rate;
  land.flows = own_flows(rotation, plan_years);
  land.standing_value.assign(nth(plan_years + 1), 0.0);
  AcreFlows& flows = land.flows;
  for (int year = 0; year <= plan_years; ++year) {
    const int last_bare = std::min(year, static_cast<int>(rotation.size()) - 1);
    for (int bare = 0; bare <= last_bare; ++bare) {
      const double share = rotation.turned_bare[nth(bare)];
      if (share == 0.0) continue;
      flows.open[nth(year)] += share * land.open_in(year, bare);
      const int planted = bare + delay_yr;
      if (year < planted) continue;
      const std::size_t from = nth(year - planted);
      flows.income[nth(year)] += share * flows.income[from];
      flows.cost[nth(year)] += share * flows.cost[from];
      flows.establishment[nth(year)] += share * flows.establishment[from];
      flows.final_harvest[nth(year)] += share * flows.final_harvest[from];
      for (std::vector<double>& tons : flows.tons) tons[nth(year)] += share * tons[from];
    }
    land.standing_value[nth(year)] = ending_value(rotation, land, year);
  }
  return land;
}

AcreFlows flows_of(const RegimeYears& regime, const Land& land, int plan_years) {
  AcreFlows flows = own_flows(regime, plan_years);
  for (int year = 0; year <= plan_years && nth(year) < regime.size(); ++year) {
    if (regime.turned_bare[nth(year)] == 0.0) continue;
    add_land(land, regime.turned_bare[nth(year)], year, flows);
  }
  flows.ending_value = ending_value(regime, land, plan_years);
  return flows;
}

}  // namespace staddle
