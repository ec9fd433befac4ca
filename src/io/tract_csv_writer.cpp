// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <map>

#include "io/csv_writer.h"
#include "staddle/io/tract_writer.h"

namespace staddle {
namespace {

constexpr std::array tract_columns = {"kind",
                                      "from_year",
                                      "to_year",
                                      "stand",
                                      "what",
                                      "acres",
                                      "thinnings",
                                      "final_harvest_age_yr",
                                      "present_value_usd_ac",
                                      "income_usd",
                                      "cost_usd",
                                      "final_harvest_acres",
                                      "removal_fraction"};

class TractTable {
 public:
  explicit TractTable(const TractSolution& solution) : solution_(solution) {}

  std::string text() const {
    std::vector<std::string> head(tract_columns.begin(), tract_columns.end());
    for (const std::string& product : solution_.products) head.push_back(product + "_tons");
    std::string text = csv::line(head);
    for (const TractPeriod& span : solution_.periods)
      text += line(period("period", span), span.tons);
    for (const TractPeriod& span : solution_.years) text += line(period("year", span), span.tons);
    for (const StandSchedule& stand : solution_.stands) {
      for (const RegimeShare& share : stand.regimes) text += line(regime(stand, share), {});
    }
    for (const TractAction& job : solution_.actions) text += line(action(job), job.tons);
    return text;
  }

 private:
  using Cells = std::map<std::string, std::string>;

  static Cells period(const char* kind, const TractPeriod& span) {
    return {{"kind", kind},
            {"from_year", csv::number(span.from_year)},
            {"to_year", csv::number(span.to_year)},
            {"income_usd", csv::number(span.income.in(dollars))},
            {"cost_usd", csv::number(span.cost.in(dollars))},
            {"final_harvest_acres", csv::number(span.final_harvest_acres.in(acres))}};
  }

  // Thinnings as "15:0.4 21:0.3", ages and shares of basal area.
  static Cells regime(const StandSchedule& stand, const RegimeShare& share) {
    std::string thinnings;
    for (const ThinningRecord& cut : share.report.thinnings) {
      if (!thinnings.empty()) thinnings += ' ';
      thinnings += csv::number(cut.at.in(years)) + ":" + csv::number(cut.removal_fraction);
    }
    return {{"kind", "stand"},
            {"stand", stand.name},
            {"acres", csv::number(share.acres.in(acres))},
            {"thinnings", thinnings},
            {"final_harvest_age_yr", csv::number(share.report.final_harvest_age.in(years))},
            {"present_value_usd_ac", csv::number(share.present_value.in(dollars_per_acre))}};
  }

  Cells action(const TractAction& job) const {
    using Kind = TractAction::Kind;
    const bool thinning = job.kind == Kind::thinning;
    const bool income = job.money >= Money();
    Cells cells{{"kind", "job"},
                {"from_year", csv::number(job.year)},
                {"to_year", csv::number(job.year)},
                {"stand", solution_.stands.at(job.stand).name},
                {"what", thinning                          ? "thinning"
                         : job.kind == Kind::final_harvest ? "final harvest"
                                                           : "planting"},
                {"acres", csv::number(job.acres.in(acres))}};
    cells[income ? "income_usd" : "cost_usd"] =
        csv::number(income ? job.money.in(dollars) : -job.money.in(dollars));
    if (thinning) cells["removal_fraction"] = csv::number(job.removal_fraction);
    return cells;
  }

  std::string line(const Cells& cells, const std::vector<Weight>& tons_by_product) const {
    std::vector<std::string> row;
    for (const char* column : tract_columns) {
      const auto cell = cells.find(column);
      row.push_back(cell == cells.end() ? "" : cell->second);
    }
    for (std::size_t i = 0; i < solution_.products.size(); ++i) {
      row.push_back(i < tons_by_product.size() ? csv::number(tons_by_product[i].in(tons)) : "");
    }
    return csv::line(row);
  }

  const TractSolution& solution_;
};

}  // namespace

std::string tract_csv(const TractSolution& solution) { return TractTable(solution).text(); }

}  // namespace staddle
