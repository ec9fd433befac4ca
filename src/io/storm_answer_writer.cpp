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

Value worst_event(const StormAfterThinning& storm) {
  return {{"age_yr", whole_age(storm.worst_at)},
          {"peril", storm.worst_peril},
          {"usd_ac", usd_ac(storm.worst_event)}};
}

Value after_thinning(const StormAfterThinning& storm, const StormAfterThinning* after_tax) {
  Value object{{"age_yr", whole_age(storm.at)},
               {"loss_share_before", number(storm.loss_share_before)},
               {"loss_share_after", number(storm.loss_share_after)},
               {"extra_expected_loss_usd_ac", usd_ac(storm.extra_expected_loss)},
               {"perils", list(storm.perils, peril_share)},
               {"worst_event", worst_event(storm)}};
  if (after_tax == nullptr) return object;
  object["after_tax"] = {{"extra_expected_loss_usd_ac", usd_ac(after_tax->extra_expected_loss)}};
  object["worst_event"]["after_tax"] = worst_event(*after_tax);
  return object;
}

Value yearly_losses(const std::vector<StormAfterThinning>& storms) {
  return list(storms, [](const StormAfterThinning& thinning) {
    return Value{{"age_yr", whole_age(thinning.at)},
                 {"before", usd_ac(thinning.yearly_loss_before)},
                 {"after", usd_ac(thinning.yearly_loss_after)}};
  });
}

}  // namespace

Value storm_answer(const StormAnswer& storm, const RegimeContext& context,
                   const AdviceAfterTax* after_tax) {
  Value object{{"blind_plan", plan(storm.blind_plan, context)},
               {"blind_plan_loss_usd_ac", usd_ac(storm.blind_plan_loss)}};
  object["odds_ratios"] = list(storm.odds_ratios, [&](const StormAnswer::OddsRow& row) {
    return Value{{"odds_ratio", optional(row.odds_ratio, number)},
                 {"best", plan(row.best, context)},
                 {"same_advice", row.same_advice}};
  });
  object["third_instead"] = third_instead(
      storm.third_instead, context, after_tax != nullptr ? &after_tax->third_instead : nullptr);
  object["yearly_loss_usd_ac"] = yearly_losses(storm.thinnings);
  object["after_thinnings"] = Value::array();
  for (std::size_t i = 0; i < storm.thinnings.size(); ++i) {
    object["after_thinnings"].push_back(
        after_thinning(storm.thinnings[i], after_tax != nullptr ? &after_tax->storms[i] : nullptr));
  }
  if (after_tax != nullptr) {
    object["after_tax"] = {
        {"blind_plan_loss_usd_ac", json::optional(after_tax->blind_plan_loss, usd_ac)},
        {"yearly_loss_usd_ac", yearly_losses(after_tax->storms)}};
  }
  return object;
}

}  // namespace staddle::json
