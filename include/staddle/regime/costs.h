// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/finance/rate.h"
#include "staddle/units/age.h"
#include "staddle/units/units.h"

namespace staddle {

// A job done once at an age, if the stand still stands then.
struct Practice {
  std::string what;
  Age at;
  MoneyPerAcre cost;
};

// Money of every year from one age to another, income positive.
struct DatedFlow {
  std::string what;
  Age from;
  enum class Until { age, first_thinning, final_harvest };
  Until until = Until::final_harvest;
  Age to;  // with Until::age
  MoneyPerAcre per_year;
};

// Timber besides the pine, sold at the final harvest.
struct OtherTimber {
  std::string what;
  Yield now;                      // at the present age
  double growth_fraction_per_yr = 0.0;
  Price stumpage;
};

// Everything that is paid or earned besides stumpage. Real dollars of today.
struct Costs {
  DiscountRate rate;
  MoneyPerAcre establishment;
  double sale_fee_fraction = 0.0;
  double harvest_tax_fraction = 0.0;
  MoneyPerAcre thinning_sale_cost;
  MoneyPerAcre final_sale_cost;
  int regeneration_delay_yr = 1;
  MoneyPerAcre annual_cost;
  MoneyPerAcre annual_income;
  std::vector<Practice> practices;
  std::vector<DatedFlow> flows;
};

}  // namespace staddle
