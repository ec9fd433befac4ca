// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "staddle/regime/simulate.h"
#include "staddle/signs/site.h"

namespace staddle {

enum class RiskLevel { low, elevated, high };

// One thing that could go wrong with a plan. `figures` are the numbers that the text
// leans on, unrounded, by name with the unit in the name, in the order of the text.
struct RiskNote {
  std::string topic;
  RiskLevel level = RiskLevel::low;
  std::string text;   // whole sentences, for a landowner
  std::vector<std::pair<std::string, double>> figures;
  // Those that are money, after tax; empty where tax is not asked for.
  std::vector<std::pair<std::string, double>> figures_after_tax = {};
};

// What the notes need besides the plan itself; what takes a solve comes as a number.
struct RiskFacts {
  const StandCase* stand_case = nullptr;
  const RegimeReport* plan = nullptr;
  SiteFacts site;
  std::optional<MoneyPerAcre> successor_lev;   // standing: LEV*; bare: the plan's own LEV
  // Where some cut exceeds a third: the best plan whose cuts all keep to a third, what
  // it costs, and the expected storm loss it saves.
  std::optional<Regime> plan_of_thirds;
  std::optional<MoneyPerAcre> cost_of_a_third;
  std::optional<MoneyPerAcre> loss_saved_by_a_third;
  // With a hazard: what the best plan is worth when every peril's odds ratio is this one,
  // and whether the advice is the same then. Absent ratio: the hazard's own.
  struct OddsOutcome {
    std::optional<double> odds_ratio;
    MoneyPerAcre best_value;
    bool same_advice = true;
  };
  std::vector<OddsOutcome> odds_range;
  // The same facts with all money after tax, of a case without a basis; may be absent.
  const RiskFacts* after_tax = nullptr;
};

// The notes of a plan, gravest first, ties in the fixed order of the topics: storm,
// heavy removal, tall or slender stand, crowns, bark beetle, root disease, long
// rotation, density, land value. The storm note is always there; its level goes by
// points of the worst thinning: more than a third removed one; dominant height above
// 60 ft one; slenderness above 95 one, above 105 two; a zone whose hurricanes come with
// more than 2 percent a year one. Low up to 1, elevated up to 3, high above.
// REQUIRES: stand_case and plan.
std::vector<RiskNote> risk_notes(const RiskFacts& facts);

// The storms of the years after one thinning. D is the share of the acres that a peril
// destroys, s its salvage share, K its clean-up, V the standing timber's worth.
struct StormAfterThinning {
  Age at;
  double loss_share_before = 0.0;    // expected share lost in the year that ends at it
  double loss_share_after = 0.0;     // and in the first year after it
  MoneyPerAcre yearly_loss_before, yearly_loss_after;  // sum of p D ((1-s)V + K)
  // Over five years or up to the next entry, discounted to the thinning: the expected
  // loss that the cuts add, against the same stand with the odds term off (its
  // slenderness before the cut kept).
  MoneyPerAcre extra_expected_loss;
  struct PerilShare {
    std::string peril;
    double annual_probability = 0.0;
    double share_with = 0.0, share_without = 0.0;  // first year after; odds term on, off
  };
  std::vector<PerilShare> perils;
  // The largest D((1-s)V + K) of the five years over perils that can strike.
  MoneyPerAcre worst_event;
  std::string worst_peril;
  Age worst_at;
};

// One entry per thinning of the plan that cuts something; empty without a hazard.
// REQUIRES: a case without a tax basis, which the acres lost would leave to the others.
std::vector<StormAfterThinning> storms_after_thinnings(const StandCase& stand_case,
                                                       const RegimeReport& plan);

}  // namespace staddle
