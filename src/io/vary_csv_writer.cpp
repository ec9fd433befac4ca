// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <map>

#include "io/csv_writer.h"
#include "staddle/io/vary_writer.h"

namespace staddle {
namespace {

constexpr std::array vary_columns = {"kind",
                                     "name",
                                     "real_discount_rate",
                                     "price_scenario",
                                     "parameter",
                                     "value",
                                     "y_parameter",
                                     "y_value",
                                     "thinnings",
                                     "final_harvest_age_yr",
                                     "value_usd_ac",
                                     "plan_held_usd_ac",
                                     "loss_usd_ac",
                                     "unit",
                                     "bracket_low",
                                     "bracket_high",
                                     "reason"};

// One line of the one table: what is not set stays empty.
class Line {
 public:
  explicit Line(const std::string& kind) { set("kind", kind); }

  Line& set(const std::string& column, const std::string& text) {
    cells_[column] = text;
    return *this;
  }
  Line& set(const std::string& column, double number) { return set(column, csv::number(number)); }
  Line& set(const std::string& column, const std::optional<MoneyPerAcre>& amount) {
    return amount ? set(column, amount->in(dollars_per_acre)) : *this;
  }
  // "15:0.4 21:0.3", ages and shares of basal area.
  Line& set_plan(const Regime& regime) {
    std::string text;
    for (const Thinning& thinning : regime.thinnings) {
      if (!text.empty()) text += ' ';
      text += csv::number(thinning.at.in(years)) + ":" + csv::number(thinning.removal_fraction);
    }
    set("thinnings", text);
    return set("final_harvest_age_yr", regime.final_harvest.in(years));
  }
  Line& set_answer(const VaryAnswer& answer) {
    if (answer.best) set_plan(answer.best->regime);
    set("value_usd_ac", answer.value());
    return set("reason", answer.reason);
  }

  std::string text() const {
    std::vector<std::string> cells;
    for (const char* column : vary_columns) {
      const auto cell = cells_.find(column);
      cells.push_back(cell == cells_.end() ? "" : cell->second);
    }
    return csv::line(cells);
  }

 private:
  std::map<std::string, std::string> cells_;
};

std::string lines_of_cells(const VarySolution& solution) {
  std::string text;
  const auto place = [&](Line& line, const VaryCell& cell) -> Line& {
    return line.set("real_discount_rate", cell.rate.per_year())
        .set("price_scenario", solution.price_scenarios[cell.price_scenario].name);
  };
  for (const VaryCell& cell : solution.cells) {
    Line line("cell");
    text += place(line, cell).set_answer(cell.answer).text();
  }
  for (const RegimeLosses& row : solution.regimes) {
    for (std::size_t i = 0; i < solution.cells.size(); ++i) {
      Line line("regime");
      place(line, solution.cells[i]).set("name", row.name).set_plan(row.regime);
      text += line.set("loss_usd_ac", row.loss[i]).text();
    }
  }
  return text;
}

std::string lines_of_grid(const GridAnswer& grid) {
  std::string text;
  const ParameterValues &x = grid.question.x, &y = grid.question.y;
  for (std::size_t row = 0; row < y.values.size(); ++row) {
    for (std::size_t column = 0; column < x.values.size(); ++column) {
      Line line("grid");
      line.set("parameter", x.parameter.name).set("value", x.values[column]);
      line.set("y_parameter", y.parameter.name).set("y_value", y.values[row]);
      text += line.set_answer(grid.cells[row][column]).text();
    }
  }
  return text;
}

std::string lines_of_spans(const VarySolution& solution) {
  std::string text;
  for (const OneAtATime& row : solution.one_at_a_time) {
    for (std::size_t end = 0; end < 2; ++end) {
      Line line("one_at_a_time");
      line.set("parameter", row.span.parameter.name);
      line.set("value", end == 0 ? row.span.low : row.span.high);
      line.set_answer(row.reoptimised[end]);
      text += line.set("plan_held_usd_ac", row.plan_held[end]).text();
    }
  }
  return text;
}

std::string lines_of_break_evens(const VarySolution& solution) {
  std::string text;
  for (const BreakEven& entry : solution.break_evens) {
    Line line("break_even");
    line.set("name", entry.what).set("parameter", entry.parameter).set("unit", entry.unit);
    if (entry.value) line.set("value", *entry.value);
    if (entry.bracket) {
      line.set("bracket_low", (*entry.bracket)[0]).set("bracket_high", (*entry.bracket)[1]);
    }
    text += line.set("reason", entry.reason).text();
  }
  return text;
}

}  // namespace

std::string vary_csv(const VarySolution& solution) {
  std::string text = csv::line({vary_columns.begin(), vary_columns.end()});
  text += lines_of_cells(solution);
  if (solution.grid) text += lines_of_grid(*solution.grid);
  return text + lines_of_spans(solution) + lines_of_break_evens(solution);
}

}  // namespace staddle
