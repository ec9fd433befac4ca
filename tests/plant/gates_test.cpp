// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/plant/gates.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "plant/plant_fixture.h"
#include "staddle/plant/compare.h"

namespace staddle::plant_tests {
namespace {

using Catch::Matchers::Contains;

std::string gate(const Land& land, const std::string& topic) {
  for (const PlantGate& one : plant_gates(land.problem())) {
    if (one.topic == topic) return one.text;
  }
  return "";
}

Land with_methods(std::vector<SiteMethod> methods) {
  Land land = coastal_land();
  land.alternatives = {way("so", 600, 250)};
  land.alternatives[0].methods = std::move(methods);
  return land;
}

SpeciesAdvice advice(const Land& land, const std::string& name) {
  const auto all = species_advice(land.problem());
  const auto found = std::ranges::find(all, name, &SpeciesAdvice::name);
  REQUIRE(found != all.end());
  return *found;
}

}  // namespace

TEST_CASE("beds without a statement on the wet ground are shut out and said so") {
  Land land = with_methods({SiteMethod::two_pass, SiteMethod::bed});
  land.alternatives.push_back(way("flat", 600, 250));
  for (const std::string blank : {"", "  "}) {
    land.site.wet_site_statement = blank;
    const PlantSolution solution = compare_establishments(land.problem());
    CHECK(solution.alternatives[0].shut);
    CHECK_FALSE(solution.alternatives[0].best);
    CHECK_FALSE(solution.alternatives[0].rank);
    CHECK_THAT(solution.alternatives[0].reason, Contains("site.wet_site_statement"));
    CHECK(solution.ranking == std::vector<std::size_t>{1});
    CHECK_THAT(gate(land, "wetland"), Contains("Left out: \"so\""));
  }
}

TEST_CASE("beds that only the practices name are shut out all the same") {
  Land land = with_methods({SiteMethod::two_pass});
  for (const std::string what : {"shear, rake and bed", "Bedding", "raised BEDS"}) {
    CAPTURE(what);
    land.alternatives[0].practices[0].what = what;
    CHECK_FALSE(shut_by(land.alternatives[0], land.site).empty());
  }
  for (const std::string what : {"seedbed burn", "bedrock survey", "planting"}) {
    CAPTURE(what);
    land.alternatives[0].practices[0].what = what;
    CHECK(shut_by(land.alternatives[0], land.site).empty());
  }
}

TEST_CASE("a statement opens the way to beds and is repeated with the caution") {
  Land land = with_methods({SiteMethod::bed});
  land.site.wet_site_statement = "no wetland, says the county";
  const PlantSolution solution = compare_establishments(land.problem());
  CHECK_FALSE(solution.alternatives[0].shut);
  CHECK(solution.alternatives[0].rank == 1u);
  CHECK_THAT(gate(land, "wetland"), Contains("no wetland, says the county") &&
                                        Contains("protected") && Contains("half of the old stand"));
}

TEST_CASE("cautions on wetlands and herbicides and fire stand in every answer") {
  const Land land = with_methods({});
  CHECK_THAT(gate(land, "wetland"), Contains("protected"));
  CHECK_THAT(gate(land, "herbicide"), Contains("licensed applicator"));
  CHECK_THAT(gate(land, "burning"), Contains("certified burners"));
  CHECK_THAT(gate(land, "planting season"), Contains("December and early March"));
}

TEST_CASE("land cut before March is sprayed the same fall and land cut later waits a year") {
  Land land = with_methods({SiteMethod::chemical});
  CHECK_THAT(gate(land, "spray window"), Contains("site.month_of_cut"));
  land.site.month_of_cut = 2;
  CHECK_THAT(gate(land, "spray window"), Contains("Cut in February") && Contains("same year"));
  land.site.month_of_cut = 3;
  CHECK_THAT(gate(land, "spray window"), Contains("Cut in March") && Contains("nearly two years") &&
                                             Contains("regeneration_delay_yr to 2"));
  land.site.month_of_cut = 9;
  CHECK_THAT(gate(land, "spray window"),
             Contains("Cut in September") && Contains("well over a year"));
  CHECK(gate(with_methods({SiteMethod::burn}), "spray window").empty());
}

TEST_CASE("a delay of two years is not asked for where it is counted already") {
  const Land land = with_methods({SiteMethod::chemical});
  PlantProblem problem = land.problem();
  problem.site.month_of_cut = 5;
  problem.regeneration_delay_yr = 2;
  for (const PlantGate& one : plant_gates(problem)) {
    CHECK_THAT(one.text, !Contains("regeneration_delay_yr"));
  }
}

TEST_CASE("a burn after spraying waits eight weeks") {
  CHECK_THAT(gate(with_methods({SiteMethod::chemical, SiteMethod::burn}), "burn after spraying"),
             Contains("eight weeks"));
  CHECK(gate(with_methods({SiteMethod::burn}), "burn after spraying").empty());
}

TEST_CASE("a young stand thinned below age four sprouts and above ten is late") {
  Land land = with_methods({});
  land.alternatives[0].planted = trees_per_acre(3000);
  const auto thinned_at = [&](int at) {
    land.alternatives[0].response.precommercial =
        PrecommercialThinning{age(at), trees_per_acre(600)};
  };
  thinned_at(3);
  CHECK_THAT(gate(land, "sprouting"), Contains("\"so\""));
  for (const int at : {4, 10}) {
    thinned_at(at);
    CHECK(gate(land, "sprouting").empty());
    CHECK(gate(land, "precommercial thinning").empty());
  }
  thinned_at(11);
  CHECK_THAT(gate(land, "precommercial thinning"), Contains("age ten"));
}

TEST_CASE("hardwoods that count twice are told") {
  Land land = upland_land();
  land.alternatives = {way("both", 600, 250, 2.0)};
  CHECK(gate(land, "hardwoods counted twice").empty());
  land.alternatives[0].response.hardwood_percent = 10;
  CHECK_THAT(gate(land, "hardwoods counted twice"), Contains("\"both\" has"));
}

TEST_CASE("deep sand asks for longleaf and turns loblolly away") {
  Land land = with_methods({});
  land.site.soil = SiteFacts::Soil::sand;
  land.site.drainage = SiteFacts::Drainage::dry;
  CHECK(advice(land, "longleaf pine").advice == "first choice");
  CHECK(advice(land, "loblolly pine").advice == "not here");
  land.site = {};
  land.site.indicator_plants = land.site.deep_sand_plants = {"turkey oak"};
  CHECK_THAT(advice(land, "longleaf pine").reasons.at(0), Contains("turkey oak"));
}

TEST_CASE("wet flatwoods ask for slash and contradicting signs for a walk") {
  Land land = with_methods({});
  land.site.indicator_plants = land.site.wet_flatwoods_plants = {"gallberry"};
  CHECK(advice(land, "slash pine").advice == "first choice");
  CHECK(advice(land, "loblolly pine").advice == "possible");
  land.site.deep_sand_plants = {"prickly pear"};
  CHECK(advice(land, "slash pine").advice == "possible");
  CHECK_THAT(advice(land, "longleaf pine").reasons.back(), Contains("contradict"));
}

TEST_CASE("dry clay may bear shortleaf and wet ground hardwoods") {
  Land land = with_methods({});
  land.site.soil = SiteFacts::Soil::clay;
  land.site.drainage = SiteFacts::Drainage::dry;
  CHECK(advice(land, "shortleaf pine").advice == "possible");
  CHECK(advice(land, "longleaf pine").advice == "possible");
  land.site.drainage = SiteFacts::Drainage::wet;
  CHECK(advice(land, "hardwoods").advice == "possible");
  CHECK(advice(land, "shortleaf pine").advice == "not here");
}

TEST_CASE("what is not known of the ground is asked for and only loblolly is priced") {
  const Land land = with_methods({});
  CHECK(advice(land, "longleaf pine").advice == "not known");
  CHECK_THAT(advice(land, "loblolly pine").reasons.back(), Contains("site.soil"));
  CHECK_THAT(advice(land, "loblolly pine").priced, Contains("built-in equations"));
  CHECK_THAT(advice(land, "slash pine").priced, Contains("yield table of your own"));
  PlantProblem tabled = land.problem();
  tabled.equations.reset();
  for (const SpeciesAdvice& one : species_advice(tabled)) {
    CHECK_THAT(one.priced, Contains("your yield table"));
  }
}

}  // namespace staddle::plant_tests
