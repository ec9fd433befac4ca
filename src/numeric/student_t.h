// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace staddle::numeric {

// The t for which a Student variable lies in [-t, t] with the given probability: the
// half width, in standard errors, of a confidence interval for a mean.
// Worked example: two_sided_student_t(0.95, 10) = 2.228 (any printed table).
// REQUIRES: 0 < probability < 1, degrees_of_freedom >= 1.
double two_sided_student_t(double probability, int degrees_of_freedom);

}  // namespace staddle::numeric
