// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "cli/run_here.h"

namespace staddle {
namespace {

using Json = nlohmann::ordered_json;

// The answer to a stand left too long, in one line of text.
std::string advice_on(double acres) {
  Json scenario = Json::parse(support::standing_stand());
  scenario["acres"] = acres;
  scenario["stand"]["age_yr"] = 28;
  scenario["stand"]["tpa"] = 420;
  scenario["stand"]["basal_area_ft2_ac"] = 168;
  scenario["stand"]["live_crown_ratio"] = 0.25;
  const support::Run run = support::run_staddle({"advise", "-"}, scenario.dump());
  INFO(run.err);
  REQUIRE(run.exit_code == 0);
  std::string text;
  for (const char c : run.out) {
    const bool blank = c == ' ' || c == '\n';
    if (!blank || text.empty() || text.back() != ' ') text += blank ? ' ' : c;
  }
  return text;
}

TEST_CASE("the offer to refuse is a sum of money however small the tract") {
  for (const double acres : {40.0, 1.0, 0.01}) {
    CAPTURE(acres);
    const std::string text = advice_on(acres);
    const std::size_t at = text.find("refuse any offer below $");
    REQUIRE(at != std::string::npos);
    CHECK((text.substr(at, 60).find(" in all ($") != std::string::npos) == (acres >= 1.0));
    CHECK(text.find("refuse any offer below less") == std::string::npos);
  }
}

TEST_CASE("small things are counted in the singular and small tracts keep their digits") {
  CHECK(advice_on(1).find("1 acre of loblolly pine") != std::string::npos);
  CHECK(advice_on(0.01).find("0.01 acres of loblolly pine") != std::string::npos);
}

TEST_CASE("the answer says in words what is assumed of the recovery after a thinning") {
  CHECK(advice_on(40).find("fill its room again only as far as its live crowns allow") !=
        std::string::npos);
}

}  // namespace
}  // namespace staddle
