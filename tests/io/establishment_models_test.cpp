// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "io/model_readers.h"
#include "staddle/io/model_library.h"
#include "support/files.h"
#include "support/near.h"

namespace staddle {
namespace {

using Json = nlohmann::ordered_json;

Json establishment_file(const std::string& name) {
  return Json::parse(support::read_file(support::in_source_tree("models/establishment/" + name)));
}

const EstablishmentRecipe& recipe(const std::string& id) {
  const auto& all = built_in_establishments();
  const auto found = std::ranges::find(all, id, &EstablishmentRecipe::id);
  REQUIRE(found != all.end());
  return *found;
}

EstablishmentCosts costs() {
  return read_establishment_costs(establishment_file("costs.json").dump(), "c.json").value();
}
EstablishmentResponses responses() {
  return read_establishment_responses(establishment_file("responses.json").dump(), "r.json")
      .value();
}
Result<std::vector<EstablishmentRecipe>> recipes(const Json& file) {
  return read_establishment_recipes(file.dump(), "a.json", costs(), responses());
}

std::string place_of_fault(const Result<std::vector<EstablishmentRecipe>>& result) {
  return result ? "" : result.error().front().place;
}

}  // namespace

TEST_CASE("every number of the ways to start a stand is marked and has a source") {
  const Json costs = establishment_file("costs.json"),
             responses = establishment_file("responses.json");
  const Json alternatives = establishment_file("alternatives.json");
  std::vector<Json> marked{responses["most_years_together"], responses["increments"]};
  for (const Json& one : costs["costs"]) marked.push_back(one);
  for (const Json& one : responses["responses"]) marked.push_back(one);
  for (const Json& one : responses["studies"]) marked.push_back(one);
  for (const Json& one : alternatives["alternatives"]) {
    marked.push_back(one["density"]);
    if (one.contains("precommercial_thinning")) marked.push_back(one["precommercial_thinning"]);
  }
  for (const Json& one : marked) {
    CAPTURE(one.dump());
    const std::string mark = one["mark"];
    CHECK((mark == "seen printed" || mark == "assumption" || mark == "from memory" ||
           mark == "common practice, no source"));
    CHECK_FALSE(one["source"].get<std::string>().empty());
  }
}

TEST_CASE("the ways cover natural and planted stands from 400 to 750 trees and every method") {
  std::vector<SiteMethod> used;
  double fewest = 4000, most = 0;
  for (const EstablishmentRecipe& one : built_in_establishments()) {
    CAPTURE(one.id);
    used.insert(used.end(), one.methods.begin(), one.methods.end());
    const double tpa = one.planted.in(trees_per_acre);
    fewest = std::min(fewest, tpa);
    if (tpa < 2000) most = std::max(most, tpa);
    CHECK(one.response.years_gained <= responses().most_years_together);
    CHECK_FALSE(one.sources.empty());
  }
  CHECK(fewest == 400);
  CHECK(most == 750);
  for (const SiteMethod method :
       {SiteMethod::chemical, SiteMethod::burn, SiteMethod::one_pass, SiteMethod::two_pass,
        SiteMethod::bed, SiteMethod::herbaceous, SiteMethod::release}) {
    CHECK(std::ranges::find(used, method) != used.end());
  }
}

TEST_CASE("gains are added up to no more than they may be together") {
  // 2.5 for spraying and burning, 1.0 and 1.5 besides: 5, of which 4.5 count.
  CHECK(recipe("plant-600-all").response.years_gained == 4.5);
  CHECK(recipe("plant-600-chemical-burn-herbaceous").response.years_gained == 3.5);
  CHECK(recipe("natural").response.years_gained == -1.0);
  CHECK(recipe("natural").site_index_shift == feet(-2));
}

TEST_CASE("seedlings are paid for by their number and all else by the acre") {
  const EstablishmentRecipe& burn = recipe("plant-600-burn");
  const auto cost = [&](double tpa) {
    return alternative_of(burn, trees_per_acre(tpa)).establishment().in(dollars_per_acre);
  };
  CHECK(cost(600) == support::within(38 + 42 + 75, 1e-9));
  CHECK(cost(400) == support::within(38 + 28 + 75, 1e-9));
}

TEST_CASE("ids that are not known or stand twice and costs of two kinds are refused") {
  Json file = establishment_file("alternatives.json");
  CHECK(recipes(file).has_value());
  file["alternatives"][0]["responses"][0] = "bern";
  CHECK(place_of_fault(recipes(file)) == "/alternatives/0/responses/0");
  file = establishment_file("alternatives.json");
  file["alternatives"][0]["costs"][0]["cost"] = "spray";
  CHECK(place_of_fault(recipes(file)) == "/alternatives/0/costs/0/cost");
  file = establishment_file("alternatives.json");
  file["alternatives"][1]["id"] = "natural";
  CHECK(place_of_fault(recipes(file)) == "/alternatives/1/id");
  Json dear = establishment_file("costs.json");
  dear["costs"][0]["usd_per_thousand"] = 1;
  const auto both = read_establishment_costs(dear.dump(), "c.json");
  REQUIRE_FALSE(both);
  CHECK(both.error().front().place == "/costs/0");
  Json gains = establishment_file("responses.json");
  gains["responses"][0]["treatment"] = "prayer";
  CHECK_FALSE(read_establishment_responses(gains.dump(), "r.json"));
}

TEST_CASE("a key that is missing or misspelt is refused in every file of the ways") {
  for (const std::string key : {"costs", "notes", "license"}) {
    Json file = establishment_file("costs.json");
    file.erase(key);
    CHECK_FALSE(read_establishment_costs(file.dump(), "c.json"));
  }
  Json file = establishment_file("alternatives.json");
  file["alternatives"][0]["method"] = Json::array();
  CHECK_FALSE(recipes(file));
  Json gains = establishment_file("responses.json");
  gains["responses"][0].erase("mark");
  CHECK_FALSE(read_establishment_responses(gains.dump(), "r.json"));
}

}  // namespace staddle
