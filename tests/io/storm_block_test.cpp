// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <limits>

#include "io/scenario_fixture.h"

namespace staddle::scenario_tests {
namespace {

// One scenario whose perils have these annual probabilities, as text.
std::string with_chances(const std::vector<std::string>& chances) {
  std::string perils;
  for (std::size_t i = 0; i < chances.size(); ++i) {
    perils += std::string(i == 0 ? "" : ", ") + R"({"name": "peril )" + std::to_string(i) +
              R"(", "damage_share": 0.5, "annual_probability": )" + chances[i] + "}";
  }
  std::string text = bare_land().dump();
  text.pop_back();
  return text + R"(, "storm": {"perils": [)" + perils + "]}}";
}

}  // namespace

TEST_CASE("probabilities of storms that cannot be are refused") {
  const std::string first = "/storm/perils/0/annual_probability";
  for (const char* chance : {"-1e-9", "-0.02", "1.0000001", "2", "-1e308"}) {
    CAPTURE(chance);
    CHECK(faults_of(read(with_chances({chance}))) ==
          std::vector<std::string>{"out of range at " + first});
  }
  CHECK(faults_of(read(with_chances({"\"0.02\""}))) ==
        std::vector<std::string>{"wrong type at " + first});
  CHECK(faults_of(read(with_chances({"null"}))) ==
        std::vector<std::string>{"wrong type at " + first});
  for (const char* chance : {"NaN", "nan", "Infinity", "1e999", ".5", "0,5"}) {
    CAPTURE(chance);
    CHECK_FALSE(read(with_chances({chance})).has_value());
  }
}

TEST_CASE("probabilities that sum to one at most are taken") {
  CHECK(read(with_chances({"0", "1"})).has_value());
  CHECK(read(with_chances({"0.3", "0.3", "0.4"})).has_value());
  CHECK(read(with_chances({"0.5", "0.5000000005"})).has_value());
  CHECK(faults_of(read(with_chances({"0.5", "0.50000001"}))) ==
        std::vector<std::string>{"contradiction at /storm/perils"});
  CHECK(faults_of(read(with_chances({"0.7", "0.7", "0.7"}))) ==
        std::vector<std::string>{"contradiction at /storm/perils"});
}

TEST_CASE("every bad probability is named and not only the first") {
  CHECK(faults_of(read(with_chances({"-0.1", "0.2", "1.5"}))).size() >= 2);
}

}  // namespace staddle::scenario_tests
