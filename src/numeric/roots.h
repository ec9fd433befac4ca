// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <span>
#include <vector>

namespace staddle::numeric {

// An interval at whose ends a function has opposite signs; low == high where the
// function is exactly 0.
struct Bracket {
  double low;
  double high;
};

struct Root {
  double x;         // the end of the bracket with the smaller |f|; ties: the lower end
  Bracket bracket;  // high - low <= tolerance::root * max(1, |x|)
};

// The root of a continuous function inside a bracket, by algorithm 748 (Alefeld, Potra
// & Shi 1995, ACM Trans. Math. Softw. 21:327). Where several roots lie inside, one of
// them. Worked example: x^2 - 2 on [1, 2] gives 1.41421356237... within 1.5e-12.
//
// REQUIRES: -1e100 <= low <= high <= 1e100 (the algorithm squares differences);
// f finite on the bracket; f(low) and f(high) of opposite sign, or one of them 0.
Root find_root(const std::function<double(double)>& f, Bracket bracket);

// Every interval between neighbouring grid points over which f changes sign, in grid
// order; a grid point where f is exactly 0 comes once, as a bracket of width 0. A pair
// of roots between two neighbours is not seen: the grid must be finer than that.
// REQUIRES: grid strictly rising, f finite on it.
std::vector<Bracket> sign_changes(const std::function<double(double)>& f,
                                  std::span<const double> grid);

}  // namespace staddle::numeric
