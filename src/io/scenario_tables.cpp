// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/scenario_tables.h"

#include <algorithm>

#include "io/csv_columns.h"
#include "io/number_text.h"
#include "staddle/io/yield_table_reader.h"

namespace staddle {
namespace {

class TabledRegimeReader {
 public:
  TabledRegimeReader(ScenarioReading& reading, const Place& place)
      : reading_(reading), place_(place) {}

  std::optional<TabledRegime> read() {
    auto table = load_yield_table(reading_, place_["file"]);
    if (!table) return std::nullopt;
    TabledRegime regime{place_["name"].text_or_empty(), std::move(*table), {}};
    int latest = 0;
    for (const Place& cut : place_["thinnings"].items()) {
      regime.thinnings.push_back(read_cut(cut, regime.table, latest));
      latest = std::max(latest, regime.thinnings.back().age_yr);
    }
    return regime;
  }

 private:
  TabledThinning read_cut(const Place& cut, const YieldTable& table, int latest) {
    TabledThinning thinning;
    if (const auto at = cut["age_yr"].whole()) {
      thinning.age_yr = *at;
      check_age(cut["age_yr"], *at, table, latest);
    }
    if (const auto fraction = cut["removal_fraction"].number()) {
      thinning.removal_fraction = *fraction;
    }
    for (const std::string& product : table.products) {
      const Place tons = cut[product + std::string(tons_ending)];
      thinning.tons_ac.push_back(tons.number_or_zero());
      if (!tons.there()) reading_.assumed.push_back({tons.pointer(), "0", "default"});
    }
    refuse_unknown(cut, table);
    return thinning;
  }

  void check_age(const Place& place, int at, const YieldTable& table, int latest) {
    if (at <= latest) {
      reading_.fault(place, FaultCode::contradiction,
                     "found " + std::to_string(at) + " after a cut at " + std::to_string(latest) +
                         "; the ages of the cuts rise");
    }
    const auto& ages = table.age_yr;
    if (std::find(ages.begin(), ages.end(), at) != ages.end()) return;
    reading_.fault(place, FaultCode::contradiction,
                   table.file + " has no row at age " + std::to_string(at),
                   "the row at a cut shows the stand just after it");
  }

  void refuse_unknown(const Place& cut, const YieldTable& table) {
    std::vector<std::string> known = {"age_yr", "removal_fraction"};
    for (const std::string& product : table.products) {
      known.push_back(product + std::string(tons_ending));
    }
    for (const std::string& key : cut.keys()) {
      if (std::find(known.begin(), known.end(), key) != known.end()) continue;
      reading_.fault(cut[key], FaultCode::unknown_key, "there is no such key here",
                     did_you_mean(nearest_name(key, known)));
    }
  }

  ScenarioReading& reading_;
  const Place& place_;
};

}  // namespace

std::optional<YieldTable> load_yield_table(ScenarioReading& reading, const Place& file) {
  const auto name = file.text();
  if (!name) return std::nullopt;
  const Result<std::string> content = reading.load(*name);
  if (!content) {
    for (const Fault& fault : content.error()) {
      reading.fault(file, FaultCode::unreadable,
                    "cannot read " + quoted_text(*name) + ": " + fault.text, fault.hint);
    }
    return std::nullopt;
  }
  Result<YieldTable> table = read_yield_table(*content, *name);
  if (table) return std::move(table).value();
  reading.faults.add_all(file.order(), table.error());
  return std::nullopt;
}

bool read_tabled_regimes(ScenarioReading& reading, const Place& tables, GrowthSource& source) {
  std::vector<TabledRegime> regimes;
  bool complete = true;
  for (const Place& place : tables.items()) {
    auto regime = TabledRegimeReader(reading, place).read();
    if (!regime) {
      complete = false;
      continue;
    }
    for (const TabledRegime& other : regimes) {
      if (!regime->name.empty() && other.name == regime->name) {
        reading.fault(place["name"], FaultCode::repeated_key,
                      quoted_text(regime->name) + " is the name of an earlier table too");
      }
    }
    if (!regimes.empty() && regimes.front().table.products != regime->table.products) {
      reading.fault(
          place["file"], FaultCode::contradiction,
          regime->table.file + " has other product columns than " + regimes.front().table.file,
          "all tables need the same products in the same order");
    }
    regimes.push_back(std::move(*regime));
  }
  if (!complete || regimes.empty()) return false;
  reading.products = regimes.front().table.products;
  const auto first = [](const TabledRegime& regime) { return regime.table.age_yr.front(); };
  const auto last = [](const TabledRegime& regime) { return regime.table.age_yr.back(); };
  reading.first_table_age = first(regimes.front());
  reading.last_table_age = last(regimes.front());
  for (const TabledRegime& regime : regimes) {
    reading.first_table_age = std::min(*reading.first_table_age, first(regime));
    reading.last_table_age = std::max(*reading.last_table_age, last(regime));
  }
  source = std::move(regimes);
  return true;
}

}  // namespace staddle
