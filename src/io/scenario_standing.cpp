// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/scenario_standing.h"

#include <cmath>

#include "io/number_text.h"
#include "io/scenario_cruise.h"
#include "staddle/base/tolerance.h"
#include "staddle/scenario/measured_stand.h"

namespace staddle {
namespace {

class StandingReader {
 public:
  StandingReader(ScenarioReading& reading, const Place& stand, bool source_known, StandBlock& block)
      : reading_(reading), stand_(stand), source_known_(source_known), block_(block) {}

  void read() {
    for (const std::string_view key : standing_measures) {
      if (stand_[key].given() || (cruise() && key != "age_yr")) continue;
      reading_.fault(stand_[key], FaultCode::missing_key,
                     "this key is required of a standing stand",
                     "for bare land leave out age_yr, tpa and basal_area_ft2_ac");
    }
    MeasuredStand measured;
    const auto age_yr = stand_["age_yr"].whole();
    measured.trees = trees_per_acre(stand_["tpa"].number_or_zero());
    measured.basal_area = square_feet_per_acre(stand_["basal_area_ft2_ac"].number_or_zero());
    measured.live_crown_ratio = stand_["live_crown_ratio"].number();
    measures_known_ = stand_["tpa"].usable() && stand_["basal_area_ft2_ac"].usable();
    if (cruise()) take_plots(measured);
    read_other_timber(measured);
    if (!reading_.from_tables) read_site(age_yr);
    if (age_yr) {
      measured.at = age(*age_yr);
      read_last_thinning(measured, *age_yr);
    }
    block_.standing = measured;
    if (block_.plots) block_.plots->measured = measured;
    const auto elapsed = years_since_measured();
    if (age_yr && elapsed) bring_to_present(*age_yr, *elapsed);
  }

 private:
  bool cruise() const { return stand_["cruise"].given(); }

  void take_plots(MeasuredStand& measured) {
    std::optional<CruisedStand> cruised = read_cruised_stand(reading_, stand_);
    measures_known_ = cruised.has_value();
    if (!cruised) return;
    measured = cruised->sample.measured;
    measured.at = Age();
    height_of_plots_ = cruised->dominant_height;
    block_.plots = std::move(cruised->sample);
  }

  void read_other_timber(MeasuredStand& measured) {
    for (const Place& place : stand_["other_timber"].items()) {
      OtherTimber timber;
      timber.what = place["what"].text_or_empty();
      timber.now = tons_per_acre(place["tons_ac"].number_or_zero());
      timber.growth_fraction_per_yr = place["growth_fraction_per_yr"].number_or_zero();
      timber.stumpage = dollars_per_ton(place["usd_per_ton"].number_or_zero());
      measured.other_timber.push_back(std::move(timber));
    }
  }

  void read_last_thinning(MeasuredStand& measured, int age_yr) {
    const Place last = stand_["last_thinning"];
    const auto at = last["age_yr"].whole();
    const auto fraction = last["removal_fraction"].number();
    if (at && *at > age_yr) {
      reading_.fault(last["age_yr"], FaultCode::contradiction,
                     "found " + std::to_string(*at) + ", after the age of the stand, " +
                         std::to_string(age_yr));
    }
    if (at && fraction) measured.last_thinning = LastThinning{age(*at), *fraction};
  }

  // The site index as given or, failing that, from the height.
  void read_site(std::optional<int> age_yr) {
    const Place index = stand_["site_index_ft"];
    const Place height = stand_["dominant_height_ft"];
    if (const auto value = height.number()) block_.dominant_height = feet(*value);
    if (const auto value = index.number()) block_.site_index = feet(*value);
    if (cruise()) {
      read_site_of_plots(age_yr);
      return;
    }
    if (!index.given() && !height.given()) {
      reading_.fault(index, FaultCode::missing_key,
                     "a standing stand needs its site_index_ft or its dominant_height_ft");
    }
    const auto* equations = std::get_if<EquationSet>(&block_.source);
    if (!source_known_ || !equations || !block_.dominant_height || !age_yr) return;
    if (block_.site_index) {
      check_agreement(*equations, *age_yr);
    } else if (!index.given()) {
      solve_site_index(*equations, *age_yr);
    }
  }

  // A site index that is stated counts; of plots it is only asked whether they agree.
  void read_site_of_plots(std::optional<int> age_yr) {
    const auto* equations = std::get_if<EquationSet>(&block_.source);
    const bool stated = stand_["site_index_ft"].given();
    if (!block_.plots || !source_known_ || !equations || !age_yr) return;
    if (!height_of_plots_) {
      if (stated) return;
      reading_.fault(stand_["cruise"]["file"], FaultCode::missing_key,
                     "fewer than three heights were measured, and no site_index_ft is given");
      return;
    }
    block_.dominant_height = height_of_plots_;
    if (!stated) {
      solve_site_index(*equations, *age_yr);
      return;
    }
    if (!block_.site_index) return;
    const Height of_site = dominant_height(*equations, *block_.site_index, age(*age_yr));
    const double apart_ft = std::fabs((of_site - *height_of_plots_).in(feet));
    if (apart_ft <= tolerance::height_agreement_ft + tolerance::limit_slack) return;
    const auto rounded = [](double value) { return number_text(std::round(value * 10) / 10); };
    reading_.questions.push_back("The plots have a dominant height of " +
                                 rounded(height_of_plots_->in(feet)) + " ft, but the site index "
                                 "given means " + rounded(of_site.in(feet)) +
                                 " ft, and that is used: which is right?");
  }

  void check_agreement(const EquationSet& equations, int age_yr) {
    const double of_site = dominant_height(equations, *block_.site_index, age(age_yr)).in(feet);
    const double given = block_.dominant_height->in(feet);
    if (std::fabs(of_site - given) <= tolerance::height_agreement_ft + tolerance::limit_slack) {
      return;
    }
    reading_.fault(stand_["dominant_height_ft"], FaultCode::contradiction,
                   "found " + number_text(given) + " ft, but site index " +
                       number_text(block_.site_index->in(feet)) + " ft means " +
                       number_text(std::round(of_site * 10) / 10) + " ft at age " +
                       std::to_string(age_yr) + "; they must agree within " +
                       number_text(tolerance::height_agreement_ft) + " ft",
                   "give only the one that was measured");
  }

  void solve_site_index(const EquationSet& equations, int age_yr) {
    const Height solved = site_index_from_height(equations, *block_.dominant_height, age(age_yr));
    const double value = solved.in(feet);
    const Option& bounds = scenario_option("/stand/site_index_ft");
    if (!bounds.range.contains(value)) {
      reading_.fault(stand_["dominant_height_ft"], FaultCode::out_of_range,
                     "this height at age " + std::to_string(age_yr) + " means site index " +
                         number_text(std::round(value * 10) / 10) + " ft; allowed is a number " +
                         range_text(bounds));
      return;
    }
    block_.site_index = solved;
    reading_.assumed.push_back(
        {"/stand/site_index_ft", number_text(value),
         "the height curve through the dominant height at age " + std::to_string(age_yr)});
  }

  // ---- the present

  // Years between the measurement and the present; nothing where that is not known.
  std::optional<int> years_since_measured() {
    const Place measured = stand_["measured_calendar_year"];
    if (!measured.given()) return 0;
    const auto year = measured.whole();
    const Place present = reading_.root["calendar_year"];
    if (!present.given()) {
      reading_.fault(measured, FaultCode::contradiction,
                     "this needs the year of the present, /calendar_year, beside it");
    }
    if (!year || !present.whole()) return std::nullopt;
    block_.measured_in = calendar_year(*year);
    if (*year <= *present.whole()) return *present.whole() - *year;
    reading_.fault(measured, FaultCode::contradiction,
                   "found " + std::to_string(*year) + ", after the year of the present, " +
                       std::to_string(*present.whole()));
    return std::nullopt;
  }

  void bring_to_present(int then, int elapsed) {
    const int now = then + elapsed;
    reading_.present_age = now;
    const bool site_known = reading_.from_tables || block_.site_index;
    if (!present_is_covered(then, now) || !measures_known_ || !site_known) return;
    if (!source_known_ || reading_.tabled_regimes) return;
    const GrowthModel growth = growth_model_of(block_);
    for (const int at : {then, now}) {
      const MeasuredStand& stand = *block_.standing;
      if (growth.unthinned_basal_area(age(at), stand.trees) > BasalArea()) continue;
      reading_.fault(stand_["age_yr"], FaultCode::contradiction,
                     "the yield table has no basal area at age " + std::to_string(at) +
                         ", but trees were measured");
      return;
    }
    if (!density_can_be(growth)) return;
    if (elapsed > 0) grow(growth, elapsed);
    assume_crown(growth);
  }

  bool present_is_covered(int then, int now) {
    const int oldest_age = static_cast<int>(scenario_option("/stand/age_yr").range.high);
    const int oldest = reading_.last_table_age.value_or(oldest_age);
    const int youngest = reading_.first_table_age.value_or(0);
    if (then < youngest || then > oldest) {
      reading_.fault(stand_["age_yr"], FaultCode::out_of_range,
                     "found " + std::to_string(then) + "; the yield table covers ages " +
                         std::to_string(youngest) + " to " + std::to_string(oldest));
      return false;
    }
    if (now > oldest) {
      reading_.fault(stand_["measured_calendar_year"], FaultCode::out_of_range,
                     "the stand is " + std::to_string(now) + " years old at present, beyond " +
                         std::to_string(oldest));
      return false;
    }
    return true;
  }

  // The equations close a part of the gap to their own stand in a year, as a share of it: one
  // so far above them, in practice a stand of few years, would grow without end.
  bool density_can_be(const GrowthModel& growth) {
    constexpr double unusual_ratio = 2, impossible_ratio = 10;
    const MeasuredStand& stand = *block_.standing;
    const BasalArea usual = growth.unthinned_basal_area(stand.at, stand.trees);
    const double ratio = stand.basal_area / usual;
    if (ratio <= unusual_ratio) return true;
    if (ratio > impossible_ratio) {
      const auto rounded = [](double value) { return number_text(std::round(1e4 * value) / 1e4); };
      reading_.fault(stand_["basal_area_ft2_ac"], FaultCode::out_of_range,
                     "found " + rounded(stand.basal_area.in(square_feet_per_acre)) +
                         " square feet an acre, where the growth model gives an unthinned stand "
                         "of this age and these trees " +
                         rounded(usual.in(square_feet_per_acre)) +
                         "; at most ten times that can be grown on: is the age right? A stand of "
                         "a few years is better told as bare land about to be planted");
      return false;
    }
    reading_.questions.emplace_back(
        "The stand has more than twice the basal area that the growth model gives an unthinned "
        "stand of its age and trees: are age, trees and basal area right?");
    return true;
  }

  void grow(const GrowthModel& growth, int elapsed) {
    block_.standing =
        grown_unthinned(*block_.standing, growth, recovery_per_yr(block_.source), years(elapsed));
    const MeasuredStand& now = *block_.standing;
    const std::string why = "measured in " + std::to_string(block_.measured_in->whole()) +
                            ", grown to the present without a cut";
    const auto assume = [&](const char* pointer, double value) {
      reading_.assumed.push_back({pointer, number_text(value), why});
    };
    assume("/stand/age_yr", now.at.in(years));
    assume("/stand/tpa", now.trees.in(trees_per_acre));
    assume("/stand/basal_area_ft2_ac", now.basal_area.in(square_feet_per_acre));
    if (now.live_crown_ratio) assume("/stand/live_crown_ratio", *now.live_crown_ratio);
  }

  void assume_crown(const GrowthModel& growth) {
    constexpr int youngest_crown_yr = 8;
    const MeasuredStand& now = *block_.standing;
    if (now.live_crown_ratio || now.at < age(youngest_crown_yr)) return;
    reading_.assumed.push_back(
        {"/stand/live_crown_ratio",
         number_text(growth.live_crown_ratio(now.at, now.trees, now.basal_area)),
         "not measured: the crown equation's (Dyer & Burkhart 1987, from memory)"});
  }

  ScenarioReading& reading_;
  const Place& stand_;
  const bool source_known_;
  StandBlock& block_;
  bool measures_known_ = false;
  std::optional<Height> height_of_plots_;
};

}  // namespace

void read_standing_stand(ScenarioReading& reading, const Place& stand, bool source_known,
                         StandBlock& block) {
  StandingReader(reading, stand, source_known, block).read();
}

}  // namespace staddle
