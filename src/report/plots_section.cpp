// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "report/answer.h"
#include "report/cells.h"
#include "report/plan_words.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

std::string verdict(const PlotsAnswer& answer, const PlotSample& sample) {
  const auto basal_area = [](BasalArea area) {
    return words::number(area.in(square_feet_per_acre));
  };
  std::string text = fmt::format(
      "The stand was measured on {} plots, which put its basal area between {} and {} square feet "
      "with 90 percent confidence. ",
      sample.plots, basal_area(answer.low.basal_area), basal_area(answer.high.basal_area));
  if (answer.same_advice) return text + "The advice is the same at both ends.";
  text += "The advice is not the same over all of that";
  if (!answer.more_plots) {
    return text +
           ": it changes so near the mean that plots cannot settle it; the plans on both "
           "sides are worth about as much.";
  }
  return text +
         fmt::format("; about {} more plots would settle it.", words::number(*answer.more_plots));
}

std::vector<Cell> row_of(const Answer& answer, const char* name, const PlotsAnswer::End& end) {
  return {cells::words(name), cells::number(end.basal_area.in(square_feet_per_acre)),
          cells::words(end.best ? plan_in_words(answer.dates, end.best->regime)
                                : "no plan keeps to the limits"),
          end.best ? cells::per_acre(end.best->value.objective) : cells::blank()};
}

}  // namespace

std::optional<Section> plots_section(const Answer& answer) {
  const auto& plots = answer.advice.plots;
  const auto& sample = answer.scenario.stand.plots;
  if (!plots || !sample) return std::nullopt;
  Section section{"Is the advice sure on so many plots?", {verdict(*plots, *sample)}, {}, {}};
  Table table{
      "",
      {{"", "", true}, {"basal area", "sq ft/acre"}, {"best plan", "", true}, {"worth", "$/acre"}},
      {}};
  const PlotsAnswer::End mean{sample->measured.basal_area, answer.advice.best_plan};
  table.rows.push_back(row_of(answer, "low end", plots->low));
  table.rows.push_back(row_of(answer, "mean", mean));
  table.rows.push_back(row_of(answer, "high end", plots->high));
  section.tables.push_back(std::move(table));
  return section;
}

}  // namespace staddle
