// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>

#include "io/scenario_fixture.h"
#include "support/files.h"

namespace staddle {
namespace {

// The one fault of each file in scenarios/invalid.
struct ExpectedFault {
  std::string code;
  std::string place;
  std::string file;  // empty: the scenario itself
};

const std::map<std::string, ExpectedFault>& expected_faults() {
  static const std::map<std::string, ExpectedFault> expected = {
      {"acres-in-quotes.json", {"wrong type", "/acres", ""}},
      {"acres-zero.json", {"out of range", "/acres", ""}},
      {"after-harvest-of-bare-land.json", {"contradiction", "/economics/after_harvest", ""}},
      {"age-beyond-the-table.json", {"out of range", "/stand/age_yr", ""}},
      {"block-unknown.json", {"unknown key", "/remarks", ""}},
      {"comma-behind-the-last.json", {"malformed", "line 13, column 1", ""}},
      {"comment-of-another-kind.json", {"malformed", "line 4, column 3", ""}},
      {"cost-overflows.json", {"out of range", "/economics/establishment_usd_ac", ""}},
      {"crowns-on-bare-land.json", {"contradiction", "/stand/live_crown_ratio", ""}},
      {"cut-between-the-rows.json",
       {"contradiction", "/stand/yield_tables/0/thinnings/0/age_yr", ""}},
      {"cut-of-unknown-share.json",
       {"missing key", "/stand/yield_tables/0/thinnings/0/removal_fraction", ""}},
      {"empty.json", {"malformed", "", ""}},
      {"fee-and-tax-take-all.json", {"contradiction", "/economics/harvest_tax_fraction", ""}},
      {"flow-ends-before-it-begins.json", {"contradiction", "/economics/flows/0/to_age_yr", ""}},
      {"format-of-another-version.json", {"unknown name", "/format", ""}},
      {"grade-of-the-smallest.json", {"contradiction", "/products/1/grade_fraction", ""}},
      {"growth-missing.json", {"missing key", "/stand/model", ""}},
      {"growth-twice.json", {"contradiction", "/stand/yield_table", ""}},
      {"guard-misspelt.json", {"unknown key", "/decisions/guards/min_qmd", ""}},
      {"half-a-thinning.json", {"wrong type", "/decisions/max_thinnings", ""}},
      {"height-against-site-index.json", {"contradiction", "/stand/dominant_height_ft", ""}},
      {"height-of-no-site.json", {"out of range", "/stand/dominant_height_ft", ""}},
      {"key-misspelt.json", {"unknown key", "/stand/planted_tap", ""}},
      {"key-repeated.json", {"repeated key", "/stand/planted_tpa", ""}},
      {"last-thinning-in-the-future.json", {"contradiction", "/stand/last_thinning/age_yr", ""}},
      {"late-before-due.json", {"contradiction", "/ready/age_yr/due", ""}},
      {"list-at-the-top.json", {"wrong type", "", ""}},
      {"measured-in-the-future.json", {"contradiction", "/stand/measured_calendar_year", ""}},
      {"measured-when.json", {"contradiction", "/stand/measured_calendar_year", ""}},
      {"model-unknown.json", {"unknown name", "/stand/model", ""}},
      {"nested-too-deep.json", {"malformed", "line 3, column 74", ""}},
      {"peril-neither-wind-nor-ice.json", {"missing key", "/storm/perils/0/wind", ""}},
      {"peril-with-two-shares.json", {"contradiction", "/storm/perils/0/base_damage_share", ""}},
      {"peril-without-a-reference-height.json",
       {"missing key", "/storm/perils/0/reference_height_ft", ""}},
      {"peril-without-a-share.json", {"missing key", "/storm/perils/0", ""}},
      {"perils-more-than-certain.json", {"contradiction", "/storm/perils", ""}},
      {"plant-unknown.json", {"unknown name", "/site/indicator_plants/0", ""}},
      {"planting-missing.json", {"missing key", "/stand/planted_tpa", ""}},
      {"price-by-a-unit-of-no-weight.json",
       {"missing key", "/economics/stumpage_usd_per_ton/pulpwood/tons_per_unit", ""}},
      {"price-missing.json", {"missing key", "/economics/stumpage_usd_per_ton/chip_n_saw", ""}},
      {"price-negative.json", {"out of range", "/economics/stumpage_usd_per_ton/pulpwood", ""}},
      {"price-of-no-product.json", {"unknown name", "/economics/stumpage_usd_per_ton/veneer", ""}},
      {"prices-missing.json", {"missing key", "/economics/stumpage_usd_per_ton", ""}},
      {"products-beside-a-table.json", {"contradiction", "/products", ""}},
      {"products-out-of-order.json", {"contradiction", "/products/1/min_dbh_in", ""}},
      {"rate-missing.json", {"missing key", "/economics/real_discount_rate", ""}},
      {"rate-not-a-number.json", {"out of range", "/economics/real_discount_rate", ""}},
      {"rate-zero.json", {"out of range", "/economics/real_discount_rate", ""}},
      {"regime-beyond-the-table.json", {"out of range", "/regimes/0/final_harvest_age_yr", ""}},
      {"regime-named-best.json", {"contradiction", "/regimes/0/name", ""}},
      {"regime-named-twice.json", {"repeated key", "/regimes/1/name", ""}},
      {"removals-none.json", {"out of range", "/decisions/removal_fraction", ""}},
      {"removals-upside-down.json", {"contradiction", "/decisions/removal_fraction", ""}},
      {"seedlings-as-a-measured-stand.json", {"out of range", "/stand/basal_area_ft2_ac", ""}},
      {"site-index-beside-a-table.json", {"contradiction", "/stand/site_index_ft", ""}},
      {"site-index-missing.json", {"missing key", "/stand/site_index_ft", ""}},
      {"site-index-too-high.json", {"out of range", "/stand/site_index_ft", ""}},
      {"site-unknown.json", {"missing key", "/stand/site_index_ft", ""}},
      {"table-ages-fall.json", {"contradiction", "line 6, column age_yr", "table-ages-fall.csv"}},
      {"table-decimal-comma.json",
       {"wrong type", "line 4, column dominant_height_ft", "table-decimal-comma.csv"}},
      {"table-missing.json", {"unreadable", "/stand/yield_table", ""}},
      {"table-negative-tons.json",
       {"out of range", "line 5, column logs_tons_ac", "table-negative-tons.csv"}},
      {"table-too-short.json", {"out of range", "", "table-too-short.csv"}},
      {"table-without-trees.json",
       {"missing key", "line 2, column tpa", "table-without-trees.csv"}},
      {"thinning-at-the-harvest.json", {"contradiction", "/regimes/0/thinnings/0/age_yr", ""}},
      {"thinning-in-the-past.json", {"contradiction", "/regimes/0/thinnings/0/age_yr", ""}},
      {"thinning-of-unknown-weight.json", {"missing key", "/regimes/0/thinnings/0", ""}},
      {"thinning-said-in-two-ways.json",
       {"contradiction", "/regimes/0/thinnings/0/residual_tpa", ""}},
      {"thinnings-out-of-order.json", {"contradiction", "/regimes/0/thinnings/1/age_yr", ""}},
      {"title-blank.json", {"out of range", "/title", ""}},
      {"title-missing.json", {"missing key", "/title", ""}},
      {"tops-rise.json", {"contradiction", "/products/1/top_in", ""}},
      {"trees-missing.json", {"missing key", "/stand/tpa", ""}},
      {"truncated.json", {"malformed", "line 10, column 29", ""}},
      {"ways-beds-without-a-statement.json", {"contradiction", "/establishment/use", ""}},
      {"ways-hardwoods-on-the-coast.json",
       {"contradiction", "/establishment/alternatives/0/hardwood_percent", ""}},
      {"ways-of-no-such-id.json", {"unknown name", "/establishment/alternatives/0/from", ""}},
      {"ways-thinned-young-too-late.json",
       {"contradiction", "/establishment/alternatives/0/precommercial_thinning/age_yr", ""}},
      {"ways-use-of-no-way.json", {"unknown name", "/establishment/use", ""}},
      {"window-beyond-the-table.json", {"out of range", "/decisions/final_harvest_age_yr/1", ""}},
      {"window-upside-down.json", {"contradiction", "/decisions/final_harvest_age_yr", ""}},
      {"zone-beside-perils.json", {"contradiction", "/storm/perils", ""}},
      {"zone-unknown.json", {"unknown name", "/storm/zone", ""}},
  };
  return expected;
}

Result<std::string> load_invalid(const std::string& name) {
  const std::string path = support::in_source_tree("scenarios/invalid/" + name);
  const auto files = support::files_in_source_tree("scenarios/invalid", ".csv");
  if (std::find(files.begin(), files.end(), name) == files.end()) {
    return Faults{{FaultCode::unreadable, name, "", "there is no such file", ""}};
  }
  return support::read_file(path);
}

TEST_CASE("every file of scenarios/invalid has the one fault that it was written for") {
  const auto files = support::files_in_source_tree("scenarios/invalid", ".json");
  REQUIRE(files.size() == expected_faults().size());
  for (const std::string& name : files) {
    CAPTURE(name);
    REQUIRE(expected_faults().count(name) == 1);
    const ExpectedFault& expected = expected_faults().at(name);
    const auto result =
        read_scenario(support::read_file(support::in_source_tree("scenarios/invalid/" + name)),
                      name, load_invalid);
    REQUIRE_FALSE(result.has_value());
    REQUIRE(result.error().size() == 1);
    const Fault& fault = result.error().front();
    CHECK(scenario_tests::name_of(fault.code) == expected.code);
    CHECK(fault.place == expected.place);
    CHECK(fault.file == (expected.file.empty() ? name : expected.file));
    CHECK_FALSE(fault.text.empty());
  }
}

}  // namespace
}  // namespace staddle
