// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace staddle {

// Rows of coefficients from which those that another row beats all over a box of vectors
// are dropped; what is left holds every row that is within the slack of the best anywhere
// in the box.
class DominanceFilter {
 public:
  // `points`: the vectors, one after the other, whose bounding box it is.
  DominanceFilter(std::size_t width, std::span<const double> points);

  void offer(const double* row, std::size_t stretch, int final_yr);
  // No further rows.
  void finish();

  struct Row {
    std::size_t stretch;
    int final_yr;
  };
  std::size_t width() const { return width_; }
  std::size_t size() const { return rows_.size(); }
  const Row& row(std::size_t place) const { return rows_[place]; }
  const double* coefficients(std::size_t place) const {
    return coefficients_.data() + place * width_;
  }

 private:
  // A row known to be good somewhere, and the value that a worse one must stay below.
  struct Pivot {
    std::vector<double> coefficients;
    double slack;
  };
  bool beaten_by(const double* row, const Pivot& pivot) const;
  bool beaten(const double* row) const;
  Pivot pivot_of(std::size_t place) const;
  double value_at(std::size_t place, const double* point) const;
  void choose_pivots();
  void drop_beaten();

  std::size_t width_;
  std::vector<double> centre_, half_width_;
  std::vector<std::vector<double>> probes_;  // where pivots are sought
  std::vector<Row> rows_;
  std::vector<double> coefficients_;
  std::vector<Pivot> pivots_;
  std::size_t drop_at_;
};

}  // namespace staddle
