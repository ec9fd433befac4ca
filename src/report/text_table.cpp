// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <numeric>

#include "report/wrap.h"
#include "staddle/base/contract.h"
#include "staddle/report/text.h"

namespace staddle {
namespace {

constexpr std::size_t gap = 2;
// Narrower than this, a column of words cannot be read.
constexpr std::size_t narrowest_words = 16;

using Lines = std::vector<std::string>;

// A table measured, then printed.
class TableText {
 public:
  explicit TableText(const Table& table) : table_(table) {
    for (const Column& column : table.columns) {
      const std::size_t longest = widest_line(lines_of_words(column.heading, 1));
      widths_.push_back(std::max(longest, width_of(column.unit)));
    }
    for (const auto& row : table.rows) {
      require(row.size() == table.columns.size(), "every row of a table has one cell per column");
      for (std::size_t i = 0; i < row.size(); ++i) {
        widths_[i] = std::max(widths_[i], width_of(row[i].text));
      }
    }
    make_room();
  }

  std::string print() const {
    std::string text = table_.title.empty() ? "" : table_.title + "\n";
    text += headings();
    if (std::ranges::any_of(table_.columns, [](const Column& c) { return !c.unit.empty(); })) {
      std::vector<Lines> units;
      for (const Column& column : table_.columns) units.push_back({column.unit});
      text += block(units);
    }
    text += std::string(total(), '-') + "\n";
    for (const auto& row : table_.rows) {
      std::vector<Lines> cells;
      for (std::size_t i = 0; i < row.size(); ++i) {
        cells.push_back(table_.columns[i].words ? lines_of_words(row[i].text, widths_[i])
                                                : Lines{row[i].text});
      }
      text += block(cells);
    }
    return text;
  }

 private:
  static std::size_t widest_line(const Lines& lines) {
    std::size_t widest = 0;
    for (const std::string& line : lines) widest = std::max(widest, width_of(line));
    return widest;
  }

  std::size_t total() const {
    return std::accumulate(widths_.begin(), widths_.end(), std::size_t{0}) +
           gap * (widths_.empty() ? 0 : widths_.size() - 1);
  }

  // Takes what is too much from the widest column of words, again and again.
  void make_room() {
    while (total() > text_width) {
      std::size_t widest = widths_.size();
      for (std::size_t i = 0; i < widths_.size(); ++i) {
        if (!table_.columns[i].words || widths_[i] <= narrowest_words) continue;
        if (widest == widths_.size() || widths_[i] > widths_[widest]) widest = i;
      }
      if (widest == widths_.size()) return;
      --widths_[widest];
    }
  }

  std::string headings() const {
    std::vector<Lines> cells;
    std::size_t most = 0;
    // A heading is broken as narrow as its column, so that numbers keep together.
    for (std::size_t i = 0; i < widths_.size(); ++i) {
      cells.push_back(lines_of_words(table_.columns[i].heading, widths_[i]));
      most = std::max(most, cells.back().size());
    }
    for (Lines& lines : cells) lines.insert(lines.begin(), most - lines.size(), "");
    return block(cells);
  }

  std::string block(const std::vector<Lines>& cells) const {
    std::size_t height = 0;
    for (const Lines& lines : cells) height = std::max(height, lines.size());
    std::string text;
    for (std::size_t at = 0; at < height; ++at) {
      std::string line;
      for (std::size_t i = 0; i < cells.size(); ++i) {
        const std::string part = at < cells[i].size() ? cells[i][at] : "";
        const std::size_t width = width_of(part);
        const std::string padding(widths_[i] > width ? widths_[i] - width : 0, ' ');
        if (i > 0) line += std::string(gap, ' ');
        line += table_.columns[i].words ? part + padding : padding + part;
      }
      line.erase(line.find_last_not_of(' ') + 1);
      text += line + "\n";
    }
    return text;
  }

  const Table& table_;
  std::vector<std::size_t> widths_;
};

}  // namespace

std::string to_text(const Table& table) { return TableText(table).print(); }

}  // namespace staddle
