// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/advise/fitted_ranges.h"
#include "staddle/regime/simulate.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// The stand at one moment. A year with a thinning has two rows.
struct GrowthRow {
  Age at;
  std::optional<CalendarYear> year;
  enum class When { only, before_cut, after_cut } when = When::only;
  std::vector<Yield> tons;  // by product
  MoneyPerAcre stumpage;    // at the prices of the final harvest, other timber included
  std::optional<MoneyPerAcre> stumpage_after_tax;  // what selling it all then would leave
  StandMeasures measures;
  double share_standing = 1.0;  // acres that storms have left
};

// The rows of a regime, from the present to its final harvest. What stands after a cut is
// what stood before it less what was cut. `after_tax`: the same regime after tax, where
// that is asked for.
std::vector<GrowthRow> growth_rows(const Scenario& scenario, const RegimeReport& regime,
                                   const RegimeReport* after_tax = nullptr);

// What is told besides the rows.
struct GrowthContext {
  const RegimeReport* after_tax = nullptr;  // as in growth_rows
  std::vector<OutsideRange> outside_fitted_range;
};

// The rows as JSON, format staddle-growth/1; as CSV (RFC 4180, one heading per key, an
// absent value is an empty cell); and as a table for people, numbers rounded.
std::string growth_json(const Scenario& scenario, const RegimeReport& regime,
                        const GrowthContext& context = {});
std::string growth_csv(const Scenario& scenario, const RegimeReport& regime,
                       const GrowthContext& context = {});
std::string growth_text(const Scenario& scenario, const RegimeReport& regime,
                        const GrowthContext& context = {});

}  // namespace staddle
