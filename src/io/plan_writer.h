// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "io/value_writer.h"
#include "staddle/advise/advice.h"

// Regimes as results show them, in short and in full.
namespace staddle::json {

// What an object that holds a regime needs to know beside it.
struct RegimeContext {
  const std::vector<ProductLimit>& products;
  const std::vector<OtherTimber>& other_timber;
  bool standing = false;
  bool hazard = false;                        // tons and revenue are per acre still standing
  std::optional<MoneyPerAcre> successor_lev;  // standing: LEV*, where it is known
  // Standing, where tax is asked for: LEV* after tax.
  std::optional<MoneyPerAcre> successor_lev_after_tax = std::nullopt;
};
RegimeContext context_of(const Scenario& scenario, const Advice& advice);

// {thinnings: [{age_yr, removal_fraction}], final_harvest_age_yr}.
Value decisions(const Regime& regime);

// PLAN: {thinnings, final_harvest_age_yr, land_expectation_value_usd_ac,
// forest_value_usd_ac, net_present_value_usd_ac}.
Value plan(const Plan& plan, const RegimeContext& context);

// {best: PLAN, cost_usd_ac, loss_saved_usd_ac}; null where no cut exceeds a third.
Value third_instead(const std::optional<ThirdInstead>& third, const RegimeContext& context,
                    const std::optional<ThirdInstead>* after_tax);

// A regime with its tons, money and measures, shaped like "best" of staddle-advice/1.
// With the same regime after tax, every object that holds money gains "after_tax".
Value regime(const RegimeReport& report, const RegimeContext& context,
             const RegimeReport* after_tax = nullptr);

}  // namespace staddle::json
