// SPDX-License-Identifier: GPL-3.0-or-later
#include "numeric/student_t.h"

#include <boost/math/distributions/students_t.hpp>

#include "staddle/base/contract.h"

namespace staddle::numeric {

double two_sided_student_t(double probability, int degrees_of_freedom) {
  require(probability > 0.0 && probability < 1.0,
          "two_sided_student_t needs a probability between 0 and 1");
  require(degrees_of_freedom >= 1, "two_sided_student_t needs a degree of freedom");
  const boost::math::students_t distribution(degrees_of_freedom);
  const double one_tail = 0.5 * (1.0 - probability);
  return boost::math::quantile(boost::math::complement(distribution, one_tail));
}

}  // namespace staddle::numeric
