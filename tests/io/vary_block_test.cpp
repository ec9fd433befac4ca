// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "io/prices_reader.h"
#include "io/scenario_fixture.h"
#include "support/near.h"

namespace staddle::scenario_tests {
namespace {

Json varying(const Json& vary) { return with(bare_land(), "/vary", vary); }

// Reads a scenario beside which stands prices.csv.
Result<Scenario> read_with_prices(const std::string& prices) {
  const auto load = [&](const std::string&) -> Result<std::string> { return prices; };
  return read_scenario(varying({{"prices_csv", "prices.csv"}}).dump(), "scenario.json", load);
}

std::vector<std::string> places_of(const Result<Scenario>& result) {
  std::vector<std::string> places;
  if (result) return places;
  for (const Fault& fault : result.error()) places.push_back(fault.file + ": " + fault.place);
  return places;
}

const std::string prices_header = "date,product,usd_per_ton\n";

std::string rows_of(const std::string& date) {
  return date + ",sawtimber,25\n" + date + ",chip_n_saw,18\n" + date + ",pulpwood,7\n";
}

}  // namespace

TEST_CASE("a scenario without a vary block asks for nothing to vary") {
  CHECK_FALSE(read(bare_land())->vary);
}

TEST_CASE("an empty vary block varies nothing but the break-evens at the scenario's rate") {
  const Result<Scenario> scenario = read(varying(Json::object()));
  REQUIRE(scenario);
  REQUIRE(scenario->vary);
  REQUIRE(scenario->vary->rates.size() == 1);
  CHECK(scenario->vary->rates[0] == scenario->costs.rate);
  const bool told = std::any_of(scenario->assumed.begin(), scenario->assumed.end(),
                                [](const Assumption& one) { return one.pointer == "/vary/rates"; });
  CHECK(told);
}

TEST_CASE("price sets are prices or factors and what is left out stays") {
  const Json vary = Json::parse(R"({"price_scenarios": [
    {"name": "low", "stumpage_usd_per_ton": {"sawtimber": 11}, "weight": 2},
    {"name": "up", "multiply": {"sawtimber": 1.5}}]})");
  const Result<Scenario> scenario = read(varying(vary));
  REQUIRE(scenario);
  const auto& sets = scenario->vary->price_scenarios;
  const auto own = [&](std::size_t i) { return scenario->prices[i].stumpage.in(dollars_per_ton); };
  REQUIRE(sets.size() == 2);
  CHECK(sets[0].stumpage[0].in(dollars_per_ton) == 11);
  CHECK(sets[0].stumpage[1].in(dollars_per_ton) == own(1));
  CHECK(sets[0].weight == 2);
  CHECK(sets[1].stumpage[0].in(dollars_per_ton) == support::relative(1.5 * own(0), 1e-14));
  CHECK(sets[1].weight == 1);
}

TEST_CASE("each fault of a vary block stands at its pointer") {
  using Faulty = std::pair<const char*, const char*>;
  for (const auto& [vary, fault] : {
           Faulty{R"({"rates": []})", "out of range at /vary/rates"},
           Faulty{R"({"rates": [0.05, 0]})", "out of range at /vary/rates/1"},
           Faulty{R"({"price_scenarios": []})", "out of range at /vary/price_scenarios"},
           Faulty{R"({"price_scenarios": [{"name": "x"}]})",
                  "missing key at /vary/price_scenarios/0"},
           Faulty{R"({"price_scenarios": [{"name": "x", "multiply": {},
                     "stumpage_usd_per_ton": {"sawtimber": 1}}]})",
                  "contradiction at /vary/price_scenarios/0"},
           Faulty{R"({"price_scenarios": [{"name": "base", "multiply": {}}]})",
                  "contradiction at /vary/price_scenarios/0/name"},
           Faulty{R"({"price_scenarios": [{"name": "joint p25", "multiply": {}}]})",
                  "contradiction at /vary/price_scenarios/0/name"},
           Faulty{R"({"price_scenarios": [{"name": "a", "multiply": {}},
                                          {"name": "a", "multiply": {}}]})",
                  "repeated key at /vary/price_scenarios/1/name"},
           Faulty{R"({"price_scenarios": [{"name": "a", "multiply": {"sawtimbre": 2}}]})",
                  "unknown name at /vary/price_scenarios/0/multiply/sawtimbre"},
           Faulty{R"({"price_scenarios": [{"name": "a", "multiply": {"sawtimber": -1}}]})",
                  "out of range at /vary/price_scenarios/0/multiply/sawtimber"},
           Faulty{R"({"one_at_a_time": {"sawtimbr": [0, 1]}})",
                  "unknown name at /vary/one_at_a_time/sawtimbr"},
           Faulty{R"({"one_at_a_time": {"sawtimber": [0.3, -0.3]}})",
                  "contradiction at /vary/one_at_a_time/sawtimber"},
           Faulty{R"({"one_at_a_time": {"sawtimber": [-1.01, 0]}})",
                  "out of range at /vary/one_at_a_time/sawtimber/0"},
           Faulty{R"({"one_at_a_time": {"sawtimber": [0]}})",
                  "out of range at /vary/one_at_a_time/sawtimber"},
           Faulty{R"({"one_at_a_time": {"real_discount_rate": [0, 0.1]}})",
                  "out of range at /vary/one_at_a_time/real_discount_rate/0"},
           Faulty{R"({"one_at_a_time": {"storm_odds_ratio": [1, 3]}})",
                  "contradiction at /vary/one_at_a_time/storm_odds_ratio"},
           Faulty{R"({"grid": {"x": {"parameter": "sawtimber", "values": [0]}}})",
                  "missing key at /vary/grid/y"},
           Faulty{R"({"grid": {"x": {"parameter": "sawtimber", "values": []},
                               "y": {"parameter": "pulpwood", "values": [0]}}})",
                  "out of range at /vary/grid/x/values"},
           Faulty{R"({"grid": {"x": {"parameter": "sawtimber", "values": [0]},
                               "y": {"parameter": "sawtimber", "values": [0]}}})",
                  "contradiction at /vary/grid/y/parameter"},
           Faulty{R"({"rate": [0.05]})", "unknown key at /vary/rate"},
       }) {
    CAPTURE(vary);
    CHECK(faults_of(read(varying(Json::parse(vary)))) == std::vector<std::string>{fault});
  }
}

TEST_CASE("a misspelt parameter is answered with the nearest") {
  const Json vary = Json::parse(R"({"one_at_a_time": {"site_indx_ft": [60, 80]}})");
  const auto result = read(varying(vary));
  REQUIRE_FALSE(result);
  CHECK(result.error().front().hint == "did you mean \"site_index_ft\"?");
}

TEST_CASE("site index and planted trees are no parameters of a yield table") {
  const Json vary = Json::parse(R"({"one_at_a_time": {"site_index_ft": [60, 80]}})");
  CHECK(faults_of(read(with(on_yield_table(), "/vary", vary))) ==
        std::vector<std::string>{"contradiction at /vary/one_at_a_time/site_index_ft"});
}

TEST_CASE("tables of fixed regimes are not varied") {
  CHECK(faults_of(read(with(on_tabled_regimes(), "/vary", Json::object()))) ==
        std::vector<std::string>{"contradiction at /vary"});
}

TEST_CASE("dated prices come by date whatever the order of the rows") {
  const auto scenario =
      read_with_prices(prices_header + rows_of("2024-06-30") + rows_of("2023-06-30"));
  REQUIRE(scenario);
  const auto& dates = scenario->vary->dated_prices;
  REQUIRE(dates.size() == 2);
  CHECK(dates[0].date == "2023-06-30");
  CHECK(dates[0].stumpage[2].in(dollars_per_ton) == 7);
}

TEST_CASE("faults of dated prices name the line") {
  using Faulty = std::pair<std::string, std::string>;
  const std::string good = prices_header + rows_of("2023-06-30");
  for (const auto& [prices, place] : {
           Faulty{good + "2024-06-30,sawtimber,\n", "line 5, column usd_per_ton"},
           Faulty{good + "2024-06-30,sawtimber,dear\n", "line 5, column usd_per_ton"},
           Faulty{good + "2024-06-30,sawtimber,-1\n", "line 5, column usd_per_ton"},
           Faulty{good + "2024-06-30,oak,4\n", "line 5, column product"},
           Faulty{good + "2024-13-30,sawtimber,4\n", "line 5, column date"},
           Faulty{good + "30.6.2024,sawtimber,4\n", "line 5, column date"},
           Faulty{good + "2024-06-30,sawtimber\n", "line 5"},
           Faulty{good + "2023-06-30,sawtimber,26\n", "line 5"},
           Faulty{prices_header, "line 1"},
           Faulty{"date,product\n", "line 1, column usd_per_ton"},
           Faulty{"date,product,usd_per_ton,mill\n", "line 1, column mill"},
       }) {
    CAPTURE(prices);
    CHECK(places_of(read_with_prices(prices)) == std::vector<std::string>{"prices.csv: " + place});
  }
}

TEST_CASE("a date without a price of every product is a gap at its line") {
  const auto result = read_with_prices(prices_header + rows_of("2023-06-30") +
                                       "2024-06-30,sawtimber,25\n2024-06-30,pulpwood,8\n");
  REQUIRE_FALSE(result);
  const Fault& fault = result.error().front();
  CHECK(fault.place == "line 5");
  CHECK(fault.text ==
        "on 2024-06-30 there is no price of chip_n_saw; every date needs one of every product");
}

}  // namespace staddle::scenario_tests
