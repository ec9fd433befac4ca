// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/signs/readiness.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "signs/stand_by_hand.h"
#include "staddle/base/contract.h"
#include "support/near.h"

namespace staddle {
namespace {

using by_hand::measures;
using by_hand::year;

// A stand that reaches 40 ft at 13, 6 in at 14 and 120 ft2 at 15.
std::vector<YearRecord> growing_from(int first_yr, int last_yr = 25) {
  std::vector<YearRecord> years;
  for (int at = first_yr; at <= last_yr; ++at) {
    years.push_back(year(at, measures(600, 8.0 * at, 6.0 / 14 * at, 40.0 / 13 * at,
                                      0.80 - 0.025 * at)));
  }
  return years;
}

const SignReading& sign(const Readiness& readiness, const std::string& name) {
  const auto found = std::ranges::find(readiness.signs, name, &SignReading::sign);
  REQUIRE(found != readiness.signs.end());
  return *found;
}

Readiness judge(const YearRecord& now) {
  return judge_readiness({now}, default_ready_limits(), std::nullopt, 5);
}

SignVerdict verdict(const std::string& name, const StandMeasures& stand, int age_yr = 15) {
  return sign(judge(year(age_yr, stand)), name).verdict;
}

TEST_CASE("each sign is due and late from its limit on") {
  const auto height = [](double value) {
    return verdict("dominant_height_ft", measures(500, 100, 6, value));
  };
  CHECK(height(39.99) == SignVerdict::not_yet);
  CHECK(height(40) == SignVerdict::due);
  CHECK(height(59.99) == SignVerdict::due);
  CHECK(height(60) == SignVerdict::late);

  const auto basal_area = [](double value) {
    return verdict("basal_area_ft2_ac", measures(500, value, 6, 45));
  };
  CHECK(basal_area(119.99) == SignVerdict::not_yet);
  CHECK(basal_area(120) == SignVerdict::due);
  CHECK(basal_area(160) == SignVerdict::late);

  const auto diameter = [](double value) {
    return verdict("qmd_in", measures(500, 100, value, 45));
  };
  CHECK(diameter(5.99) == SignVerdict::not_yet);
  CHECK(diameter(6) == SignVerdict::due);
  CHECK(diameter(20) == SignVerdict::due);

  CHECK(verdict("age_yr", measures(500, 100, 6, 45), 11) == SignVerdict::not_yet);
  CHECK(verdict("age_yr", measures(500, 100, 6, 45), 12) == SignVerdict::due);
  CHECK(verdict("age_yr", measures(500, 100, 6, 45), 18) == SignVerdict::late);
}

TEST_CASE("crowns are due at forty percent and late only below thirty") {
  const auto crown = [](double value) {
    return verdict("live_crown_ratio", measures(500, 100, 6, 45, value));
  };
  CHECK(crown(0.41) == SignVerdict::not_yet);
  CHECK(crown(0.40) == SignVerdict::due);
  CHECK(crown(0.30) == SignVerdict::due);
  CHECK(crown(0.299) == SignVerdict::late);
}

TEST_CASE("crowding signs follow the stand density index and the spacing") {
  // 450 trees of 10 inches are the most crowded stand there is.
  CHECK(*sign(judge(year(20, measures(450, 245, 10, 60))), "density_index_share").value ==
        support::relative(1.0, 1e-12));
  // 43560 / 435.6 = 100 square feet a tree, 10 feet apart.
  const auto spacing = [](double height_ft) {
    return verdict("relative_spacing", measures(435.6, 100, 6, height_ft));
  };
  CHECK(spacing(49) == SignVerdict::not_yet);
  CHECK(spacing(50) == SignVerdict::due);
  CHECK(spacing(10 / 0.15) == SignVerdict::late);
}

TEST_CASE("a thinning is due when height and diameter and basal area all are") {
  CHECK(judge(year(15, measures(500, 120, 6, 40))).judgement == SignVerdict::due);
  CHECK(judge(year(15, measures(500, 170, 9, 70))).judgement == SignVerdict::due);
  CHECK(judge(year(15, measures(500, 119, 6, 40))).judgement == SignVerdict::not_yet);
  CHECK(judge(year(15, measures(500, 120, 5.9, 40))).judgement == SignVerdict::not_yet);
  CHECK(judge(year(15, measures(500, 120, 6, 39))).judgement == SignVerdict::not_yet);
}

TEST_CASE("late crowns decide before all but a thinning just done") {
  const YearRecord now = year(20, measures(300, 80, 5, 38, 0.25));
  CHECK(judge(now).judgement == SignVerdict::late);
  const auto after_thinning = [&](int years_ago) {
    return judge_readiness({now}, default_ready_limits(), age(20 - years_ago), 5);
  };
  CHECK(after_thinning(4).judgement == SignVerdict::not_yet);
  CHECK(after_thinning(4).too_soon_after_thinning);
  CHECK(after_thinning(5).judgement == SignVerdict::late);
  CHECK_FALSE(after_thinning(5).too_soon_after_thinning);
}

TEST_CASE("a stand that is not ready is told the year of its last sign") {
  const Readiness young =
      judge_readiness(growing_from(10), default_ready_limits(), std::nullopt, 5);
  CHECK(young.judgement == SignVerdict::not_yet);
  CHECK(young.due_at_age_yr == 15);
  CHECK(sign(young, "dominant_height_ft").about_age_yr == 13);
  CHECK(sign(young, "qmd_in").about_age_yr == 14);
  CHECK(sign(young, "basal_area_ft2_ac").about_age_yr == 15);
  CHECK(sign(young, "live_crown_ratio").about_age_yr == 16);
  const Readiness soon =
      judge_readiness(growing_from(14), default_ready_limits(), std::nullopt, 5);
  CHECK(soon.due_at_age_yr == 15);
  CHECK_FALSE(sign(soon, "qmd_in").about_age_yr.has_value());
  CHECK(judge_readiness(growing_from(15), default_ready_limits(), std::nullopt, 5).judgement ==
        SignVerdict::due);
}

TEST_CASE("years between entries put off the year of the last sign") {
  const Readiness thinned =
      judge_readiness(growing_from(16), default_ready_limits(), age(14), 5);
  CHECK(thinned.judgement == SignVerdict::not_yet);
  CHECK(thinned.due_at_age_yr == 19);
}

TEST_CASE("a sign that never comes due gives no year") {
  const Readiness never =
      judge_readiness(growing_from(10, 14), default_ready_limits(), std::nullopt, 5);
  CHECK_FALSE(never.due_at_age_yr.has_value());
  CHECK_FALSE(sign(never, "basal_area_ft2_ac").about_age_yr.has_value());
}

TEST_CASE("what cannot be told of a seedling has no value and is not due") {
  const Readiness planted = judge(year(0, measures(600, 0, 0, 0)));
  CHECK_FALSE(sign(planted, "live_crown_ratio").value.has_value());
  CHECK_FALSE(sign(planted, "relative_spacing").value.has_value());
  CHECK(sign(planted, "relative_spacing").verdict == SignVerdict::not_yet);
}

TEST_CASE("crown cover is shown only where crowns were measured") {
  const std::vector<YearRecord> now = {year(15, measures(500, 100, 6, 40))};
  const auto shown = [&](std::optional<double> cover) {
    return judge_readiness(now, default_ready_limits(), std::nullopt, 5, cover).signs.size();
  };
  CHECK(shown(std::nullopt) == 7);
  CHECK(shown(1.0) == 8);
}

TEST_CASE("limits of the owner take the place of the common ones") {
  ReadyLimits limits = default_ready_limits();
  for (SignLimit& limit : limits) {
    if (limit.sign == "basal_area_ft2_ac") limit.due = 100;
  }
  const std::vector<YearRecord> now = {year(15, measures(500, 100, 6, 40))};
  CHECK(judge_readiness(now, limits, std::nullopt, 5).judgement == SignVerdict::due);
  limits.erase(limits.begin() + 1);
  CHECK_THROWS_AS(judge_readiness(now, limits, std::nullopt, 5), ContractViolation);
}

}  // namespace
}  // namespace staddle
