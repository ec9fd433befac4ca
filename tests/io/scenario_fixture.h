// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "staddle/io/scenario_reader.h"

namespace staddle::scenario_tests {

using Json = nlohmann::ordered_json;

// The shortest scenarios that are right: bare land, and a standing stand.
Json bare_land();
Json standing_stand();
// Bare land on a yield table, "table.csv".
Json on_yield_table();
// Bare land on the tables of two fixed regimes, "table.csv" and "thinned.csv".
Json on_tabled_regimes();
// A standing stand in which every key of the format is given that can stand beside the
// others, own perils included.
Json everything_given();

// Files that loaders of these tests know.
const std::map<std::string, std::string>& table_files();

Result<Scenario> read(const Json& scenario);
Result<Scenario> read(const std::string& text);

// The same scenario with another value at a JSON pointer, or without what stands there.
Json with(Json scenario, const std::string& pointer, const Json& value);
Json without(Json scenario, const std::string& pointer);

// The faults as "code at place", in order; empty where there are none.
std::vector<std::string> faults_of(const Result<Scenario>& result);
std::string name_of(FaultCode code);

// The faults at exactly this place.
Faults faults_at(const Result<Scenario>& result, const std::string& place);

}  // namespace staddle::scenario_tests
