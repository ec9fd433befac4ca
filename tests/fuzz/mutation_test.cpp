// SPDX-License-Identifier: GPL-3.0-or-later
#include "fuzz/mutation.h"

#include <catch2/catch.hpp>

#include "fuzz/reading_promise.h"
#include "support/files.h"
#include "support/seed.h"

namespace staddle {
namespace {

constexpr int mutations_of_each = 400;

struct Corpus {
  std::vector<std::string> scenarios;
  fuzz::Files tables;
};

Corpus corpus() {
  Corpus corpus;
  for (const std::string& name : support::files_in_source_tree("tests/fuzz/corpus", ".json")) {
    corpus.scenarios.push_back(
        support::read_file(support::in_source_tree("tests/fuzz/corpus/" + name)));
  }
  for (const std::string& name : support::files_in_source_tree("tests/fuzz/corpus", ".csv")) {
    corpus.tables[name] = support::read_file(support::in_source_tree("tests/fuzz/corpus/" + name));
  }
  return corpus;
}

// Runs the check and, where it throws, shows the input that made it throw.
fuzz::Outcome checked(const std::string& scenario, const fuzz::Files& tables) {
  try {
    return fuzz::check_reading(scenario, tables);
  } catch (const std::exception& thrown) {
    FAIL(thrown.what() << " on\n" << scenario);
  }
  return fuzz::Outcome::refused;
}

TEST_CASE("the corpus itself is accepted") {
  const Corpus known = corpus();
  CHECK(known.scenarios.size() >= 7);
  for (const std::string& scenario : known.scenarios) {
    CHECK(checked(scenario, known.tables) == fuzz::Outcome::accepted);
  }
}

TEST_CASE("no harm done to a scenario makes the reader break its promise") {
  const Corpus known = corpus();
  const support::TaggedSeed seed("mutated scenarios");
  int refused = 0;
  for (std::size_t i = 0; i < known.scenarios.size(); ++i) {
    RandomStream random = seed.stream(i);
    for (int k = 0; k < mutations_of_each; ++k) {
      const std::string harmed = fuzz::mutated(known.scenarios[i], known.scenarios, random);
      refused += checked(harmed, known.tables) == fuzz::Outcome::refused ? 1 : 0;
    }
  }
  CHECK(refused > mutations_of_each);
}

TEST_CASE("scenarios with other numbers are refused or priced with finite numbers") {
  const Corpus known = corpus();
  const support::TaggedSeed seed("renumbered scenarios");
  int accepted = 0;
  for (std::size_t i = 0; i < known.scenarios.size(); ++i) {
    RandomStream random = seed.stream(i);
    for (int k = 0; k < mutations_of_each; ++k) {
      const std::string other = fuzz::renumbered(known.scenarios[i], random);
      accepted += checked(other, known.tables) == fuzz::Outcome::accepted ? 1 : 0;
    }
  }
  CHECK(accepted > mutations_of_each / 4);
}

TEST_CASE("no harm done to a yield table makes the reader break its promise") {
  const Corpus known = corpus();
  const support::TaggedSeed seed("mutated tables");
  RandomStream random = seed.stream();
  std::vector<std::string> tables;
  for (const auto& [name, table] : known.tables) tables.push_back(table);
  int accepted = 0;
  for (const std::string& scenario : known.scenarios) {
    if (scenario.find(".csv") == std::string::npos) continue;
    for (int k = 0; k < mutations_of_each; ++k) {
      fuzz::Files harmed = known.tables;
      for (auto& [name, table] : harmed) {
        table = random.next_below(2) == 0 ? fuzz::renumbered(table, random)
                                          : fuzz::mutated(table, tables, random);
      }
      accepted += checked(scenario, harmed) == fuzz::Outcome::accepted ? 1 : 0;
    }
  }
  CHECK(accepted > 0);
}

}  // namespace
}  // namespace staddle
