// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>

#include "cli/run_here.h"
#include "support/files.h"

namespace staddle {
namespace {

using Json = nlohmann::ordered_json;
using support::Run;

// A key that holds money: "usd_ac" or "usd" as a word of it; a price is named usd_per_...
bool is_money(const std::string& key) {
  static const std::regex money("(^|.*_)usd(_ac)?($|_(?!per_).*)");
  return std::regex_match(key, money);
}

// Two forms of the same thing: lists as long, objects with the same keys; what is missing
// before tax is missing after it.
void check_shape(const Json& before, const Json& after, const std::string& place) {
  INFO(place << ": " << before.dump() << " after tax " << after.dump());
  if (after.is_null()) return;
  REQUIRE(before.type() == after.type());
  if (before.is_array()) {
    REQUIRE(before.size() == after.size());
    for (std::size_t i = 0; i < before.size(); ++i) check_shape(before[i], after[i], place);
  }
  if (before.is_object()) {
    for (const auto& [key, value] : before.items()) {
      REQUIRE(after.contains(key));
      check_shape(value, after[key], place + "/" + key);
    }
  }
}

std::vector<std::string> money_keys(const Json& object) {
  std::vector<std::string> keys;
  for (const auto& [key, value] : object.items()) {
    if (is_money(key)) keys.push_back(key);
  }
  std::sort(keys.begin(), keys.end());
  return keys;
}

// How many objects hold money, each of which must hold it after tax too.
int objects_with_money(const Json& value, const std::string& place) {
  int found = 0;
  if (value.is_array()) {
    for (std::size_t i = 0; i < value.size(); ++i) {
      found += objects_with_money(value[i], place + "/" + std::to_string(i));
    }
  }
  if (!value.is_object()) return found;
  const std::vector<std::string> keys = money_keys(value);
  if (!keys.empty()) {
    INFO(place << " holds money and shows it before tax alone: " << keys.front());
    REQUIRE(value.contains("after_tax"));
    const Json& after = value["after_tax"];
    CHECK(money_keys(after) == keys);
    for (const std::string& key : keys) check_shape(value[key], after[key], place + "/" + key);
    ++found;
  }
  for (const auto& [key, inner] : value.items()) {
    if (key != "after_tax") found += objects_with_money(inner, place + "/" + key);
  }
  return found;
}

bool mentions_tax(const Json& value) {
  if (value.is_array()) return std::any_of(value.begin(), value.end(), mentions_tax);
  if (!value.is_object()) return false;
  if (value.contains("after_tax")) return true;
  return std::any_of(value.begin(), value.end(), mentions_tax);
}

// A question whose answer is one JSON object: a scenario on standard input, and a line of
// shell that asks. "TAX" in the scenario is where its tax block comes.
struct Question {
  std::string command;
  std::string line;
  std::string scenario;
};

const std::string stated_regimes =
    R"("regimes": [{"name": "a heavy cut", "final_harvest_age_yr": 30,
    "thinnings": [{"age_yr": 18, "residual_basal_area_ft2_ac": 55}]},
  {"name": "finds nothing", "final_harvest_age_yr": 30,
    "thinnings": [{"age_yr": 18, "residual_basal_area_ft2_ac": 300}]}],)";
const std::string storms = R"("storm": {"zone": "coast"},)";
const std::string varied = R"("vary": {"rates": [0.05, 0.07],
  "price_scenarios": [{"name": "low", "multiply": {"sawtimber": 0.8}}],
  "one_at_a_time": {"establishment_usd_ac": [-0.2, 0.2], "sawtimber": [-0.3, 0.3]},
  "grid": {"x": {"parameter": "sawtimber", "values": [-0.2, 0.2]},
           "y": {"parameter": "real_discount_rate", "values": [0.04, 0.06]}}},)";

// A file of the source tree with a tax block put before the key `before`.
std::string taxed_file(const std::string& file, const std::string& before) {
  std::string text = support::read_file(support::in_source_tree(file));
  return text.insert(text.find("\"" + before + "\""), "TAX ");
}

std::vector<Question> questions() {
  const std::string tables = "cd '" + support::in_source_tree("scenarios/tables") + "' && ";
  const std::string plots = "cd '" + support::in_source_tree("scenarios/cruise") + "' && ";
  const std::string advise = "\"$STADDLE\" advise - --format json";
  const std::string grow = "\"$STADDLE\" grow - --format json --regime ";
  const std::string storm = "\"$STADDLE\" storm - --format json --futures 50 --choices";
  const std::string two_plans = taxed_file("scenarios/tables/two_plans.json", "economics");
  return {{"advise", advise, support::bare_land("TAX" + stated_regimes + storms)},
          {"advise", advise, support::standing_stand("TAX" + stated_regimes + storms)},
          {"advise", advise, taxed_file("scenarios/stand/dense_stand.json", "economics")},
          {"advise", advise + " --prove", support::bare_land("TAX")},
          {"advise", advise + " --prove", support::standing_stand("TAX")},
          {"advise", tables + advise, two_plans},
          {"advise", plots + advise, taxed_file("scenarios/cruise/from_plots.json", "economics")},
          {"grow", grow + "best", support::standing_stand("TAX" + storms)},
          {"grow", grow + "none", support::bare_land("TAX")},
          {"grow", tables + grow + "best", two_plans},
          {"hold", "\"$STADDLE\" hold - --format json", support::standing_stand("TAX" + storms)},
          {"storm", storm, support::bare_land("TAX" + stated_regimes + storms)},
          {"storm", storm, support::standing_stand("TAX" + stated_regimes + storms)},
          {"vary", "\"$STADDLE\" vary - --format json",
           support::bare_land("TAX" + stated_regimes + varied)},
          {"vary", "\"$STADDLE\" vary - --format json",
           support::standing_stand("TAX" + stated_regimes + varied)},
          {"plant", "\"$STADDLE\" plant - --format json",
           taxed_file("scenarios/plant/next_stand.json", "economics")},
          {"cruise",
           plots + "\"$STADDLE\" cruise prism_points.csv --basal-area-factor 10 --age-yr 17 "
                   "--economics - --format json",
           taxed_file("scenarios/cruise/economics.json", "economics")}};
}

Json answer_to(const Question& question, const std::string& tax) {
  std::string scenario = question.scenario;
  const std::size_t place = scenario.find("TAX");
  REQUIRE(place != std::string::npos);
  scenario.replace(place, 3, tax);
  const Run run = support::run_shell(question.line, {}, scenario);
  INFO(question.line << "\n" << run.err);
  REQUIRE(run.exit_code == 0);
  return Json::parse(run.out);
}

TEST_CASE("every object of every result that holds money holds it after tax too") {
  for (const Question& question : questions()) {
    for (const std::string tax : {R"("tax": {},)", R"("tax": {"basis_usd_ac": 300},)",
                                  R"("tax": {"reforestation_deduction": false},)"}) {
      CAPTURE(question.line, tax);
      CHECK(objects_with_money(answer_to(question, tax), "") > 0);
    }
  }
}

TEST_CASE("without a tax block no result speaks of tax") {
  for (const Question& question : questions()) {
    CAPTURE(question.line);
    CHECK_FALSE(mentions_tax(answer_to(question, "")));
  }
}

TEST_CASE("every command that writes JSON is asked what it leaves after tax") {
  std::set<std::string> asked;
  for (const Question& question : questions()) asked.insert(question.command);
  // What they write holds no money, or the file they read has no tax.
  const std::set<std::string> without_tax{"check", "models", "tract"};
  const std::string help = support::run_staddle({"--help"}).out;
  std::istringstream lines(help.substr(help.find("Commands")));
  for (std::string line; std::getline(lines, line);) {
    std::istringstream words(line);
    std::string command;
    if (!line.starts_with("  ") || !(words >> command) || without_tax.contains(command)) continue;
    const Run told = support::run_staddle({command, "--help"});
    const std::size_t format = told.out.find("--format");
    if (told.exit_code != 0 || format == std::string::npos) continue;
    const std::string choices = told.out.substr(format, told.out.find('\n', format) - format);
    if (choices.find("json") == std::string::npos) continue;
    CAPTURE(command);
    CHECK(asked.contains(command));
  }
}

}  // namespace
}  // namespace staddle
