// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "cruise/sampling.h"
#include "cruise/tally_fixture.h"
#include "support/near.h"
#include "support/not_run.h"
#include "support/program.h"
#include "support/seed.h"

// The sampling formulas against SciPy, live.
namespace staddle {
namespace {

using support::relative;
using support::two_methods;

constexpr const char* python = "/usr/bin/python3";

// Asked through the shell, which fails where there is no such program.
bool scipy_is_there() {
  return support::run_program("/bin/sh", {"-c", "/usr/bin/python3 -c 'import scipy'"}).exit_code ==
         0;
}

std::vector<double> ask(const std::string& script, const std::string& input) {
  const support::Run run = support::run_program(python, {"-c", script}, input);
  INFO(run.err);
  REQUIRE(run.exit_code == 0);
  std::istringstream words(run.out);
  std::vector<double> numbers;
  for (double number; words >> number;) numbers.push_back(number);
  return numbers;
}

std::vector<double> draw(RandomStream& random, std::size_t count) {
  std::vector<double> values;
  for (std::size_t i = 0; i < count; ++i) {
    values.push_back(10.0 * static_cast<double>(random.next_below(20)));
  }
  values.front() += 5.0;  // never all alike
  return values;
}

std::string as_words(const std::vector<double>& values) {
  std::ostringstream out;
  out.precision(17);
  for (const double value : values) out << ' ' << value;
  return out.str();
}

TEST_CASE("mean and error and interval of one stratum are those of SciPy") {
  if (!scipy_is_there()) return support::not_run("python3-scipy is not installed");
  const support::TaggedSeed seed("one stratum against scipy");
  RandomStream random = seed.stream();
  std::string input;
  std::vector<SampleMean> ours;
  for (int trial = 0; trial < 40; ++trial) {
    const std::vector<double> values = draw(random, 2 + random.next_below(40));
    input += as_words(values) + "\n";
    ours.push_back(sample_mean({{1.0, values}}));
  }
  const std::vector<double> theirs = ask(R"(
import sys
import numpy as np
from scipy import stats
for line in sys.stdin:
    x = np.array(line.split(), dtype=float)
    low90, high90 = stats.t.interval(0.90, len(x) - 1, loc=x.mean(), scale=stats.sem(x))
    low95, high95 = stats.t.interval(0.95, len(x) - 1, loc=x.mean(), scale=stats.sem(x))
    cv = stats.variation(x, ddof=1)
    print(*(repr(float(v)) for v in (x.mean(), stats.sem(x), cv, low90, high90, low95, high95)))
)",
                                         input);
  REQUIRE(theirs.size() == 7 * ours.size());
  for (std::size_t i = 0; i < ours.size(); ++i) {
    CAPTURE(i);
    const double* row = &theirs[7 * i];
    CHECK(ours[i].mean == relative(row[0], two_methods));
    CHECK(ours[i].standard_error == relative(row[1], two_methods));
    CHECK(ours[i].spread / ours[i].mean == relative(row[2], two_methods));
    const auto [low90, high90] = interval_of(ours[i], 0.90);
    const auto [low95, high95] = interval_of(ours[i], 0.95);
    const double scale = 1e-8 * (1 + row[6]);
    CHECK(low90 == support::within(row[3], scale));
    CHECK(high90 == support::within(row[4], scale));
    CHECK(low95 == support::within(row[5], scale));
    CHECK(high95 == support::within(row[6], scale));
  }
}

TEST_CASE("strata add up as in an independent calculation with SciPy") {
  if (!scipy_is_there()) return support::not_run("python3-scipy is not installed");
  const support::TaggedSeed seed("strata against scipy");
  RandomStream random = seed.stream();
  std::string input;
  std::vector<SampleMean> ours;
  for (int trial = 0; trial < 40; ++trial) {
    const double weight = 0.1 + 0.8 * random.next_uniform();
    const std::vector<double> a = draw(random, 2 + random.next_below(20));
    const std::vector<double> b = draw(random, 2 + random.next_below(20));
    input += as_words({weight, static_cast<double>(a.size())}) + as_words(a) + as_words(b) + "\n";
    ours.push_back(sample_mean({{weight, a}, {1.0 - weight, b}}));
  }
  // Weighted values of a stratum have the variance of its part of the mean.
  const std::vector<double> theirs = ask(R"(
import math
import sys
import numpy as np
from scipy import stats
for line in sys.stdin:
    words = np.array(line.split(), dtype=float)
    w, n = words[0], int(words[1])
    parts = [w * words[2:2 + n], (1 - w) * words[2 + n:]]
    var = [stats.sem(p) ** 2 for p in parts]
    df = math.floor(sum(var) ** 2 / sum(v * v / (len(p) - 1) for v, p in zip(var, parts)))
    mean, error = sum(p.mean() for p in parts), math.sqrt(sum(var))
    print(repr(float(mean)), repr(error), df, repr(float(stats.t.ppf(0.95, df) * error)))
)",
                                         input);
  REQUIRE(theirs.size() == 4 * ours.size());
  for (std::size_t i = 0; i < ours.size(); ++i) {
    CAPTURE(i);
    const double* row = &theirs[4 * i];
    CHECK(ours[i].mean == relative(row[0], two_methods));
    CHECK(ours[i].standard_error == relative(row[1], two_methods));
    CHECK(ours[i].degrees_of_freedom == row[2]);
    const auto [low, high] = interval_of(ours[i], 0.90);
    CHECK(0.5 * (high - low) == relative(row[3], two_methods));
  }
}

TEST_CASE("plots needed are those that a search with SciPy finds") {
  if (!scipy_is_there()) return support::not_run("python3-scipy is not installed");
  std::string input;
  std::vector<int> ours;
  for (const double cv : {0.02, 0.15, 0.30, 0.55, 1.1}) {
    for (const double error : {0.05, 0.10, 0.20}) {
      for (const double confidence : {0.80, 0.90, 0.95}) {
        input += as_words({cv, error, confidence}) + "\n";
        ours.push_back(plots_needed(cv, 1, error, confidence).value());
      }
    }
  }
  const std::vector<double> theirs = ask(R"(
import sys
from scipy import stats
for line in sys.stdin:
    cv, error, confidence = map(float, line.split())
    n = 2
    while stats.t.ppf(0.5 + confidence / 2, n - 1) * cv / n ** 0.5 > error:
        n += 1
    print(n)
)",
                                         input);
  REQUIRE(theirs.size() == ours.size());
  for (std::size_t i = 0; i < ours.size(); ++i) CHECK(ours[i] == theirs[i]);
}

TEST_CASE("the height curve is SciPy's line through the transformed heights") {
  if (!scipy_is_there()) return support::not_run("python3-scipy is not installed");
  const support::TaggedSeed seed("height curve against scipy");
  RandomStream random = seed.stream();
  Tally tally{cruise_test::prism(10), {{"1", "", {}}}, {}};
  std::string input;
  for (int i = 0; i < 30; ++i) {
    const double dbh_in = 4 + 10 * random.next_uniform();
    const double height_ft = 30 + 3 * dbh_in + 6 * random.next_uniform();
    tally.plots[0].trees.push_back(cruise_test::tree(dbh_in, height_ft));
    input += as_words({dbh_in, height_ft}) + "\n";
  }
  const Appraisal appraisal = appraise(cruise_test::problem_of(tally));
  const std::vector<double> theirs = ask(R"(
import sys
import numpy as np
from scipy import stats
x = np.array([line.split() for line in sys.stdin], dtype=float)
fit = stats.linregress(1 / x[:, 0], np.log(x[:, 1] - 4.5))
print(repr(float(fit.intercept)), repr(float(fit.slope)))
)",
                                         input);
  REQUIRE(appraisal.height_curve);
  CHECK(appraisal.height_curve->intercept == relative(theirs.at(0), two_methods));
  CHECK(appraisal.height_curve->slope_in == relative(theirs.at(1), two_methods));
}

}  // namespace
}  // namespace staddle
