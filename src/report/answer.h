// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "report/dates.h"
#include "staddle/advise/advice.h"
#include "staddle/report/report.h"

namespace staddle {

// What the owner is told to do this season.
enum class Action {
  plant,            // bare land
  thin,             // the best plan thins now
  thin_soon,        // it waits, but the stand is due and acting now costs next to nothing
  sell,             // the best plan harvests now
  sell_soon,        // no thinning is left, and a harvest now costs next to nothing
  nothing,
};

// A scenario and its advice, with all that the sentences and tables ask of both.
struct Answer {
  const Scenario& scenario;
  const Advice& advice;
  const std::vector<std::string>& storm_zones;
  Dates dates;
  Action action;
  std::vector<const ThinningRecord*> cuts;  // of the best plan, those that cut something

  Answer(const Scenario& scenario_asked, const Advice& advice_given,
         const std::vector<std::string>& zones);

  Area area() const { return scenario.area; }
  bool thinned_before() const {
    return scenario.is_standing() && scenario.stand.standing->last_thinning.has_value();
  }
  // The next cut of the plan, the final harvest included.
  Age next_entry() const { return cuts.empty() ? final_age() : cuts.front()->at; }
  Age final_age() const { return advice.best.final_harvest_age; }
  Yield total(const std::vector<Yield>& tons) const;
  // Within the ages of the search.
  bool final_harvest_is_allowed(Age at) const {
    return scenario.lattice.final_from <= at && at <= scenario.lattice.final_to;
  }
  // "$240 an acre ($15,000 for the tract)"; of a loss the size alone. With storms money and
  // tons are those of an acre that still stands, and the tract's only of such acres.
  std::string both(MoneyPerAcre amount, double share_standing = 1.0) const;
  // "20 tons of pulpwood and 7 of chip-n-saw"; products that round to nothing left out.
  std::string by_product(const std::vector<Yield>& tons) const;
  // "a third in 2029 and a third in 2034, final harvest in 2043".
  std::string brief(const Regime& regime) const;
  // The thinnings alone: "2029 a third, 2034 a third"; "none".
  std::string cuts_brief(const Regime& regime) const;
  // "loblolly pine"; "pine" where a table does not say.
  std::string species() const;
  const EquationSet* equations() const;
  // "5 percent".
  std::string rate() const;
};

// Topics 1 to 5, 6 to 9 and 10 to 12 of the opening lines.
std::vector<Line> action_lines(const Answer& answer);
std::vector<Line> value_lines(const Answer& answer);
std::vector<Line> risk_lines(const Answer& answer);

Section plan_section(const Answer& answer);
Section options_section(const Answer& answer);
std::optional<Section> guards_section(const Answer& answer);
std::optional<Section> survival_section(const Answer& answer);
std::optional<Section> tax_section(const Answer& answer);
std::optional<Section> plots_section(const Answer& answer);
std::optional<Section> signs_section(const Answer& answer);
Section risks_section(const Answer& answer);
std::optional<Section> storms_section(const Answer& answer);
Section assumptions_section(const Answer& answer);
// Where the growth comes from, and where it was stretched.
Section growth_section(const Answer& answer);
// The same and the cautions.
Section sources_section(const Answer& answer);
std::string foot_of(const Answer& answer);

}  // namespace staddle
