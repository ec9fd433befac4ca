// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <clocale>
#include <locale>

#include "io/scenario_fixture.h"
#include "support/files.h"
#include "support/near.h"

namespace staddle {
namespace {

using scenario_tests::bare_land;
using scenario_tests::everything_given;
using scenario_tests::faults_at;
using scenario_tests::faults_of;
using scenario_tests::Json;
using scenario_tests::on_tabled_regimes;
using scenario_tests::on_yield_table;
using scenario_tests::read;
using scenario_tests::standing_stand;
using scenario_tests::with;
using scenario_tests::without;
using Lines = std::vector<std::string>;

TEST_CASE("a scenario in which every key is given is read as it stands") {
  const auto result = read(everything_given());
  CHECK(faults_of(result) == Lines{});
  REQUIRE(result);
  const Scenario& s = *result;
  CHECK(s.title == "everything");
  CHECK(s.purpose == "to name every key");
  CHECK(s.owner == "an owner");
  CHECK(s.prepared_by == "a forester");
  CHECK(s.area == acres(62));
  CHECK(s.present_year == calendar_year(2027));
  CHECK(std::get<EquationSet>(s.stand.source).id == "loblolly-planted-upland");
  CHECK(s.stand.site_index == feet(70));
  CHECK(s.stand.planted == trees_per_acre(600));
  CHECK(s.stand.dominant_height == feet(48.7));
  CHECK(s.stand.measured_in == calendar_year(2025));
  REQUIRE(s.is_standing());
  CHECK(s.stand.standing->at == age(17));
  CHECK(s.stand.standing->last_thinning->at == age(12));
  CHECK(s.stand.standing->last_thinning->removal_fraction == 0.33);
  REQUIRE(s.products.size() == 2);
  CHECK(s.products[0].name == "sawtimber");
  CHECK(s.products[0].min_dbh == inches(11.5));
  CHECK(s.products[0].top == inches(8));
  CHECK(s.products[0].grade_fraction == 0.8);
  CHECK(s.products[1].grade_fraction == 1.0);
  CHECK(s.thinning_price_given);
  CHECK(s.after_harvest.kind == AfterHarvest::Kind::best);
  CHECK(s.thinning_response == ThinningResponse::as_published);
  CHECK(s.cut_diameter_ratios == std::vector<double>{1.0, 0.9});
  CHECK(s.hazard.zone == "own");
  CHECK(s.hazard.species == Species::slash);
  CHECK(s.hazard.recovery_yr == 6);
  CHECK(s.site.deep_sand());
  CHECK(s.site.indicator_plants == Lines{"prickly pear"});
  CHECK(s.site.month_of_cut == 3);
  CHECK(s.site.wet_site_statement == "no wet ground");
}

TEST_CASE("money and costs are read as they stand") {
  const Scenario s = *read(everything_given());
  CHECK(s.costs.rate == DiscountRate::real(0.05));
  CHECK(s.costs.establishment == dollars_per_acre(350));
  CHECK(s.costs.sale_fee_fraction == 0.08);
  CHECK(s.costs.harvest_tax_fraction == 0.02);
  CHECK(s.costs.thinning_sale_cost == dollars_per_acre(10));
  CHECK(s.costs.final_sale_cost == dollars_per_acre(20));
  CHECK(s.costs.regeneration_delay_yr == 2);
  CHECK(s.costs.annual_cost == dollars_per_acre(6));
  CHECK(s.costs.annual_income == dollars_per_acre(9));
  REQUIRE(s.costs.practices.size() == 1);
  CHECK(s.costs.practices[0].what == "release spray");
  CHECK(s.costs.practices[0].at == age(2));
  CHECK(s.costs.practices[0].cost == dollars_per_acre(65));
  REQUIRE(s.costs.flows.size() == 2);
  CHECK(s.costs.flows[0].until == DatedFlow::Until::age);
  CHECK(s.costs.flows[0].from == age(9));
  CHECK(s.costs.flows[0].to == age(15));
  CHECK(s.costs.flows[0].per_year == dollars_per_acre(60));
  CHECK(s.costs.flows[1].until == DatedFlow::Until::final_harvest);
  const auto first =
      read(with(everything_given(), "/economics/flows/1/to_age_yr", "first_thinning"));
  CHECK(first->costs.flows[1].until == DatedFlow::Until::first_thinning);
}

TEST_CASE("prices stand in the order of the products and keep the unit they were quoted in") {
  const Scenario s = *read(everything_given());
  REQUIRE(s.prices.size() == 2);
  CHECK(s.prices[0].stumpage == dollars_per_ton(25));
  CHECK(s.prices[0].quoted.tons_per_unit == 0);
  CHECK(s.prices[0].thinning_factor == 0.8);
  CHECK(s.prices[0].thinning_discount == dollars_per_ton(2));
  CHECK(s.prices[1].stumpage == dollars_per_ton(19 / 2.675));
  CHECK(s.prices[1].quoted.usd_per_unit == 19);
  CHECK(s.prices[1].quoted.tons_per_unit == 2.675);
  CHECK(s.prices[1].thinning_factor == 0.9);
  CHECK(s.prices[1].thinning_discount == dollars_per_ton(1));
}

TEST_CASE("decisions and guards are read as they stand") {
  const DecisionLattice l = read(everything_given())->lattice;
  CHECK(l.max_thinnings == 3);
  CHECK(l.thinning_from == age(14));
  CHECK(l.thinning_to == age(30));
  CHECK(l.removal_fractions == std::vector<double>{0.2, 0.2 + 0.1, 0.2 + 2 * 0.1});
  CHECK(l.years_between_entries == 6);
  CHECK(l.final_from == age(22));
  CHECK(l.final_to == age(50));
  CHECK(l.min_removal == tons_per_acre(10));
  CHECK(l.min_sale == tons(300));
  CHECK(l.min_residual_basal_area == square_feet_per_acre(50));
  CHECK(l.guards.max_removal_fraction == 0.4);
  CHECK(l.guards.dense_stand_now->basal_area == square_feet_per_acre(150));
  CHECK(l.guards.dense_stand_now->max_removal_fraction == 0.45);
  CHECK(l.guards.min_residual_basal_area == square_feet_per_acre(65));
  CHECK(l.guards.min_height == feet(42));
  CHECK(l.guards.min_qmd == inches(6.5));
  CHECK(l.guards.min_live_crown_ratio == 0.32);
}

TEST_CASE("a null switches one guard off and leaves the others and null for guards all of them") {
  const Guards one =
      read(with(bare_land(), "/decisions/guards/min_qmd_in", nullptr))->lattice.guards;
  CHECK_FALSE(one.min_qmd);
  CHECK(one.min_height == feet(40));
  CHECK(one.dense_stand_now);
  const Guards no_dense =
      read(with(bare_land(), "/decisions/guards/dense_stand_now", nullptr))->lattice.guards;
  CHECK_FALSE(no_dense.dense_stand_now);
  CHECK(no_dense.max_removal_fraction == 1.0 / 3);
  const Guards none = read(with(bare_land(), "/decisions/guards", nullptr))->lattice.guards;
  CHECK_FALSE(none.max_removal_fraction);
  CHECK_FALSE(none.dense_stand_now);
  CHECK_FALSE(none.min_residual_basal_area);
  CHECK_FALSE(none.min_height);
  CHECK_FALSE(none.min_qmd);
  CHECK_FALSE(none.min_live_crown_ratio);
}

TEST_CASE("removal fractions are sorted and each stands once") {
  const auto listed = read(with(bare_land(), "/decisions/removal_fraction", {0.4, 0.2, 0.4, 0.3}));
  CHECK(listed->lattice.removal_fractions == std::vector<double>{0.2, 0.3, 0.4});
}

TEST_CASE("the last step of a range is taken although its sum is rounded up") {
  const auto stepped = read(with(bare_land(), "/decisions/removal_fraction",
                                 {{"from", 0.2}, {"to", 0.5}, {"step", 0.05}}));
  CHECK(stepped->lattice.removal_fractions.size() == 7);
  CHECK(stepped->lattice.removal_fractions.back() == 0.2 + 6 * 0.05);
  const auto short_of = read(with(bare_land(), "/decisions/removal_fraction",
                                  {{"from", 0.2}, {"to", 0.4999}, {"step", 0.05}}));
  CHECK(short_of->lattice.removal_fractions.size() == 6);
}

TEST_CASE("own perils are read with a constant share or one that depends on the stand") {
  const Hazard hazard = read(everything_given())->hazard;
  REQUIRE(hazard.perils.size() == 2);
  CHECK(hazard.perils[0].name == "total loss");
  CHECK(hazard.perils[0].annual_probability == 0.01);
  CHECK_FALSE(hazard.perils[0].logistic);
  CHECK(hazard.perils[0].constant_share == 1.0);
  CHECK(hazard.perils[0].salvage_share == 0.25);
  CHECK(hazard.perils[0].cleanup == dollars_per_acre(500));
  REQUIRE(hazard.perils[1].logistic);
  CHECK(hazard.perils[1].logistic->base_damage_share == 0.3);
  CHECK(hazard.perils[1].logistic->reference_height == feet(65));
  CHECK(hazard.perils[1].logistic->height_slope_per_10ft == 0.4);
  CHECK(hazard.perils[1].logistic->slenderness_slope_per_10 == 0.2);
  CHECK(hazard.perils[1].logistic->thinning_odds_ratio == 3);
  CHECK(hazard.perils[1].logistic->wind);
  CHECK(hazard.perils[1].logistic->species_log_odds == -0.4);  // slash, wind
  CHECK_FALSE(hazard.perils[0].hurricane);
  const auto ice = read(with(everything_given(), "/storm/perils/1/wind", false));
  CHECK(ice->hazard.perils[1].logistic->species_log_odds == 0.5);  // slash, ice
}

TEST_CASE("an own peril without height slope needs no reference height") {
  Json scenario = with(bare_land(), "/storm/perils",
                       Json::parse(R"([{"name": "wind", "annual_probability": 0.02,
                                        "base_damage_share": 0.3, "wind": true}])"));
  const auto result = read(scenario);
  REQUIRE(result);
  const Peril& peril = result->hazard.perils.at(0);
  CHECK(peril.logistic->height_slope_per_10ft == 0);
  CHECK(peril.logistic->slenderness_slope_per_10 == 0);
  CHECK(peril.logistic->thinning_odds_ratio == 1);
  CHECK(peril.salvage_share == 0);
  CHECK(peril.cleanup == MoneyPerAcre());
  CHECK(result->hazard.recovery_yr == 5);
}

TEST_CASE("a zone brings its perils and the species acts on them by wind and ice") {
  Json scenario = with(bare_land(), "/storm", {{"zone", "inland"}, {"species", "longleaf"}});
  const Hazard hazard = read(scenario)->hazard;
  CHECK(hazard.zone == "inland");
  CHECK(hazard.recovery_yr == 5);
  REQUIRE(hazard.perils.size() == 4);
  CHECK(hazard.perils[0].logistic->species_log_odds == -0.8);
  CHECK(hazard.perils[3].logistic->species_log_odds == 0.3);
  CHECK_FALSE(read(bare_land())->hazard.active());
  CHECK(read(bare_land())->hazard.zone == "none");
}

TEST_CASE("stated regimes keep the way in which a thinning was stated") {
  const auto regimes = read(everything_given())->regimes;
  REQUIRE(regimes.size() == 2);
  CHECK(regimes[0].name == "no thinning");
  CHECK(regimes[0].thinnings.empty());
  CHECK(regimes[0].final_harvest == age(30));
  REQUIRE(regimes[1].thinnings.size() == 3);
  CHECK(regimes[1].thinnings[0].by == StatedThinning::By::removal_fraction);
  CHECK(regimes[1].thinnings[0].removal_fraction == 0.3);
  CHECK(regimes[1].thinnings[1].by == StatedThinning::By::residual_basal_area);
  CHECK(regimes[1].thinnings[1].residual_basal_area == square_feet_per_acre(75));
  CHECK(regimes[1].thinnings[2].by == StatedThinning::By::residual_trees);
  CHECK(regimes[1].thinnings[2].residual_trees == trees_per_acre(100));
  CHECK(regimes[1].thinnings[2].at == age(30));
}

TEST_CASE("the limits of readiness signs are set one by one") {
  const ReadyLimits given = read(everything_given())->ready_limits;
  for (const SignLimit& limit : given) {
    const Json sign = everything_given()["ready"][limit.sign];
    CAPTURE(limit.sign);
    CHECK(limit.due == sign["due"].get<double>());
    CHECK(limit.late == sign["late"].get<double>());
  }
  const auto one = read(with(bare_land(), "/ready/age_yr/due", 14));
  const ReadyLimits standard = default_ready_limits();
  REQUIRE(one->ready_limits.size() == standard.size());
  for (std::size_t i = 0; i < standard.size(); ++i) {
    const bool changed = standard[i].sign == "age_yr";
    CHECK(one->ready_limits[i].due == (changed ? 14 : standard[i].due));
    CHECK(one->ready_limits[i].late == standard[i].late);
  }
}

TEST_CASE("a yield table brings growth and products with it") {
  const auto result = read(on_yield_table());
  CHECK(faults_of(result) == Lines{});
  const auto& table = std::get<YieldTable>(result->stand.source);
  CHECK(table.file == "table.csv");
  CHECK(table.age_yr == std::vector<int>{10, 15, 20, 25, 30, 40});
  CHECK(table.options.recovery_per_yr == 0.09);
  CHECK(table.options.density_exponent == 0.45);
  REQUIRE(result->products.size() == 2);
  CHECK(result->products[0].name == "logs");
  CHECK(result->prices[0].stumpage == dollars_per_ton(20));
  const auto options =
      read(with(on_yield_table(), "/stand/yield_table_options", {{"recovery_per_yr", 0.05}}));
  CHECK(std::get<YieldTable>(options->stand.source).options.recovery_per_yr == 0.05);
  CHECK(std::get<YieldTable>(options->stand.source).options.density_exponent == 0.45);
}

TEST_CASE("tables of several fixed regimes are read with what their cuts yield") {
  const auto result = read(on_tabled_regimes());
  CHECK(faults_of(result) == Lines{});
  const auto& regimes = std::get<std::vector<TabledRegime>>(result->stand.source);
  REQUIRE(regimes.size() == 2);
  CHECK(regimes[0].name == "unthinned");
  CHECK(regimes[0].thinnings.empty());
  CHECK(regimes[1].table.file == "thinned.csv");
  REQUIRE(regimes[1].thinnings.size() == 1);
  CHECK(regimes[1].thinnings[0].age_yr == 20);
  CHECK(regimes[1].thinnings[0].tons_ac == std::vector<double>{3, 22});
  CHECK(regimes[1].thinnings[0].removal_fraction == 0.3);
  const auto unsaid =
      read(without(on_tabled_regimes(), "/stand/yield_tables/1/thinnings/0/removal_fraction"));
  const auto& without_removal = std::get<std::vector<TabledRegime>>(unsaid->stand.source);
  CHECK(without_removal[1].thinnings[0].removal_fraction < 0);
}

TEST_CASE("after_harvest takes a land price and then nothing need be planted") {
  Json scenario = with(standing_stand(), "/economics/after_harvest", 1200);
  const auto priced = read(scenario);
  CHECK(priced->after_harvest.kind == AfterHarvest::Kind::land_price);
  CHECK(priced->after_harvest.land_price == dollars_per_acre(1200));
  const auto unplanted = read(without(scenario, "/stand/planted_tpa"));
  CHECK(faults_of(unplanted) == Lines{});
  CHECK_FALSE(unplanted->stand.planted);
  CHECK(faults_of(read(without(standing_stand(), "/stand/planted_tpa"))) ==
        Lines{"missing key at /stand/planted_tpa"});
}

TEST_CASE("the 60 reference scenarios are read without a fault") {
  const Json cases = Json::parse(support::read_file(
      support::in_source_tree("tests/published/data/reference_regimes.json")))["cases"];
  REQUIRE(cases.size() == 60);
  for (const Json& one : cases) {
    CAPTURE(one["scenario"]["title"]);
    CHECK(faults_of(read(one["scenario"])) == Lines{});
  }
}

// A locale whose decimal point is a comma, for streams; the C locale is changed too
// where the machine has such a one.
struct CommaPoint : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

TEST_CASE("reading and its words do not depend on the locale") {
  const Json odd = with(bare_land(), "/acres", -1234567.25);
  const auto plain = read(everything_given());
  const std::string plain_words = to_line(read(odd).error().at(0));
  const std::locale before = std::locale::global(std::locale(std::locale(), new CommaPoint));
  for (const char* name : {"de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8"}) {
    if (std::setlocale(LC_ALL, name)) break;
  }
  const auto foreign = read(everything_given());
  const std::string foreign_words = to_line(read(odd).error().at(0));
  const auto table = read(on_yield_table());
  std::setlocale(LC_ALL, "C");
  std::locale::global(before);
  REQUIRE(foreign);
  CHECK(foreign->costs.rate == plain->costs.rate);
  CHECK(foreign->prices[1].quoted.tons_per_unit == 2.675);
  CHECK(foreign_words == plain_words);
  CHECK(foreign_words.find("-1234567.25") != std::string::npos);
  CHECK(table);
  for (std::size_t i = 0; i < plain->assumed.size(); ++i) {
    CHECK(foreign->assumed[i].value_json == plain->assumed[i].value_json);
  }
}

}  // namespace
}  // namespace staddle
