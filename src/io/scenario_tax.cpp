// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/ranges.h"
#include "io/scenario_blocks.h"

namespace staddle {
namespace {

using kinds::number;
using ranges::fractions;

constexpr Option tax_rows[] = {
    {.pointer = "/tax",
     .meaning = "federal income tax, to see money before and after it; not tax advice",
     .allowed = kinds::object},
    {.pointer = "/tax/long_term_rate",
     .meaning = "rate on timber sold, on proceeds less basis; an example, not advice",
     .allowed = number,
     .range = fractions,
     .default_json = "0.15"},
    {.pointer = "/tax/ordinary_rate",
     .meaning = "rate on other income, saved on costs; an example, not advice",
     .allowed = number,
     .range = fractions,
     .default_json = "0.22"},
    {.pointer = "/tax/basis_usd_ac",
     .meaning = "basis of the timber standing now",
     .unit = "$/ac",
     .allowed = number,
     .range = from_to(0, 1e5),
     .default_json = "0"},
    {.pointer = "/tax/basis_tons_ac",
     .meaning = "tons over which the basis is used up; null: those standing now",
     .unit = "tons/ac",
     .allowed = number | kinds::null,
     .range = above_to(0, 1e5),
     .default_json = "null"},
    {.pointer = "/tax/inflation",
     .meaning = "inflation, which shrinks basis and deductions",
     .unit = "per year",
     .allowed = number,
     .range = fractions,
     .default_json = "0.02"},
    {.pointer = "/tax/reforestation_deduction",
     .meaning = "planting is deducted (26 USC 194); false: it adds to the basis",
     .allowed = kinds::boolean,
     .default_json = "true"},
};

void read_tax(ScenarioReading& reading, Scenario& scenario) {
  const Place tax = reading.root["tax"];
  if (!tax.is(kinds::object)) return;
  TaxRules rules;
  rules.long_term_rate = tax["long_term_rate"].number_or_zero();
  rules.ordinary_rate = tax["ordinary_rate"].number_or_zero();
  rules.basis = dollars_per_acre(tax["basis_usd_ac"].number_or_zero());
  rules.basis_tons = tons_per_acre(tax["basis_tons_ac"].number_or_zero());
  rules.inflation = tax["inflation"].number_or_zero();
  rules.reforestation_deduction = tax["reforestation_deduction"].boolean().value_or(true);
  if (!reading.standing && rules.basis > MoneyPerAcre()) {
    reading.assumed.push_back({"/tax/basis_usd_ac", "0",
                               "bare land has no timber that could have a basis; a stand that a "
                               "cruise puts in its place has"});
  }
  scenario.tax = rules;
}

}  // namespace

ScenarioBlock tax_block() { return {tax_rows, {}, read_tax}; }

}  // namespace staddle
