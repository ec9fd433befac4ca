// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/regime/simulate.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "regime/case_kernel.h"
#include "regime/cash_book.h"
#include "staddle/base/tolerance.h"
#include "staddle/finance/valuation.h"

namespace staddle {
namespace {

// Below it the crown equation has no meaning and the ratio is not shown.
constexpr int youngest_crown_yr = 8;

StandMeasures measures_of(double tpa, double basal_area, double diameter_in, double height_ft,
                          double crown_ratio, int age_yr) {
  StandMeasures measures{trees_per_acre(tpa), square_feet_per_acre(basal_area), inches(diameter_in),
                         feet(height_ft), std::nullopt};
  if (age_yr >= youngest_crown_yr) measures.live_crown_ratio = crown_ratio;
  return measures;
}

std::vector<Yield> yields(const ProductTons& tons, std::size_t products) {
  std::vector<Yield> result;
  for (std::size_t i = 0; i < products; ++i) result.push_back(tons_per_acre(tons[i]));
  return result;
}

// One regime on its way, and everything that is told of it.
class Telling {
 public:
  Telling(const StandCase& stand_case, const StatedRegime& regime)
      : case_(stand_case), regime_(regime), kernel_(stand_case), book_(stand_case) {
    report_.name = regime.name;
    report_.final_harvest_age = regime.final_harvest;
  }

  Result<RegimeReport> tell() {
    Faults faults = faults_of_ages();
    if (!faults.empty()) return faults;
    point_ = kernel_.start();
    book_.plant();
    const int last = regime_.final_harvest.whole();
    record_year({});
    for (std::size_t next = 0;;) {
      if (next < regime_.thinnings.size() && regime_.thinnings[next].at.whole() == point_.age_yr) {
        if (auto fault = thin(regime_.thinnings[next], next)) return Faults{*fault};
        ++next;
      }
      if (point_.age_yr == last) break;
      grow_a_year();
    }
    harvest();
    appraise();
    return std::move(report_);
  }

  std::vector<YearRecord> tell_unthinned(int last_yr) {
    point_ = kernel_.start();
    record_year({});
    while (point_.age_yr < last_yr) grow_a_year();
    return std::move(report_.years);
  }

 private:
  Fault fault(const std::string& place, FaultCode code, const std::string& text) const {
    return {code, "", place, text, ""};
  }

  Faults faults_of_ages() const {
    Faults faults;
    const int first = kernel_.present_yr();
    const int last_known = kernel_.last_age_yr();
    const int final_yr = regime_.final_harvest.whole();
    if (final_yr < std::max(first, kernel_.growth().first_age()) || final_yr > last_known) {
      faults.push_back(
          fault("/final_harvest_age_yr", FaultCode::out_of_range,
                fmt::format("found {}, allowed {} to {}", final_yr,
                            std::max(first, kernel_.growth().first_age()), last_known)));
    }
    int previous = first - 1;
    for (std::size_t i = 0; i < regime_.thinnings.size(); ++i) {
      const int at = regime_.thinnings[i].at.whole();
      const std::string place = fmt::format("/thinnings/{}/age_yr", i);
      if (at < first || at < kernel_.growth().first_age()) {
        faults.push_back(fault(place, FaultCode::out_of_range,
                               fmt::format("found {}, allowed from {} on: the past cannot be cut",
                                           at, std::max(first, kernel_.growth().first_age()))));
      } else if (at <= previous) {
        faults.push_back(fault(place, FaultCode::contradiction,
                               fmt::format("found {}, which is not after the thinning before it "
                                           "({})",
                                           at, previous)));
      }
      if (at >= final_yr) {
        faults.push_back(fault(
            place, FaultCode::contradiction,
            fmt::format("found {}, which is not before the final harvest ({})", at, final_yr)));
      }
      previous = at;
    }
    return faults;
  }

  // The share of basal area that a stated thinning takes; zero or less: it cuts nothing.
  double removal_of(const StatedThinning& thinning) const {
    switch (thinning.by) {
      case StatedThinning::By::removal_fraction:
        return thinning.removal_fraction;
      case StatedThinning::By::residual_basal_area:
        return 1.0 - thinning.residual_basal_area.in(square_feet_per_acre) / measured_.basal_area;
      case StatedThinning::By::residual_trees: {
        const double q = kernel_.cut_diameter_ratio(point_.entries);
        return q * q * (1.0 - thinning.residual_trees.in(trees_per_acre) / measured_.tpa);
      }
    }
    return 0.0;
  }

  std::optional<Fault> thin(const StatedThinning& thinning, std::size_t index) {
    kernel_.measure_tons(point_, measured_);
    const double removal = measured_.timber ? removal_of(thinning) : 0.0;
    ThinningRecord record;
    record.at = thinning.at;
    record.before = measures_now();
    record.share_standing = point_.alive;
    if (!kernel_.cuts_tabled() && removal <= tolerance::limit_slack) {
      record.cuts_nothing = true;
      record.after = record.before;
      record.stumpage_left = report_.years.back().stumpage_value;
      record.tons.assign(kernel_.products(), tons_per_acre(0));
      report_.thinnings.push_back(std::move(record));
      return std::nullopt;
    }
    const double q = kernel_.cut_diameter_ratio(point_.entries);
    if (!kernel_.cuts_tabled() && (removal >= 1.0 || removal >= q * q)) {
      return fault(fmt::format("/thinnings/{}", index), FaultCode::contradiction,
                   fmt::format("a cut of {:.4g} of the basal area at age {} would take every tree: "
                               "allowed is less than {:.4g} at a cut diameter ratio of {:.4g}",
                               removal, point_.age_yr, std::min(1.0, q * q), q));
    }
    Cut cut;
    kernel_.work_out_cut(point_, measured_, removal, cut);
    record.removal_fraction = cut.removal_fraction;
    const AgeRow& row = *measured_.row;
    const double diameter = std::exp(cut.log_diameter);
    record.after = measures_of(cut.tpa, cut.basal_area, diameter, row.height_ft,
                               kernel_.crown_ratio(row, diameter), point_.age_yr);
    record.tons = yields(cut.tons, kernel_.products());
    record.revenue = dollars_per_acre(cut.revenue_usd_ac);
    book_.enter(point_.age_yr, fmt::format("thinning {}", point_.entries + 1),
                point_.alive * cut.revenue_usd_ac, CashFlowLine::Kind::cut);
    kernel_.take_cut(point_, measured_, cut);
    measured_.tons = cut.after;
    record.stumpage_left = stumpage_now();
    measured_.age_yr = -1;
    report_.thinnings.push_back(std::move(record));
    return std::nullopt;
  }

  void grow_a_year() {
    const double entered = point_.alive;
    const bool first_thinning_past = point_.first_thinning_past;
    const StormYear storm = kernel_.advance(point_, measured_);
    book_.pass_year(point_.age_yr, entered, point_.alive, first_thinning_past);
    book_.storm(point_.age_yr, entered, storm);
    record_year(storm);
  }

  void record_year(const StormYear& storm) {
    kernel_.measure_tons(point_, measured_);
    YearRecord year;
    year.at = age(point_.age_yr);
    year.measures = measures_now();
    year.tons = yields(measured_.tons, kernel_.products());
    const double value = kernel_.stumpage_value(measured_, point_.age_yr);
    year.stumpage_value = stumpage_now();
    year.expected_loss_share = storm.loss_share;
    year.expected_loss =
        dollars_per_acre(storm.loss_share * value - storm.salvage_usd_ac + storm.cleanup_usd_ac);
    year.expected_salvage = dollars_per_acre(storm.salvage_usd_ac);
    year.expected_cleanup = dollars_per_acre(storm.cleanup_usd_ac);
    year.share_standing = point_.alive;
    report_.years.push_back(std::move(year));
  }

  MoneyPerAcre stumpage_now() const {
    return dollars_per_acre(kernel_.stumpage_value(measured_, point_.age_yr) +
                            kernel_.basis_relief(point_, point_.basis_left));
  }

  StandMeasures measures_now() const {
    return measures_of(measured_.tpa, measured_.basal_area, measured_.diameter_in,
                       measured_.row->height_ft, measured_.crown_ratio, point_.age_yr);
  }

  void harvest() {
    kernel_.measure_tons(point_, measured_);
    HarvestRecord& record = report_.final_harvest;
    record.before = measures_now();
    record.tons = yields(measured_.tons, kernel_.products());
    if (case_.standing) {
      for (const OtherTimber& timber : case_.standing->other_timber) {
        record.other_tons.push_back(timber.now * std::pow(1.0 + timber.growth_fraction_per_yr,
                                                          point_.age_yr - kernel_.present_yr()));
      }
    }
    const double revenue = kernel_.harvest_revenue(point_, measured_);
    record.revenue = dollars_per_acre(revenue);
    record.share_standing = point_.alive;
    book_.enter(point_.age_yr, "final harvest", point_.alive * revenue, CashFlowLine::Kind::cut);
    book_.wait_to_replant(point_.age_yr, point_.alive);
    const FinishedRegime finished = kernel_.harvest(point_, measured_);
    report_.value = {dollars_per_acre(finished.money), finished.land_weight,
                     dollars_per_acre(kernel_.objective(finished))};
  }

  void appraise() {
    report_.cash_flow = book_.lines();
    const DiscountRate rate = case_.costs.rate;
    report_.equal_annual_equivalent = equal_annual_equivalent(report_.value.objective, rate);
    CashFlows flows;
    for (const CashFlowLine& line : report_.cash_flow) {
      flows.push_back({line.at - case_.present(), line.amount, line.what});
    }
    report_.benefit_cost_ratio = benefit_cost_ratio(flows, rate);
    if (case_.standing) {
      report_.internal_rate_of_return_reason =
          "a standing stand has no planting cost to earn a return on";
      return;
    }
    const InternalRates rates = internal_rates_of_return(flows);
    for (const DiscountRate& root : rates.all) {
      report_.internal_rates_of_return.push_back(root.per_year());
    }
    if (rates.reported) report_.internal_rate_of_return = rates.reported->per_year();
    report_.internal_rate_of_return_reason = rates.reason;
  }

  const StandCase& case_;
  const StatedRegime& regime_;
  CaseKernel kernel_;
  CashBook book_;
  StandPoint point_;
  Measured measured_;
  RegimeReport report_;
};

}  // namespace

Regime RegimeReport::regime() const {
  Regime result;
  for (const ThinningRecord& thinning : thinnings) {
    if (!thinning.cuts_nothing)
      result.thinnings.push_back({thinning.at, thinning.removal_fraction});
  }
  result.final_harvest = final_harvest_age;
  return result;
}

Result<RegimeReport> simulate(const StandCase& stand_case, const StatedRegime& regime) {
  return Telling(stand_case, regime).tell();
}

std::vector<YearRecord> grow_unthinned(const StandCase& stand_case, Age last) {
  const StatedRegime nothing{"", {}, last};
  return Telling(stand_case, nothing).tell_unthinned(last.whole());
}

}  // namespace staddle
