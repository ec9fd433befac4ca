// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/run_here.h"

#include <algorithm>
#include <filesystem>

namespace staddle::support {
namespace {

std::string scenario_with(const std::string& stand, const std::string& more) {
  return R"({"format": "staddle-scenario/1", "title": "Owl Hollow", "acres": 40,
  "calendar_year": 2027, "stand": {"model": "loblolly-planted-coastal", "site_index_ft": 70,
  "planted_tpa": 600)" +
         stand + R"(},
  "economics": {"real_discount_rate": 0.05, "establishment_usd_ac": 350,
    "stumpage_usd_per_ton": {"pulpwood": 7, "chip_n_saw": 18, "sawtimber": 25}},
  )" + more +
         R"("decisions": {"max_thinnings": 1, "thinning_age_yr": [15, 20],
    "removal_fraction": [0.25, 0.33], "final_harvest_age_yr": [25, 32]}})";
}

}  // namespace

Run run_staddle_in(const std::string& folder, const std::vector<std::string>& arguments) {
  std::vector<std::string> words{"-c", "cd \"$1\" && shift && exec \"$@\"", "sh", folder,
                                 STADDLE_BINARY};
  words.insert(words.end(), arguments.begin(), arguments.end());
  return run_program("sh", words);
}

Run run_shell(const std::string& line, const std::vector<std::string>& arguments,
              const std::string& input) {
  std::vector<std::string> words{"-c", "STADDLE=\"$1\"; shift; " + line, "sh", STADDLE_BINARY};
  words.insert(words.end(), arguments.begin(), arguments.end());
  return run_program("sh", words, input);
}

std::vector<std::string> names_in(const std::string& folder) {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    names.push_back(entry.path().filename().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

std::string bare_land(const std::string& more) { return scenario_with("", more); }

std::string standing_stand(const std::string& more) {
  return scenario_with(
      R"(, "age_yr": 15, "tpa": 500, "basal_area_ft2_ac": 125, "live_crown_ratio": 0.39)", more);
}

}  // namespace staddle::support
