// SPDX-License-Identifier: GPL-3.0-or-later
// How many stands of a table are answered in a second, and in how much memory: no number
// here is a test.
//
//   cmake -S . -B build -DBUILD_BENCHMARKS=ON && cmake --build build --target stands_bench
//   build/tests/stands_bench [ROWS]     1,000 rows where nothing is said
//
// Columns: rows, threads, seconds of the clock, stands answered in a second, megabytes of
// answers written; below, the largest memory the program ever held.
#include <sys/resource.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "staddle/base/random.h"
#include "staddle/io/stands_answers.h"

namespace {

using staddle::StandsReader;

// The defaults of the format: up to two thinnings, guards on.
const char* const scenario = R"({"format": "staddle-scenario/1", "title": "County", "acres": 1,
  "economics": {"real_discount_rate": 0.05, "establishment_usd_ac": 350,
    "stumpage_usd_per_ton": {"pulpwood": 7, "chip_n_saw": 18, "sawtimber": 25}}})";

// Stands of 10 to 34 years on sites 60 to 80, one in ten bare land.
std::string table_of(int rows) {
  staddle::RandomStream random(2027, 7);
  std::string text = "name,acres,model,site_index_ft,planted_tpa,age_yr,tpa,basal_area_ft2_ac\n";
  char line[160];
  for (int i = 0; i < rows; ++i) {
    const double site = 60 + 20 * random.next_uniform();
    const int age = 10 + static_cast<int>(25 * random.next_uniform());
    const double share = random.next_uniform();
    const double tpa = 600 - 14 * age + 120 * share;
    const double basal_area = 70 + 2.5 * age * (0.5 + 0.5 * share);
    if (i % 10 == 9) {
      std::snprintf(line, sizeof line, "S%d,40,loblolly-planted-coastal,%.1f,600,,,\n", i, site);
    } else {
      std::snprintf(line, sizeof line, "S%d,40,loblolly-planted-coastal,%.1f,600,%d,%.0f,%.1f\n", i,
                    site, age, tpa, basal_area);
    }
    text += line;
  }
  return text;
}

void run_row(const std::string& table, unsigned threads) {
  auto reader = StandsReader::open({scenario, "county.json", table, "stands.csv"});
  staddle::StandsOptions options;
  options.threads = threads;
  double bytes = 0;
  const auto start = std::chrono::steady_clock::now();
  const staddle::StandsTally tally =
      staddle::answer_stands(reader.value(), options, [&](const std::string& line) {
        bytes += static_cast<double>(line.size());
        return true;
      });
  const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
  std::printf("%8zu %8u %9.2f %9.1f %9.1f\n", reader.value().size(), threads, taken.count(),
              static_cast<double>(tally.answered) / taken.count(), bytes / 1e6);
  if (tally.faulty > 0) std::printf("%zu rows without an answer\n", tally.faulty);
}

}  // namespace

int main(int argc, char** argv) {
  const int rows = argc > 1 ? std::atoi(argv[1]) : 1000;
  const std::string table = table_of(rows);
  std::printf("%8s %8s %9s %9s %9s\n", "rows", "threads", "seconds", "stands/s", "MB");
  run_row(table, 1);
  run_row(table, 2);
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  std::printf("largest memory: %ld MB\n", usage.ru_maxrss / 1024);
  return 0;
}
