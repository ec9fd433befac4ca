// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/storm_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "report/cells.h"
#include "report/plan_words.h"
#include "signs/plain_words.h"
#include "staddle/report/text.h"

namespace staddle {
namespace {

using Told = StormForecast::Told;

// The mean of the futures strays farther from the expected value than this many standard
// errors once in about 370 cases.
constexpr double suspicious_errors = 3.0;

// A scenario and its futures, told section by section.
class StormTelling {
 public:
  StormTelling(const Scenario& scenario, const StormForecast& forecast)
      : scenario_(scenario), forecast_(forecast), dates_(scenario) {}

  Report tell() const {
    Report report;
    report.title = scenario_.title + ": what storms may do";
    report.head = {zone(), futures()};
    report.sections = {best(), plans()};
    if (scenario_.tax) report.sections.push_back(after_tax());
    report.sections.push_back(agreement());
    report.sections.push_back(years());
    report.foot =
        "The arithmetic is exact; the storms are not. How often they come, what they destroy, how "
        "much worse a thinned stand fares and how fast that passes are assumptions, and no one "
        "can say what will happen to this stand.";
    return report;
  }

 private:
  std::string zone() const {
    const Hazard& hazard = scenario_.hazard;
    std::string chances;
    for (const Peril& peril : hazard.perils) {
      chances += (chances.empty() ? "" : "; ") + words::peril(peril.name) + ": " +
                 words::chance(peril.annual_probability);
    }
    return fmt::format("{}. Chance that a storm strikes the stand in any one year (assumptions): "
                       "{}.", hazard.zone == "own" ? "Own perils" : "Storm zone " + hazard.zone,
                       chances);
  }

  std::string futures() const {
    return fmt::format("{} futures were drawn (seed {}): each is one course of storms from {} to "
                       "the final harvest, the same storms for every plan. A future's value is in "
                       "today's money, the land that follows included.",
                       words::number(static_cast<double>(forecast_.asked.futures)),
                       forecast_.asked.seed, forecast_.standing ? "now" : "planting");
  }

  Section best() const {
    const Told& told = forecast_.regimes.front();
    const RegimeFutures& futures = told.futures;
    Section section{"The best plan in good and bad luck", {}, {}, {}};
    section.paragraphs.push_back(
        fmt::format("The best plan is {}. It is worth {} an acre on average over all storms. {}",
                    plan_in_words(dates_, told.plan.regime), words::money(futures.expected_value),
                    luck(futures.quantiles)));
    section.paragraphs.push_back(half_lost(futures) + worst(futures));
    if (futures.choices) section.paragraphs.push_back(choices(futures));
    return section;
  }

  // Where most futures are calm, the upper quantiles are all the calm value.
  static std::string luck(const RegimeFutures::Quantiles& values) {
    std::string text = fmt::format("One future in twenty brings {} an acre or less, one in four "
                                   "{} or less; half of them bring {} or more",
                                   words::money(values.p05), words::money(values.p25),
                                   words::money(values.p50));
    if (words::money(values.p95) == words::money(values.p50)) {
      return text + ", but hardly any more.";
    }
    return text + fmt::format(", one in four {} or more, one in twenty {} or more.",
                              words::money(values.p75), words::money(values.p95));
  }

  std::string half_lost(const RegimeFutures& futures) const {
    return fmt::format("In {} of the futures storms take at least half of the stand before the "
                       "final harvest. ", words::percent(futures.chance_half_lost));
  }

  std::string worst(const RegimeFutures& futures) const {
    if (!futures.worst_event) return "No storm of any future destroyed anything.";
    return fmt::format("The worst single storm of all futures is {} {}: it costs {} an acre in "
                       "timber lost, less salvage, and clean-up.",
                       words::peril(futures.worst_event->peril), dates_.in(futures.worst_event->at),
                       words::money(futures.worst_event->loss));
  }

  static std::string choices(const RegimeFutures& futures) {
    const MoneyPerAcre gain = futures.choices->mean - futures.mean;
    const bool same = words::money(gain) == words::money(dollars_per_acre(0));
    return fmt::format("If after every storm the owner clears what is left where it is below 30 "
                       "square feet an acre, or where clearing is worth more than going on, the "
                       "futures bring {} an acre on average, {}; the stand is cleared in {} of "
                       "them.",
                       words::money(futures.choices->mean),
                       same ? "about the same"
                            : words::size_of(gain) +
                                  (gain < dollars_per_acre(0) ? " less" : " more"),
                       words::percent(futures.choices->chance_cleared));
  }

  static Cell fine(MoneyPerAcre amount) {
    return cells::number(amount.in(dollars_per_acre), 2);
  }

  Section plans() const {
    Section section{"The plans side by side", {}, {}, {}};
    for (const Told& told : forecast_.regimes) {
      section.items.push_back(told.name + ": " + plan_in_words(dates_, told.plan.regime) + ".");
    }
    section.tables = {values(), losses()};
    return section;
  }

  Table values() const {
    Table table{"Value of a future; so many percent of the futures bring no more",
                {{"plan", "", true},
                 {"expected value", "$/acre"},
                 {"5 percent", "$/acre"},
                 {"25 percent", "$/acre"},
                 {"50 percent", "$/acre"},
                 {"75 percent", "$/acre"},
                 {"95 percent", "$/acre"}},
                {}};
    if (forecast_.asked.choices) table.columns.push_back({"mean, free to clear", "$/acre"});
    for (const Told& told : forecast_.regimes) {
      const RegimeFutures& futures = told.futures;
      const RegimeFutures::Quantiles& q = futures.quantiles;
      std::vector<Cell> row{cells::words(told.name)};
      for (const MoneyPerAcre value :
           {futures.expected_value, q.p05, q.p25, q.p50, q.p75, q.p95}) {
        row.push_back(cells::per_acre(value));
      }
      if (futures.choices) row.push_back(cells::per_acre(futures.choices->mean));
      table.rows.push_back(std::move(row));
    }
    return table;
  }

  Section after_tax() const {
    Section section{"Before and after federal tax", {}, {}, {"This is not tax advice."}};
    Table table{"",
                {{"plan", "", true},
                 {"expected value before", "$/acre"},
                 {"expected value after", "$/acre"},
                 {"5 percent after", "$/acre"},
                 {"95 percent after", "$/acre"}},
                {}};
    for (const Told& told : forecast_.regimes) {
      const RegimeFutures& taxed = told.after_tax.value();
      table.rows.push_back({cells::words(told.name), cells::per_acre(told.futures.expected_value),
                            cells::per_acre(taxed.expected_value),
                            cells::per_acre(taxed.quantiles.p05),
                            cells::per_acre(taxed.quantiles.p95)});
    }
    section.tables.push_back(std::move(table));
    return section;
  }

  Table losses() const {
    Table table{"Half the stand lost before the final harvest, and the worst single storm",
                {{"plan", "", true},
                 {"half lost in", "percent"},
                 {"worst storm", "$/acre"},
                 {"which", "", true}},
                {}};
    for (const Told& told : forecast_.regimes) {
      const auto& worst = told.futures.worst_event;
      table.rows.push_back(
          {cells::words(told.name), cells::number(100 * told.futures.chance_half_lost, 1),
           worst ? cells::per_acre(worst->loss) : cells::blank(),
           cells::words(worst ? fmt::format("{}, {}", words::peril(worst->peril),
                                            dates_.name(worst->at))
                              : "none")});
    }
    return table;
  }

  Section agreement() const {
    Section section{"Whether the futures agree with the expected values", {}, {}, {}};
    const bool far = std::ranges::any_of(forecast_.regimes, [](const Told& told) {
      const auto& off = told.futures.difference_in_standard_errors;
      return off && std::fabs(*off) > suspicious_errors;
    });
    section.paragraphs.push_back(
        far ? "For at least one plan they differ by more than three standard errors, which chance "
              "alone seldom does: try another seed or more futures."
            : "They do: the difference is what chance alone explains, within three standard "
              "errors.");
    Table table{"",
                {{"plan", "", true},
                 {"expected value", "$/acre"},
                 {"mean of futures", "$/acre"},
                 {"difference", "$/acre"},
                 {"standard error", "$/acre"},
                 {"difference", "standard errors"}},
                {}};
    for (const Told& told : forecast_.regimes) {
      const RegimeFutures& futures = told.futures;
      const auto& off = futures.difference_in_standard_errors;
      table.rows.push_back({cells::words(told.name), fine(futures.expected_value),
                            fine(futures.mean), fine(futures.mean - futures.expected_value),
                            fine(futures.standard_error),
                            off ? cells::number(*off, 2) : cells::blank()});
    }
    section.tables.push_back(std::move(table));
    return section;
  }

  // The best plan beside the stand that is never cut.
  Section years() const {
    Section section{"Acres to be lost, year by year", {}, {}, {}};
    const std::vector<YearlyLossShare>& losses = forecast_.regimes.front().futures.annual_loss;
    if (losses.empty()) {
      section.paragraphs.push_back("The best plan sells everything now: no storm can strike it.");
      return section;
    }
    const double first = losses.front().with_plan;
    if (std::ranges::all_of(losses, [first](const YearlyLossShare& year) {
          return year.with_plan == first && year.unthinned == first;
        })) {
      section.paragraphs.push_back(fmt::format(
          "Every year {} of the acres standing are to be lost, thinned or not.",
          words::chance(first)));
      return section;
    }
    section.tables.push_back(yearly_shares(losses));
    return section;
  }

  Table yearly_shares(const std::vector<YearlyLossShare>& losses) const {
    Table table{"Expected share of the acres standing that the storms of one year destroy", {}, {}};
    cells::add_date_columns(dates_, table.columns);
    table.columns.push_back({"best plan", "percent"});
    table.columns.push_back({"never thinned", "percent"});
    for (const YearlyLossShare& year : losses) {
      std::vector<Cell> row;
      cells::add_date(dates_, year.at, row);
      row.push_back(cells::number(100 * year.with_plan, 2));
      row.push_back(year.unthinned ? cells::number(100 * *year.unthinned, 2) : cells::blank());
      table.rows.push_back(std::move(row));
    }
    return table;
  }

  const Scenario& scenario_;
  const StormForecast& forecast_;
  Dates dates_;
};

}  // namespace

Report storm_report(const Scenario& scenario, const StormForecast& forecast) {
  return StormTelling(scenario, forecast).tell();
}

std::string storm_text(const Scenario& scenario, const StormForecast& forecast) {
  return to_text(storm_report(scenario, forecast));
}

}  // namespace staddle
