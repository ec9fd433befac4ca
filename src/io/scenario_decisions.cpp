// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "io/number_text.h"
#include "io/scenario_blocks.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

class DecisionsReader {
 public:
  DecisionsReader(ScenarioReading& reading, Scenario& scenario)
      : reading_(reading),
        decisions_(reading.root["decisions"]),
        scenario_(scenario),
        lattice_(scenario.lattice) {}

  void read() {
    lattice_.max_thinnings = decisions_["max_thinnings"].whole().value_or(0);
    lattice_.years_between_entries = decisions_["years_between_entries"].whole().value_or(1);
    lattice_.min_removal = tons_per_acre(decisions_["min_removal_tons_ac"].number_or_zero());
    lattice_.min_sale = tons(decisions_["min_sale_tons"].number_or_zero());
    lattice_.min_residual_basal_area =
        square_feet_per_acre(decisions_["min_residual_basal_area_ft2_ac"].number_or_zero());
    read_window("thinning_age_yr", lattice_.thinning_from, lattice_.thinning_to);
    read_window("final_harvest_age_yr", lattice_.final_from, lattice_.final_to);
    read_removals(decisions_["removal_fraction"]);
    read_cut_diameter_ratios(decisions_["cut_diameter_ratio"]);
    if (decisions_["thinning_response"].text() == "as-published") {
      scenario_.thinning_response = ThinningResponse::as_published;
    }
    read_guards(decisions_["guards"]);
    note_overmature_stand();
    if (reading_.tabled_regimes) {
      reading_.assumed.push_back({"/decisions", "null",
                                  "the tables' regimes are priced as they are; of the decisions "
                                  "only final_harvest_age_yr applies"});
    }
  }

 private:
  // A window of ages as asked for; one that was not asked for is clipped to the table.
  void read_window(const char* key, Age& from, Age& to) {
    const Place place = decisions_[key];
    const auto low = place.item(0).whole();
    const auto high = place.item(1).whole();
    if (!low || !high) return;
    if (*low > *high) {
      reading_.fault(place, FaultCode::contradiction,
                     "the lower limit, " + std::to_string(*low) + ", is above the upper, " +
                         std::to_string(*high));
      return;
    }
    from = age(*low);
    to = age(*high);
    if (!reading_.first_table_age) return;
    const int first = *reading_.first_table_age;
    const int last = *reading_.last_table_age;
    if (place.given()) {
      refuse_beyond_table(place, first, last);
      return;
    }
    if (*low >= first && *high <= last) return;
    from = age(std::max(*low, first));
    to = age(std::min(*high, last));
    amend_default(place.pointer(), from, to);
  }

  void refuse_beyond_table(const Place& window, int first, int last) {
    for (const Place& end : window.items()) {
      const auto at = end.whole();
      if (!at || (*at >= first && *at <= last)) continue;
      reading_.fault(end, FaultCode::out_of_range,
                     "found " + std::to_string(*at) + "; the yield table covers ages " +
                         std::to_string(first) + " to " + std::to_string(last));
    }
  }

  // The default listed for the window gives way to what is left of it.
  void amend_default(const std::string& pointer, Age from, Age to) {
    for (Assumption& assumption : reading_.assumed) {
      if (assumption.pointer != pointer) continue;
      assumption.value_json =
          "[" + std::to_string(from.whole()) + "," + std::to_string(to.whole()) + "]";
      assumption.why = "default, clipped to the ages of the yield table";
    }
  }

  void read_removals(const Place& place) {
    std::vector<double>& fractions = lattice_.removal_fractions;
    for (const Place& item : place.items()) {
      if (const auto fraction = item.number()) fractions.push_back(*fraction);
    }
    const auto from = place["from"].number();
    const auto to = place["to"].number();
    const auto step = place["step"].number();
    if (from && to && *from > *to) {
      reading_.fault(place, FaultCode::contradiction,
                     "from, " + number_text(*from) + ", is above to, " + number_text(*to));
    } else if (from && to && step) {
      for (int i = 0; *from + i * *step <= *to + tolerance::range_end; ++i) {
        fractions.push_back(*from + i * *step);
      }
    }
    std::sort(fractions.begin(), fractions.end());
    fractions.erase(std::unique(fractions.begin(), fractions.end()), fractions.end());
  }

  void read_cut_diameter_ratios(const Place& place) {
    std::vector<double>& ratios = scenario_.cut_diameter_ratios;
    if (const auto one = place.number()) ratios.push_back(*one);
    for (const Place& item : place.items()) {
      if (const auto ratio = item.number()) ratios.push_back(*ratio);
    }
  }

  void read_guards(const Place& place) {
    Guards& guards = lattice_.guards;
    guards.max_removal_fraction = place["max_removal_fraction"].number();
    const Place dense = place["dense_stand_now"];
    if (dense.is(kinds::object)) {
      guards.dense_stand_now =
          DenseStandNow{square_feet_per_acre(dense["basal_area_ft2_ac"].number_or_zero()),
                        dense["max_removal_fraction"].number_or_zero()};
    }
    if (const auto limit = place["min_residual_basal_area_ft2_ac"].number()) {
      guards.min_residual_basal_area = square_feet_per_acre(*limit);
    }
    if (const auto limit = place["min_height_ft"].number()) guards.min_height = feet(*limit);
    if (const auto limit = place["min_qmd_in"].number()) guards.min_qmd = inches(*limit);
    guards.min_live_crown_ratio = place["min_live_crown_ratio"].number();
  }

  void note_overmature_stand() {
    if (!reading_.standing || !reading_.present_age) return;
    if (age(*reading_.present_age) <= lattice_.final_to) return;
    const std::string now = std::to_string(*reading_.present_age);
    reading_.assumed.push_back({"/decisions/final_harvest_age_yr", "[" + now + "," + now + "]",
                                "the stand is older than the upper limit: it can only be cut now"});
  }

  ScenarioReading& reading_;
  const Place decisions_;
  Scenario& scenario_;
  DecisionLattice& lattice_;
};

void read_decisions(ScenarioReading& reading, Scenario& scenario) {
  DecisionsReader(reading, scenario).read();
}

}  // namespace

ScenarioBlock decisions_block() { return {decisions_options(), {}, read_decisions}; }

}  // namespace staddle
