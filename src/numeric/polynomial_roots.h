// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "numeric/roots.h"

namespace staddle::numeric {

// All positive roots of p(x) = sum of coefficients[k] x^k inside an open interval,
// rising, by the argument behind Descartes' rule of signs turned into an algorithm:
//
//   Let the coefficients (zeros left out) change sign V times, once between the powers
//   s < t. Then q(x) = sum of (k - (s + t)/2) c_k x^k has the powers of p and V - 1
//   changes of sign, and a positive multiple of it is the derivative of x^(-(s+t)/2) p(x),
//   which has the roots of p. So between two neighbouring roots of q, p has at most one
//   root, found by its sign at the two. V = 0: no root. V + 1 such polynomials suffice.
//
// Worked example: p = 2 - 3x + x^2, V = 2. First change between powers 0 and 1:
//   q = -0.5 (2) + 0.5 (-3) x + 1.5 x^2 = -1 - 1.5 x + 1.5 x^2, V = 1.
//   Its change lies between powers 1 and 2; the next one has V = 0: no root.
//   q has one root, 1.4574; p is 2 at 0, negative there, and rises for ever: roots 1, 2.
//
// What is guaranteed: no root is missed, however close to another one, as far as the
// sign of p can be told from rounding: |p(x)| > 4 (degree + 1) epsilon sum |c_k| x^k.
// Where it cannot, at a root of q, that x is reported once: p touches 0 there, or crosses
// it several times too closely to be told apart. Neighbouring x of that kind come as one.
// Every root is as narrow as find_root makes it. The ends do not belong to the interval.
//
// Cost: about (V + 1)^2 / 2 calls of find_root at most, each a dozen times the degree.
//
// REQUIRES: finite coefficients; 0 < interval.low < interval.high, finite.
std::vector<double> positive_roots(std::span<const double> coefficients, Bracket interval);

}  // namespace staddle::numeric
