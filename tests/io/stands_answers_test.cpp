// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/stands_answers.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "staddle/io/advice_writer.h"
#include "staddle/io/scenario_reader.h"
#include "staddle/scenario/advise_problem.h"

namespace staddle {
namespace {

// Few choices, so that every row is answered at once. Its own stand must not be read.
const std::string scenario = R"({"format": "staddle-scenario/1", "title": "County",
  "acres": -1, "stand": {"age": "unknown"}, "regimes": 5, "vary": 7,
  "economics": {"real_discount_rate": 0.05, "establishment_usd_ac": 350,
    "after_harvest": "best",
    "stumpage_usd_per_ton": {"pulpwood": 7, "chip_n_saw": 18, "sawtimber": 25}},
  "decisions": {"max_thinnings": 1, "thinning_age_yr": [15, 18],
    "removal_fraction": [0.33], "final_harvest_age_yr": [25, 28]}})";

const std::string stands_header =
    "name,acres,group,model,site_index_ft,dominant_height_ft,planted_tpa,age_yr,tpa,"
    "basal_area_ft2_ac,live_crown_ratio,last_thinning_age_yr,last_thinning_removal_fraction\n";
const std::string field = "Field,30,,loblolly-planted-coastal,70,,600,,,,,,\n";
const std::string old_stand =
    "Old,40.5,east,loblolly-planted-coastal,70,,600,22,240,100,0.36,16,0.33\n";
const std::string young = "Young,20,,loblolly-planted-coastal,,38,600,14,500,100,,,\n";

StandsReader open(const std::string& rows) {
  Result<StandsReader> reader =
      StandsReader::open({scenario, "county.json", stands_header + rows, "stands.csv"});
  if (!reader) {
    for (const Fault& fault : reader.error()) UNSCOPED_INFO(to_line(fault));
  }
  REQUIRE(reader);
  return std::move(reader).value();
}

std::vector<std::string> opening_faults(const std::string& scenario_text,
                                        const std::string& stands) {
  const auto reader = StandsReader::open({scenario_text, "county.json", stands, "stands.csv"});
  std::vector<std::string> lines;
  if (reader) return lines;
  for (const Fault& fault : reader.error()) lines.push_back(to_line(fault));
  return lines;
}

struct Answers {
  std::string text;
  StandsTally tally;
  std::vector<nlohmann::json> lines;
};

Answers answers_to(const std::string& rows, StandsOptions options = {}) {
  Answers answers;
  answers.tally = answer_stands(open(rows), options, [&](const std::string& line) {
    answers.text += line;
    CHECK(std::count(line.begin(), line.end(), '\n') == 1);
    answers.lines.push_back(nlohmann::json::parse(line));
    return true;
  });
  return answers;
}

// The one fault of a single row.
std::string fault_of_row(const std::string& row) {
  StandsReader reader = open(row);
  const Result<Scenario> read = reader.scenario_of(reader.next().value());
  REQUIRE_FALSE(read);
  for (const Fault& fault : read.error()) UNSCOPED_INFO(to_line(fault));
  REQUIRE(read.error().size() == 1);
  return to_line(read.error().front());
}

TEST_CASE("a row is answered as the same stand in a scenario of its own") {
  const Answers answers = answers_to(old_stand);
  const std::string alone = R"({"format": "staddle-scenario/1", "title": "Old", "acres": 40.5,
    "stand": {"model": "loblolly-planted-coastal", "site_index_ft": 70, "planted_tpa": 600,
      "age_yr": 22, "tpa": 240, "basal_area_ft2_ac": 100, "live_crown_ratio": 0.36,
      "last_thinning": {"age_yr": 16, "removal_fraction": 0.33}},)" +
                            scenario.substr(scenario.find("\"economics\""));
  const auto read = read_scenario(alone, "alone.json", {});
  REQUIRE(read);
  const auto problem = make_advise_problem(*read);
  REQUIRE(problem);
  const auto advice = advise(*problem);
  REQUIRE(advice);
  auto expected = nlohmann::json::parse(advice_json(*read, *advice));
  auto found = answers.lines.at(0);
  CHECK(found["name"] == "Old");
  CHECK(found["line"] == 2);
  found.erase("name");
  found.erase("line");
  CHECK(found == expected);
}

TEST_CASE("rows are answered in the order of the file and bare land ignores a shared successor") {
  const Answers answers = answers_to(old_stand + "\n# a remark\n" + field + young);
  REQUIRE(answers.lines.size() == 3);
  CHECK(answers.tally.complete);
  CHECK(answers.tally.answered == 3);
  CHECK(answers.lines[0]["name"] == "Old");
  CHECK(answers.lines[1]["name"] == "Field");
  CHECK(answers.lines[1]["line"] == 5);
  CHECK(answers.lines[1]["objective"] == "land_expectation_value");
  CHECK(answers.lines[2]["name"] == "Young");
  CHECK(answers.lines[2]["best"]["forest_value_usd_ac"].is_number());
}

TEST_CASE("a faulty row says why and the rest go on") {
  const Answers answers =
      answers_to(old_stand + "Odd,x,,loblolly-planted-costal,500,,,,,,,,\n" + "Short,1\n" + field);
  CHECK(answers.tally.answered == 2);
  CHECK(answers.tally.faulty == 2);
  CHECK(answers.tally.complete);
  const auto& odd = answers.lines.at(1);
  CHECK(odd.size() == 3);
  CHECK(odd["name"] == "Odd");
  CHECK(odd["line"] == 3);
  const std::string errors = odd["errors"].dump();
  CHECK(odd["errors"].size() == 4);
  for (const char* part :
       {"stands.csv: line 3, column acres", "column model", "column site_index_ft",
        "column planted_tpa", "did you mean \\\"loblolly-planted-coastal\\\"?"}) {
    CAPTURE(part, errors);
    CHECK(errors.find(part) != std::string::npos);
  }
  CHECK(answers.lines.at(2)["name"] == "");
  CHECK(answers.lines.at(3)["name"] == "Field");
}

TEST_CASE("each wrong cell is named with its line and column") {
  const auto check = [](const std::string& row, const std::string& part) {
    CAPTURE(row);
    const std::string fault = fault_of_row(row);
    CHECK(fault.starts_with("stands.csv: line 2"));
    CHECK(fault.find(part) != std::string::npos);
  };
  const std::string model = "loblolly-planted-coastal";
  check("A,0,," + model + ",70,,600,,,,,,\n", "column acres");
  check("A,\"1,5\",," + model + ",70,,600,,,,,,\n", "a decimal comma");
  check("A,5,," + model + ",29,,600,,,,,,\n", "column site_index_ft");
  check("A,5,," + model + ",70,,600,15.5,500,100,,,\n", "column age_yr");
  check("A,5,," + model + ",70,,600,15,500,,,,\n", "column basal_area_ft2_ac");
  check("A,5,," + model + ",70,,600,15,500,100,1,,\n", "column live_crown_ratio");
  check("A,5,," + model + ",70,,600,15,500,100,,16,0.3\n", "column last_thinning_age_yr");
  check("A,5,," + model + ",70,,600,15,500,100,,12,\n", "column last_thinning_removal_fraction");
  check("A,5,," + model + ",70,,600,,,,0.3,,\n", "column live_crown_ratio");
  check(",5,," + model + ",70,,600,,,,,,\n", "column name");
  check("A,5,,,70,,600,,,,,,\n", "column model");
  check("A,5,," + model + ",70,,600,,,,,,,\n", "found 14 cells; the header has 13");
  check("\"A,5\n", "a quotation mark opens here and never closes");
}

TEST_CASE("faults of the header and of the shared blocks come together before any answer") {
  const std::string broken = R"({"format": "staddle-scenario/1", "title": "County", "remarks": 1,
    "economics": {"real_discount_rate": 0, "establishment_usd_ac": 350,
      "stumpage_usd_per_ton": {"pulpwood": 7, "chip_n_saw": 18, "veneer": 25}}})";
  const auto faults = opening_faults(broken, "name,acres,age,model,model\nA,5,,x,x\n");
  REQUIRE(faults.size() == 6);
  CHECK(faults[0].starts_with("county.json: /remarks: "));
  CHECK(faults[1].starts_with("county.json: /economics/real_discount_rate: "));
  CHECK(faults[2].starts_with("county.json: /economics/stumpage_usd_per_ton/sawtimber: "));
  CHECK(faults[3].starts_with("county.json: /economics/stumpage_usd_per_ton/veneer: "));
  CHECK(faults[4].starts_with("stands.csv: line 1, column age: there is no such column"));
  CHECK(faults[5] == "stands.csv: line 1, column model: this column stands here twice");
}

TEST_CASE("a table without rows and without a header is refused") {
  CHECK(opening_faults(scenario, stands_header) ==
        std::vector<std::string>{"stands.csv: no stand stands in it"});
  CHECK(opening_faults(scenario, "") == std::vector<std::string>{"stands.csv: the file is empty"});
  CHECK(opening_faults(scenario, "name,acres\nA,5\n") ==
        std::vector<std::string>{"stands.csv: line 1, column model: this column is required"});
  CHECK(opening_faults("[1]", stands_header + field).size() == 1);
}

// Eleven rows of three kinds, one of them faulty.
std::string many_rows() {
  std::string rows;
  for (int i = 0; i < 11; ++i) rows += i % 3 == 0 ? field : i % 3 == 1 ? young : old_stand;
  return rows + "Odd,1,,unknown,70,,600,,,,,,\n";
}

TEST_CASE("the number of threads changes no byte") {
  StandsOptions one, three;
  one.threads = 1;
  three.threads = 3;
  CHECK(answers_to(many_rows(), one).text == answers_to(many_rows(), three).text);
}

TEST_CASE("the parts put together in order are the whole whatever their number") {
  const std::string whole = answers_to(many_rows()).text;
  for (const std::size_t of : {1u, 2u, 5u, 12u, 20u}) {
    CAPTURE(of);
    std::string together;
    for (std::size_t number = 1; number <= of; ++number) {
      StandsOptions options;
      options.part = {number, of};
      together += answers_to(many_rows(), options).text;
    }
    CHECK(together == whole);
  }
}

TEST_CASE("a stop and a sink that takes no more end the work") {
  std::stop_source stop;
  stop.request_stop();
  StandsOptions options;
  options.stop = stop.get_token();
  CHECK_FALSE(answers_to(many_rows(), options).tally.complete);
  std::size_t taken = 0;
  const StandsTally tally =
      answer_stands(open(many_rows()), {}, [&](const std::string&) { return ++taken < 3; });
  CHECK_FALSE(tally.complete);
  CHECK(taken == 3);
}

}  // namespace
}  // namespace staddle
