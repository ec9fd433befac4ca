// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/storm_answer_writer.h"

namespace staddle::json {
namespace {

Value peril_share(const StormAfterThinning::PerilShare& share) {
  return {{"peril", share.peril},
          {"annual_probability", number(share.annual_probability)},
          {"share_with_thinning", number(share.share_with)},
          {"share_without_thinning", number(share.share_without)}};
}

Value after_thinning(const StormAfterThinning& storm) {
  return {{"age_yr", whole_age(storm.at)},
          {"loss_share_before", number(storm.loss_share_before)},
          {"loss_share_after", number(storm.loss_share_after)},
          {"extra_expected_loss_usd_ac", usd_ac(storm.extra_expected_loss)},
          {"perils", list(storm.perils, peril_share)},
          {"worst_event",
           {{"age_yr", whole_age(storm.worst_at)},
            {"peril", storm.worst_peril},
            {"usd_ac", usd_ac(storm.worst_event)}}}};
}

}  // namespace

Value storm_answer(const StormAnswer& storm, const RegimeContext& context) {
  Value object{{"blind_plan", plan(storm.blind_plan, context)},
               {"blind_plan_loss_usd_ac", usd_ac(storm.blind_plan_loss)}};
  object["odds_ratios"] = list(storm.odds_ratios, [&](const StormAnswer::OddsRow& row) {
    return Value{{"odds_ratio", optional(row.odds_ratio, number)},
                 {"best", plan(row.best, context)},
                 {"same_advice", row.same_advice}};
  });
  object["third_instead"] = third_instead(storm.third_instead, context);
  object["yearly_loss_usd_ac"] = list(storm.thinnings, [](const StormAfterThinning& thinning) {
    return Value{{"age_yr", whole_age(thinning.at)},
                 {"before", usd_ac(thinning.yearly_loss_before)},
                 {"after", usd_ac(thinning.yearly_loss_after)}};
  });
  object["after_thinnings"] = list(storm.thinnings, after_thinning);
  return object;
}

}  // namespace staddle::json
