// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "lp/linear_program.h"
#include "lp/solution.h"

namespace staddle::lp {

// A tiny program with its answer worked out by hand. Empty vectors where the answer has
// none, or more than one.
struct NamedProgram {
  std::string name;
  LinearProgram program;
  Status status;
  double value = 0.0;
  std::vector<double> columns = {};
  std::vector<double> duals = {};
  std::vector<double> reduced_costs = {};
};

inline LinearProgram make_program(Direction direction, const std::vector<Column>& columns,
                                  const std::vector<Row>& rows,
                                  const std::vector<std::vector<double>>& coefficients) {
  LinearProgram program{direction};
  for (const Column& column : columns) program.add_column(column);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    std::vector<Term> terms;
    for (std::size_t j = 0; j < columns.size(); ++j) {
      if (coefficients[i][j] != 0.0) terms.push_back({j, coefficients[i][j]});
    }
    program.add_row(rows[i], terms);
  }
  return program;
}

inline std::vector<NamedProgram> named_programs() {
  const auto least = Direction::minimise;
  const auto most = Direction::maximise;
  std::vector<NamedProgram> all;
  // max 3x + 5y; x <= 4; 2y <= 12; 3x + 2y <= 18. The last two bind:
  // 5 = 2 a + 2 b, 3 = 3 b, so b = 1, a = 3/2.
  all.push_back(
      {"three limits",
       make_program(most, {{.cost = 3}, {.cost = 5}}, {{.upper = 4}, {.upper = 12}, {.upper = 18}},
                    {{1, 0}, {0, 2}, {3, 2}}),
       Status::optimal,
       36,
       {2, 6},
       {0, 1.5, 1},
       {0, 0}});
  // min 2x + 3y; x + y >= 4; x + 3y >= 6. Both bind: a + b = 2, a + 3b = 3.
  all.push_back({"two needs",
                 make_program(least, {{.cost = 2}, {.cost = 3}}, {{.lower = 4}, {.lower = 6}},
                              {{1, 1}, {1, 3}}),
                 Status::optimal,
                 9,
                 {3, 1},
                 {1.5, 0.5},
                 {0, 0}});
  // min -x - 2y; x + y = 5; x <= 10; y <= 3. y stands at its upper bound; x sets the dual.
  all.push_back({"equality with an upper bound",
                 make_program(least, {{.cost = -1, .upper = 10}, {.cost = -2, .upper = 3}},
                              {{5, 5}}, {{1, 1}}),
                 Status::optimal,
                 -8,
                 {2, 3},
                 {-1},
                 {0, -1}});
  // min x; x free; x >= -7 as a row.
  all.push_back({"free column",
                 make_program(least, {{.cost = 1, .lower = -infinity}}, {{.lower = -7}}, {{1}}),
                 Status::optimal,
                 -7,
                 {-7},
                 {1},
                 {0}});
  // max x + y; 1 <= x - y <= 2; x <= 6. The row binds below: y = x - 1.
  all.push_back({"row with two bounds",
                 make_program(most, {{.cost = 1, .upper = 6}, {.cost = 1}}, {{1, 2}}, {{1, -1}}),
                 Status::optimal,
                 11,
                 {6, 5},
                 {-1},
                 {2, 0}});
  // max x + y; x + y <= 2; x <= 1; y <= 1: three lines through (1, 1), many duals.
  all.push_back({"degenerate corner",
                 make_program(most, {{.cost = 1}, {.cost = 1}},
                              {{.upper = 2}, {.upper = 1}, {.upper = 1}}, {{1, 1}, {1, 0}, {0, 1}}),
                 Status::optimal,
                 2,
                 {1, 1},
                 {},
                 {}});
  // min 0; x + y = 1: every point is as good.
  all.push_back({"nothing to win",
                 make_program(least, {{}, {}}, {{1, 1}}, {{1, 1}}),
                 Status::optimal,
                 0,
                 {},
                 {0},
                 {0, 0}});
  // min x - y + 10; 1 <= x <= 2; 0 <= y <= 3: no rows.
  all.push_back({"no rows",
                 make_program(least, {{1, 1, 2}, {-1, 0, 3}}, {}, {}),
                 Status::optimal,
                 8,
                 {1, 3},
                 {},
                 {1, -1}});
  all.back().program.constant = 10;
  all.push_back({"nothing at all", LinearProgram{least, {}, {}, {}, 5}, Status::optimal, 5});
  all.push_back(
      {"rows alone", make_program(least, {}, {{-1, 1}}, {{}}), Status::optimal, 0, {}, {0}, {}});
  // max 2x + y; x = 3 fixed; x + y <= 5.
  all.push_back({"fixed column",
                 make_program(most, {{2, 3, 3}, {.cost = 1}}, {{.upper = 5}}, {{1, 1}}),
                 Status::optimal,
                 8,
                 {3, 2},
                 {1},
                 {1, 0}});
  // x >= 2 and x <= 1, as rows.
  all.push_back({"contradicting rows",
                 make_program(least, {{.cost = 1}}, {{.lower = 2}, {.upper = 1}}, {{1}, {1}}),
                 Status::infeasible});
  all.push_back({"row out of reach of the bounds",
                 make_program(least, {{1, 0, 1}, {1, 0, 1}}, {{.lower = 2.001}}, {{1, 1}}),
                 Status::infeasible});
  all.push_back({"empty row that asks for more than nothing",
                 make_program(least, {{.cost = 1}}, {{.lower = 1}}, {{0}}), Status::infeasible});
  all.push_back(
      {"rows alone that cannot be", make_program(least, {}, {{1, 2}}, {{}}), Status::infeasible});
  // max x + y; x - y <= 1.
  all.push_back({"no limit",
                 make_program(most, {{.cost = 1}, {.cost = 1}}, {{.upper = 1}}, {{1, -1}}),
                 Status::unbounded});
  all.push_back({"no limit and no rows", make_program(least, {{-1, 0, infinity}}, {}, {}),
                 Status::unbounded});
  // max x; y >= 1; y <= 0: it would have no limit if it had a point.
  all.push_back(
      {"neither point nor limit",
       make_program(most, {{.cost = 1}, {}}, {{.lower = 1}, {.upper = 0}}, {{0, 1}, {0, 1}}),
       Status::infeasible});
  return all;
}

// max 10x + 6y + 4z; x + y + z <= 100; 10x + 4y + 5z <= 600; 2x + 2y + 6z <= 300.
inline LinearProgram header_example() {
  return make_program(Direction::maximise, {{.cost = 10}, {.cost = 6}, {.cost = 4}},
                      {{.upper = 100}, {.upper = 600}, {.upper = 300}},
                      {{1, 1, 1}, {10, 4, 5}, {2, 2, 6}});
}

}  // namespace staddle::lp
