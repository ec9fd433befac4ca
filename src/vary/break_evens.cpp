// SPDX-License-Identifier: GPL-3.0-or-later
#include "vary/break_evens.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "vary/turning_point.h"

namespace staddle {
namespace {

constexpr double cents_per_dollar = 100.0;
constexpr double hundredths_of_a_percent = 10000.0;
constexpr int without_regime = -1;

// The land's worth under its best regime: on bare land of the stand, else of what follows.
using LandWorth = std::function<std::optional<double>(const VaryAnswer& answer)>;

LandWorth before_tax(const VaryProblem& problem) {
  const bool standing = problem.stand.stand_case.standing.has_value();
  return [standing](const VaryAnswer& answer) -> std::optional<double> {
    const auto& priced = standing ? answer.successor : answer.best;
    if (!priced) return std::nullopt;
    return priced->value.objective.in(dollars_per_acre);
  };
}

std::optional<double> after_tax(const VaryAnswer& answer) {
  if (!answer.after_tax || !answer.after_tax->land_expectation_value) return std::nullopt;
  return answer.after_tax->land_expectation_value->in(dollars_per_acre);
}

// Asks all questions of one line and words the answers.
class Questions {
 public:
  Questions(Answers& answers, const VaryAnswer& base, std::vector<BreakEven>& found)
      : answers_(answers), base_(base), found_(found) {}

  void begin_line(std::string parameter, std::string unit, ParameterLine line) {
    parameter_ = std::move(parameter);
    unit_ = std::move(unit);
    line_.emplace(std::move(line));
  }

  void when_land_is_worth_nothing(const std::string& what) {
    const LandWorth worth = before_tax(answers_.problem());
    if (!worth(base_)) {
      refuse(what, "what the land is worth under pine is not known here");
      return;
    }
    BreakEven& entry = tell(what, turn_of(worth));
    if (!answers_.problem().tax) return;
    BreakEven taxed = told(what, turn_of(after_tax));
    entry.after_tax = {taxed.value, taxed.bracket, std::move(taxed.reason)};
  }

  void when_thinning_turns() {
    const bool thins = base_.best && !base_.best->regime.thinnings.empty();
    const std::string what =
        thins ? "the first thinning stops paying" : "a first thinning begins to pay";
    if (refused(what)) return;
    same_after_tax(tell(what, line_->nearest([](const VaryAnswer& answer) {
      return answer.best ? static_cast<int>(!answer.best->regime.thinnings.empty())
                         : without_regime;
    })));
  }

  void when_harvest_moves() {
    const auto final_age = [](const VaryAnswer& answer) {
      return answer.best ? answer.best->regime.final_harvest.whole() : without_regime;
    };
    for (const ParameterLine::Way way : {ParameterLine::Way::down, ParameterLine::Way::up}) {
      const std::string what = fmt::format("the final harvest moves as it {}",
                                           way == ParameterLine::Way::down ? "falls" : "rises");
      if (refused(what)) continue;
      const auto turn = line_->nearest(way, final_age);
      BreakEven& entry = tell(what, turn);
      const double start = way == ParameterLine::Way::down ? line_->range()[0] : line_->start();
      const double end = way == ParameterLine::Way::down ? line_->start() : line_->range()[1];
      entry.searched = {start, end};
      if (!turn) entry.reason = none_in(entry.searched);
      same_after_tax(entry);
    }
  }

 private:
  bool refused(const std::string& what) {
    if (base_.best) return false;
    refuse(what, base_.reason);
    return true;
  }

  void refuse(const std::string& what, const std::string& reason) {
    found_.push_back({what, parameter_, unit_, {}, {}, line_->range(), reason});
    same_after_tax(found_.back());
  }

  // What the plan does is found before tax.
  void same_after_tax(BreakEven& entry) const {
    if (answers_.problem().tax) entry.after_tax = {entry.value, entry.bracket, entry.reason};
  }

  std::string none_in(const std::array<double, 2>& searched) const {
    return fmt::format("none in range: from {} to {} {}", searched[0], searched[1], unit_);
  }

  // Where the land is worth nothing, with the end of the bracket nearer to it inside.
  std::optional<ParameterLine::Turn> turn_of(const LandWorth& worth) {
    auto turn = line_->nearest([&](const VaryAnswer& answer) {
      const auto known = worth(answer);
      return known ? static_cast<int>(*known >= 0.0) : without_regime;
    });
    if (!turn) return turn;
    const auto size_of = [&](const VaryAnswer& answer) {
      return std::fabs(worth(answer).value_or(HUGE_VAL));
    };
    turn->nearer_inside = size_of(turn->at_inside) < size_of(turn->at_outside);
    return turn;
  }

  BreakEven told(const std::string& what, const std::optional<ParameterLine::Turn>& turn) const {
    BreakEven entry{what, parameter_, unit_, {}, {}, line_->range(), ""};
    if (turn) {
      entry.value = turn->nearer_inside ? turn->inside : turn->outside;
      entry.bracket = {std::min(turn->inside, turn->outside),
                       std::max(turn->inside, turn->outside)};
    } else {
      entry.reason = none_in(entry.searched);
    }
    return entry;
  }

  BreakEven& tell(const std::string& what, const std::optional<ParameterLine::Turn>& turn) {
    found_.push_back(told(what, turn));
    return found_.back();
  }

  Answers& answers_;
  const VaryAnswer& base_;
  std::vector<BreakEven>& found_;
  std::string parameter_, unit_;
  std::optional<ParameterLine> line_;
};

// A price is looked at from nothing to ten times today's, at the least to $100 a ton.
double highest_price(double today) {
  constexpr double times = 10.0, at_least = 100.0;
  return std::max(at_least, std::ceil(times * today));
}

}  // namespace

std::vector<BreakEven> break_evens(Answers& answers, const VaryAnswer& base,
                                   const std::vector<std::string>& names) {
  const VaryProblem& problem = answers.problem();
  const Circumstances today = todays(problem);
  std::vector<BreakEven> found;
  Questions questions(answers, base, found);

  constexpr double lowest_rate = 0.0001, highest_rate = 0.5;
  questions.begin_line(
      "real_discount_rate", "per year",
      ParameterLine(
          answers, [](double value, Circumstances& c) { c.rate = DiscountRate::real(value); },
          today.rate.per_year(), lowest_rate, highest_rate, hundredths_of_a_percent));
  questions.when_land_is_worth_nothing("the land expectation value is 0 (return of the best plan)");

  for (std::size_t i = 0; i < names.size(); ++i) {
    const double price = today.prices[i].stumpage.in(dollars_per_ton);
    const auto set = [i](double value, Circumstances& c) {
      c.prices[i].stumpage = dollars_per_ton(value);
    };
    questions.begin_line(
        names[i], "$/ton",
        ParameterLine(answers, set, price, 0.0, highest_price(price), cents_per_dollar));
    questions.when_thinning_turns();
    questions.when_harvest_moves();
    questions.when_land_is_worth_nothing("the land expectation value is 0");
  }

  const Parameter factor{Parameter::Kind::thinning_price_factor, 0, "thinning_price_factor"};
  const auto set_factor = [&](double value, Circumstances& c) {
    set_parameter(problem, factor, value, c);
  };
  questions.begin_line(
      factor.name, "",
      ParameterLine(answers, set_factor, todays_value(problem, factor).value_or(1.0), 0.0,
                    range_of(factor).high, hundredths_of_a_percent));
  questions.when_thinning_turns();

  constexpr double highest_cost = 1e5;
  questions.begin_line(
      "establishment_usd_ac", "$/ac",
      ParameterLine(
          answers,
          [](double value, Circumstances& c) { c.establishment = dollars_per_acre(value); },
          today.establishment.in(dollars_per_acre), 0.0, highest_cost, cents_per_dollar));
  questions.when_land_is_worth_nothing("the land expectation value is 0 (what the land can bear)");
  return found;
}

}  // namespace staddle
