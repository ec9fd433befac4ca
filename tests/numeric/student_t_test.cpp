// SPDX-License-Identifier: GPL-3.0-or-later
#include "numeric/student_t.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "staddle/base/contract.h"

namespace staddle::numeric {
namespace {

TEST_CASE("Student quantiles agree with the printed table") {
  // NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.2 (from memory).
  CHECK(two_sided_student_t(0.90, 1) == Approx(6.314).margin(0.0005));
  CHECK(two_sided_student_t(0.95, 1) == Approx(12.706).margin(0.0005));
  CHECK(two_sided_student_t(0.90, 10) == Approx(1.812).margin(0.0005));
  CHECK(two_sided_student_t(0.95, 10) == Approx(2.228).margin(0.0005));
  CHECK(two_sided_student_t(0.99, 30) == Approx(2.750).margin(0.0005));
  CHECK(two_sided_student_t(0.95, 100) == Approx(1.984).margin(0.0005));
}

TEST_CASE("Student quantiles with one and two degrees have closed forms") {
  const double pi = std::acos(-1.0);
  for (const double p : {0.01, 0.5, 0.9, 0.999}) {
    CHECK(two_sided_student_t(p, 1) == Approx(std::tan(0.5 * pi * p)).epsilon(1e-12));
    CHECK(two_sided_student_t(p, 2) == Approx(p * std::sqrt(2.0 / (1.0 - p * p))).epsilon(1e-12));
  }
}

TEST_CASE("Student quantile refuses what is no probability or no degree") {
  CHECK_THROWS_AS(two_sided_student_t(0.0, 5), ContractViolation);
  CHECK_THROWS_AS(two_sided_student_t(1.0, 5), ContractViolation);
  CHECK_THROWS_AS(two_sided_student_t(std::nan(""), 5), ContractViolation);
  CHECK_THROWS_AS(two_sided_student_t(0.9, 0), ContractViolation);
}

}  // namespace
}  // namespace staddle::numeric
