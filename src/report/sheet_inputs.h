// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "report/workbook.h"
#include "staddle/report/stand_answers.h"

namespace staddle::sheets {

// The cells of the sheet of prices, costs and rate, as the formulas of other sheets see
// them. Money is in dollars an acre.
struct Inputs {
  Live rate, acres;
  Live fee, harvest_tax;
  Live thinning_sale_cost, final_sale_cost;
  Live establishment, annual_cost, annual_income;
  std::vector<Live> practices, flows;  // of the stand, in the order of the scenario
  std::vector<Live> next_practices;    // of the trees planted after it
  struct Timber {
    std::string name;
    Live final_price;
    std::optional<Live> thinning_price;    // products; other timber is never thinned
    std::optional<Live> tons_now, growth;  // other timber
  };
  std::vector<Timber> timber;  // the products, then other timber
  std::optional<Live> land;    // standing: what an acre is worth after the harvest
  // Where tax is asked for: rates, and the land after tax.
  std::optional<Live> long_term_rate, ordinary_rate, land_after_tax;

  Live net_share() const;  // what fee and tax leave of a sale
};

// The work of the stand itself, not of the one that follows.
std::vector<Practice> stand_practices(const Scenario& scenario);

// Writes the sheet.
Inputs write_inputs(Sheet& sheet, const StandAnswers& answers);

}  // namespace staddle::sheets
