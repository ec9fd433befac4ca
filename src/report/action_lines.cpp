// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "report/answer.h"
#include "report/what_to_do.h"
#include "signs/counted_words.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

constexpr double tons_per_truck = 25.0;  // common practice, no source

// Tons of a whole tract; the last digit of hundreds of tons means nothing.
std::string tract_tons(double whole) {
  constexpr double coarse_from = 100.0;
  constexpr double step = 10.0;
  return words::number(whole < coarse_from ? whole : step * std::round(whole / step));
}

// "about 27 tons an acre (...), in all 1,670 tons or 67 truckloads of 25 tons, and brings ..."
std::string yields(const Answer& answer, const std::vector<Yield>& cut, MoneyPerAcre revenue,
                   double share_standing) {
  const Yield sum = answer.total(cut);
  const double whole = share_standing * (sum * answer.area()).in(tons);
  const std::string in_all = tract_tons(whole);
  const double trucks = std::max(1.0, std::round(whole / tons_per_truck));
  const std::string share = words::percent(share_standing);
  return fmt::format("about {} an acre ({}), in all {} {} or {} of 25 tons, and {} {} after fees{}",
                     words::counted(sum.in(tons_per_acre), "ton"), answer.by_product(cut), in_all,
                     words::named_beside(in_all, "ton"), words::counted(trucks, "truckload"),
                     revenue < dollars_per_acre(0) ? "costs" : "brings",
                     answer.both(revenue, share_standing),
                     share == words::percent(1.0)
                         ? ""
                         : fmt::format(", on the {} of the acres that storms leave on average",
                                       share));
}

std::string entry(const Answer& answer, const ThinningRecord& cut) {
  return fmt::format("{}: it takes {} of the basal area, from {} down to {} square feet and {} "
                     "trees an acre, yields {}",
                     answer.dates.in(cut.at), words::removal(cut.removal_fraction),
                     square_feet(cut.before.basal_area), square_feet(cut.after.basal_area),
                     trees(cut.after.trees),
                     yields(answer, cut.tons, cut.revenue, cut.share_standing));
}

std::string it_yields(const Answer& answer) {
  const RegimeReport& best = answer.advice.best;
  switch (answer.action) {
    case Action::thin:
    case Action::thin_soon: {
      const ThinningRecord& cut = *answer.cuts.front();
      return fmt::format("{} yields {}.",
                         answer.action == Action::thin
                             ? "It"
                             : fmt::format("Done {}, it", answer.dates.in(cut.at)),
                         yields(answer, cut.tons, cut.revenue, cut.share_standing));
    }
    case Action::sell:
    case Action::sell_soon:
      return fmt::format("{} yields {}.",
                         answer.action == Action::sell
                             ? "It"
                             : fmt::format("Sold {}, it", answer.dates.in(answer.final_age())),
                         yields(answer, best.final_harvest.tons, best.final_harvest.revenue,
                                best.final_harvest.share_standing));
    case Action::plant: {
      const Costs& costs = answer.scenario.costs;
      std::string text = fmt::format("Planting costs {}", answer.both(costs.establishment));
      for (const Practice& practice : costs.practices) {
        text += fmt::format("; {} {}, another {} an acre", practice.what,
                            answer.dates.in(practice.at), words::size_of(practice.cost));
      }
      if (costs.annual_cost > dollars_per_acre(0)) {
        text += fmt::format("; taxes and care, ${:.4g} an acre every year",
                            costs.annual_cost.in(dollars_per_acre));
      }
      return text + ".";
    }
    case Action::nothing:
      break;
  }
  return "So this season yields no timber and no income.";
}

std::string next_entries(const Answer& answer) {
  const bool first_is_told = answer.action == Action::thin || answer.action == Action::thin_soon;
  const std::size_t first = first_is_told ? 1 : 0;
  if (answer.action == Action::sell)
    return "After the harvest the land is free for the next stand.";
  if (answer.cuts.size() <= first) {
    return first_is_told ? "No other thinning follows." : "No thinning is planned.";
  }
  std::string text = first == 0 && !answer.thinned_before() ? "The first thinning comes "
                                                            : "The next thinning comes ";
  for (std::size_t i = first; i < answer.cuts.size(); ++i) {
    if (i > first) text += " Another follows ";
    text += entry(answer, *answer.cuts[i]) + ".";
    if (i == 0) text += " " + words::capital(pattern(answer, *answer.cuts[i])) + ".";
  }
  return text;
}

std::string final_harvest(const Answer& answer) {
  const HarvestRecord& harvest = answer.advice.best.final_harvest;
  if (answer.action == Action::sell) return "The sale of this season is the final harvest.";
  if (answer.action == Action::sell_soon) {
    return fmt::format("That sale is the final harvest, {}.", answer.dates.in(answer.final_age()));
  }
  return fmt::format("The final harvest comes {}: it yields {}.",
                     answer.dates.in(answer.final_age()),
                     yields(answer, harvest.tons, harvest.revenue, harvest.share_standing));
}

std::string stand_text(const Answer& answer) {
  const Scenario& scenario = answer.scenario;
  const std::string acres_text = words::acres_of(scenario.area);
  const auto& site_index = scenario.stand.site_index;
  const std::string site =
      site_index ? fmt::format("site index {} feet at age 25", words::number(site_index->in(feet)))
                 : "growth by the owner's yield table";
  if (!scenario.is_standing()) {
    return fmt::format("{} of bare land for {}, {}; nothing was measured here, the site is "
                       "taken as given.",
                       acres_text, answer.species(), site);
  }
  const StandMeasures& now = answer.advice.best.years.front().measures;
  const MeasuredStand& stand = *scenario.stand.standing;
  std::string text = fmt::format(
      "{} of {}, {} old{}: {} trees and {} square feet of basal area an acre, {} "
      "inches "
      "in mean diameter, {} feet tall",
      acres_text, answer.species(), words::counted(stand.at.in(years), "year"),
      answer.dates.calendar() ? fmt::format(" in {}", answer.dates.year_of(stand.at)) : "",
      trees(now.trees), square_feet(now.basal_area),
      words::number(now.quadratic_mean_diameter.in(inches), 1),
      words::number(now.dominant_height.in(feet)));
  if (now.live_crown_ratio) {
    text += fmt::format(", live crown {}{}", words::percent(*now.live_crown_ratio),
                        stand.live_crown_ratio ? "" : " by equation");
  }
  text += fmt::format("; {}; ", site);
  text += scenario.stand.measured_in
              ? fmt::format("measured in {} and grown to the present, unthinned.",
                            scenario.stand.measured_in->whole())
              : "averages as the owner gives them, not measured by plots here.";
  return text;
}

}  // namespace

std::vector<Line> action_lines(const Answer& answer) {
  return {{1, stand_text(answer)},
          {2, what_to_do(answer)},
          {3, it_yields(answer)},
          {4, next_entries(answer)},
          {5, final_harvest(answer)}};
}

}  // namespace staddle
