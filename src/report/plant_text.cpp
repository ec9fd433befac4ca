// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/plant_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "report/cells.h"
#include "report/plan_words.h"
#include "signs/plain_words.h"
#include "staddle/report/text.h"
#include "staddle/scenario/planting.h"
#include "staddle/signs/cautions.h"

namespace staddle {
namespace {

// Numbers that differ by less are told alike.
constexpr double shown_apart = 0.005;

// The plans are those of bare land: where a stand stands now, its calendar is not theirs.
Dates dates_of(const Scenario& scenario) {
  if (!scenario.is_standing()) return Dates(scenario);
  Scenario undated = scenario;
  undated.present_year.reset();
  return Dates(undated);
}

// "5", "4.25", "1,000": as many decimals as there are, two at most.
std::string plain(double value) {
  for (int decimals = 0; decimals < 2; ++decimals) {
    const double scaled = value * (decimals == 0 ? 1.0 : 10.0);
    if (std::fabs(scaled - std::round(scaled)) < shown_apart) {
      return words::number(value, decimals);
    }
  }
  return words::number(value, 2);
}

class PlantTelling {
 public:
  PlantTelling(const Scenario& scenario, const PlantSolution& solution)
      : scenario_(scenario), solution_(solution), dates_(dates_of(scenario)) {}

  Report tell() const {
    Report report;
    report.title = scenario_.title + ": how to start the next stand";
    report.head = {fmt::format(
        "Values are land expectation value in today's dollars an acre at {} percent: what an acre "
        "of bare land is worth if it grows pine for ever, each way of starting at its own best "
        "plan.",
        plain(100.0 * scenario_.costs.rate.per_year()))};
    if (scenario_.is_standing()) {
      report.head.emplace_back(
          "The stand that is there now counts as harvested; ages are those of the next one.");
    }
    report.sections = {in_short(), ways(), turning()};
    if (scenario_.tax) report.sections.push_back(after_tax());
    report.sections.push_back(rules());
    report.sections.push_back(species());
    if (const auto section = beyond()) report.sections.push_back(*section);
    report.sections.push_back(sources());
    report.sections.push_back({"Cautions", {}, {}, standing_cautions()});
    report.foot =
        "Each way was searched whole: no other plan of the choices asked for is worth more with "
        "it. The arithmetic is exact; the growth is not (15 to 20 percent), and what preparing "
        "the ground gains is an assumption.";
    return report;
  }

 private:
  const AlternativeAnswer& ranked(std::size_t place) const {
    return solution_.alternatives[solution_.ranking[place]];
  }
  std::optional<double> trees(const EstablishmentAlternative& alternative) const {
    const auto planted = planting_by(scenario_, &alternative).planted;
    if (!planted) return std::nullopt;
    return planted->in(trees_per_acre);
  }
  std::string plan(const PricedRegime& priced) const {
    return plan_in_words(dates_, priced.regime);
  }
  static std::string quoted(const AlternativeAnswer& answer) {
    return "\"" + answer.alternative.name + "\"";
  }
  // What costs nothing is told so.
  static std::string cost(MoneyPerAcre amount) {
    return amount == MoneyPerAcre() ? "nothing" : words::size_of(amount) + " an acre";
  }

  // ---- in short

  Section in_short() const {
    Section section{"In short", {}, {}, {}};
    const AlternativeAnswer& best = ranked(0);
    const MoneyPerAcre value = best.best->value.objective;
    std::string text =
        fmt::format("Best: {}. It costs {} at planting", quoted(best), cost(best.establishment));
    if (best.later_practices > MoneyPerAcre()) {
      text += " and " + cost(best.later_practices) + " later";
    }
    section.items.push_back(
        fmt::format("{}; an acre of bare land is then worth {}, with this plan: {}.", text,
                    words::money(value), plan(*best.best)));
    if (value < MoneyPerAcre()) {
      section.items.emplace_back(
          "Every way loses money at these prices, costs and this rate. The best is the one that "
          "loses least; another use, natural regrowth or the sale of the land may be worth more.");
    }
    if (solution_.ranking.size() > 1) section.items.push_back(second());
    if (solution_.as_stated) section.items.push_back(as_stated(value));
    for (const AlternativeAnswer& answer : solution_.alternatives) {
      if (answer.best) continue;
      section.items.push_back(fmt::format("Not compared: {}: {}.", quoted(answer), answer.reason));
    }
    return section;
  }

  std::string second() const {
    const AlternativeAnswer& next = ranked(1);
    std::string text = fmt::format("Next: {}, {} an acre less.", quoted(next),
                                   words::size_of(*next.loss_against_best));
    const auto& turn = ranked(0).break_even;
    if (turn && turn->value) {
      text += fmt::format(
          " The two are equal where the best one gains {} {} instead of the {} it "
          "counts with.",
          words::number(*turn->value, 1), turn->unit, words::number(turn->today, 1));
    }
    return text;
  }

  std::string as_stated(MoneyPerAcre best) const {
    const MoneyPerAcre value = solution_.as_stated->value.objective;
    const Planting planting = planting_by(scenario_, nullptr);
    std::string text = fmt::format(
        "As the scenario itself plants ({}{} at planting): worth {}",
        planting.planted ? words::number(planting.planted->in(trees_per_acre)) + " trees an acre, "
                         : "",
        cost(planting.establishment), words::money(value));
    const MoneyPerAcre less = best - value;
    text +=
        less >= MoneyPerAcre()
            ? fmt::format(", {} an acre less than the best.", words::size_of(less))
            : fmt::format(", {} an acre more than the best of these ways.", words::size_of(less));
    if (const EstablishmentAlternative* used = used_alternative(scenario_)) {
      text += fmt::format(" In use now: \"{}\".", used->name);
    }
    return text;
  }

  // ---- the ways side by side

  Section ways() const {
    Section section{"The ways side by side", {}, {}, {}};
    Table table{"",
                {{"way", "", true},
                 {"trees", "per acre"},
                 {"at planting", "$/acre"},
                 {"later", "$/acre"},
                 {"value", "$/acre"},
                 {"less than best", "$/acre"},
                 {"best plan", "", true}},
                {}};
    for (std::size_t place = 0; place < solution_.ranking.size(); ++place) {
      const AlternativeAnswer& answer = ranked(place);
      const auto planted = trees(answer.alternative);
      table.rows.push_back(
          {cells::words(fmt::format("{}. {}", place + 1, answer.alternative.name)),
           planted ? cells::number(*planted) : cells::blank(),
           cells::cost_per_acre(answer.establishment), cells::cost_per_acre(answer.later_practices),
           cells::per_acre(answer.best->value.objective),
           cells::per_acre(*answer.loss_against_best), cells::words(plan(*answer.best))});
    }
    section.tables.push_back(std::move(table));
    return section;
  }

  Section turning() const {
    Section section{"What would turn the order", {}, {}, {}};
    section.paragraphs.emplace_back(
        "What preparing the ground gains is not well known. Each way beside the best one: what it "
        "is counted with, and what it would have to gain to be worth as much. For the best one: "
        "what it may fall to before the second is worth as much.");
    Table table{"", {{"way", "", true}, {"counts with", "", true}, {"equal at", "", true}}, {}};
    for (std::size_t place = 0; place < solution_.ranking.size(); ++place) {
      const AlternativeAnswer& answer = ranked(place);
      if (!answer.break_even) continue;
      const BreakEvenResponse& turn = *answer.break_even;
      const std::string equal =
          turn.value ? fmt::format("{} {}", words::number(*turn.value, 1), turn.unit) : turn.reason;
      table.rows.push_back({cells::words(answer.alternative.name),
                            cells::words(counts_with(answer)), cells::words(equal)});
    }
    section.tables.push_back(std::move(table));
    return section;
  }

  static std::string counts_with(const AlternativeAnswer& answer) {
    const EstablishmentAlternative& way = answer.alternative;
    std::vector<std::string> parts{words::number(way.response.years_gained, 1) + " years gained"};
    if (way.site_index_shift != Height()) {
      parts.push_back(words::number(way.site_index_shift.in(feet), 1) + " ft of site index");
    }
    if (way.response.hardwood_percent > 0.0) {
      parts.push_back(words::number(way.response.hardwood_percent, 1) + " percent hardwoods");
    }
    if (way.response.precommercial) {
      parts.push_back(fmt::format("thinned to {} trees at age {}",
                                  words::number(way.response.precommercial->to.in(trees_per_acre)),
                                  way.response.precommercial->at.whole()));
    }
    return words::list(parts);
  }

  Section after_tax() const {
    Section section{"Before and after federal tax", {}, {}, {}};
    section.paragraphs.emplace_back(
        "The same plans, found before tax. The rates are the owner's own; this is no tax advice.");
    Table table{"",
                {{"way", "", true},
                 {"value before", "$/acre"},
                 {"value after", "$/acre"},
                 {"less than best, after", "$/acre"}},
                {}};
    for (std::size_t place = 0; place < solution_.ranking.size(); ++place) {
      const AlternativeAnswer& answer = ranked(place);
      const std::optional<MoneyPerAcre> less = answer.after_tax->loss_against_best;
      table.rows.push_back({cells::words(answer.alternative.name),
                            cells::per_acre(answer.best->value.objective),
                            cells::per_acre(answer.after_tax->plan.value.objective),
                            cells::per_acre(less.value())});
    }
    section.tables.push_back(std::move(table));
    return section;
  }

  // ---- rules, species, sources

  Section rules() const {
    Section section{"Rules of time and law", {}, {}, {}};
    section.paragraphs.emplace_back("Common practice, no source, where none is named.");
    for (const PlantGate& gate : solution_.gates) {
      section.items.push_back(words::capital(gate.topic) + ": " + gate.text);
    }
    return section;
  }

  Section species() const {
    Section section{"Which species the ground asks for", {}, {}, {}};
    for (const SpeciesAdvice& one : solution_.species) {
      std::string reasons;
      for (const std::string& reason : one.reasons)
        reasons += (reasons.empty() ? "" : "; ") + reason;
      section.items.push_back(fmt::format("{}: {}. {}. Priced {}.", words::capital(one.name),
                                          one.advice, words::capital(reasons), one.priced));
    }
    return section;
  }

  // What was studied of a figure.
  static std::string studied(const Extrapolation& far) {
    const std::string range = fmt::format("{} to {}", plain(far.low), plain(far.high));
    if (far.what == "planted_tpa") {
      return fmt::format("The equations were fitted to stands of {} trees an acre.", range);
    }
    if (far.what == "site_index_ft") {
      return fmt::format("The equations were fitted to sites of {} feet.", range);
    }
    if (far.what == "years_gained") return fmt::format("Studies print {} years gained.", range);
    return fmt::format("The equations were fitted to ages of {} years; years gained count as age.",
                       range);
  }

  std::optional<Section> beyond() const {
    Section section{"Beyond what was measured", {}, {}, {}};
    for (const char* what : {"planted_tpa", "site_index_ft", "years_gained", "age_yr"}) {
      std::vector<std::string> names;
      const Extrapolation* any = nullptr;
      for (const AlternativeAnswer& answer : solution_.alternatives) {
        for (const Extrapolation& far : answer.extrapolations) {
          if (far.what != what) continue;
          names.push_back(fmt::format("{} ({})", quoted(answer), plain(far.value)));
          any = &far;
        }
      }
      if (!any) continue;
      const bool all = names.size() == solution_.ranking.size();
      section.items.push_back(fmt::format(
          "{} {}.", studied(*any),
          all ? "All of these ways lie beyond that" : "Beyond that: " + words::list(names)));
    }
    if (section.items.empty()) return std::nullopt;
    return section;
  }

  Section sources() const {
    Section section{"Where the figures come from", {}, {}, {}};
    std::vector<std::string> told;
    for (const AlternativeAnswer& answer : solution_.alternatives) {
      for (const std::string& source : answer.alternative.sources) {
        if (std::ranges::find(told, source) == told.end()) told.push_back(source);
      }
    }
    for (const std::string& source : told) section.items.push_back(words::capital(source) + ".");
    section.items.emplace_back(
        "Years gained grow in evenly over the first five years; from then on the stand is so many "
        "years ahead of the equations: assumption.");
    const bool own = std::ranges::any_of(solution_.alternatives, [](const AlternativeAnswer& one) {
      return one.alternative.from.empty();
    });
    if (own) {
      section.items.emplace_back(
          "Costs and gains of ways that begin with no built-in one are the scenario's own.");
    }
    return section;
  }

  const Scenario& scenario_;
  const PlantSolution& solution_;
  Dates dates_;
};

}  // namespace

Report plant_report(const Scenario& scenario, const PlantSolution& solution) {
  return PlantTelling(scenario, solution).tell();
}

std::string plant_text(const Scenario& scenario, const PlantSolution& solution) {
  return to_text(plant_report(scenario, solution));
}

}  // namespace staddle
