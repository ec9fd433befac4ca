// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "lp/solve.h"
#include "tract/tract_column.h"

namespace staddle {

// The linear program of a tract over the regimes known so far:
//   maximise    sum over columns of value x acres
//   subject to  acres of a stand's columns sum to the stand's         one row a stand
//               sum of uses x acres, and what the limit gives way     one row a limit
//               by, within the limit
// What a limit gives way by is a column of its own, so that the program has an answer
// from the first round on.
class Master {
 public:
  // What giving way costs, and what the value is.
  enum class Stage {
    penalised,  // so much of present value that it is not worth while where limits can be met
    relaxing,   // the sum of what limits give way, as shares of what is asked, and nothing else
    settled,    // nothing, up to the amounts allowed
  };

  Master(const std::vector<StandModel>& models, const Limits& limits);

  void set_stage(Stage stage);
  Stage stage() const { return stage_; }
  // What each limit may give way by from Stage::settled on; 0 before this is called.
  void allow_to_give_way(const std::vector<double>& by_row);

  // Whether it was not there yet.
  bool add(TractColumn column);
  bool knows(std::size_t stand, const Regime& regime) const;
  const std::vector<TractColumn>& columns() const { return columns_; }

  // Returns the status; a solution without a point leaves the last one as it was.
  lp::Status solve(const lp::Options& options);
  bool has_point() const { return !acres_.empty(); }

  // Of the last solution that had a point.
  double value() const { return value_; }                              // of this stage
  double present_value() const;                                        // whatever limits give way
  const std::vector<double>& acres() const { return acres_; }          // by column
  const std::vector<double>& given_way() const { return given_way_; }  // by limit
  const std::vector<double>& worths() const { return worths_; }        // of a unit used, by limit
  double price_of_acre(std::size_t stand) const { return price_of_acre_[stand]; }
  const std::string& message() const { return message_; }

  // What giving way counts, at most: the amounts above which it is no rounding.
  bool keeps_limits() const;
  double scale_of(std::size_t row) const { return scales_[row]; }

  // The most that a plan can be worth when each stand's best acre is worth best_worth at
  // `worths`, what limits give way included.
  double bound_at(const std::vector<double>& worths, const std::vector<double>& best_worth) const;
  double value_of_column(const TractColumn& column) const {
    return stage_ == Stage::relaxing ? 0.0 : column.value;
  }
  const std::vector<double>& allowed() const { return allowed_; }

 private:
  lp::Column slack_column(std::size_t row) const;

  const std::vector<StandModel>& models_;
  const Limits& limits_;
  Stage stage_ = Stage::penalised;
  std::vector<double> scales_, penalties_, allowed_;
  double share_cost_ = 0.0;  // of giving way by all that is asked, while relaxing
  std::vector<TractColumn> columns_;
  std::vector<std::vector<std::size_t>> of_stand_;
  lp::LinearProgramSolver solver_;

  double value_ = 0.0;
  std::vector<double> acres_, given_way_, worths_, price_of_acre_;
  std::string message_;
};

}  // namespace staddle
