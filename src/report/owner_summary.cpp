// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "report/owner_answer.h"
#include "report/what_to_do.h"
#include "signs/plain_words.h"
#include "staddle/report/text.h"

namespace staddle {
namespace {

// A plan of many thinnings tells the last ones together.
constexpr std::size_t most_thinnings_told = 2;

class Summary {
 public:
  explicit Summary(const Answer& answer) : answer_(answer), advice_(answer.advice) {}

  std::vector<std::string> tell() {
    lines_ = {now()};
    add_entries();
    const HarvestRecord& harvest = advice_.best.final_harvest;
    lines_.push_back(entry("Final harvest", answer_.final_age(), harvest.tons, harvest.revenue,
                           harvest.share_standing));
    lines_.push_back(worth());
    if (advice_.sell_today) lines_.push_back(sold_today());
    if (advice_.wait_five) lines_.push_back(waiting());
    lines_.push_back(as_good());
    if (!advice_.survives.empty()) lines_.push_back(holds());
    lines_.push_back(risks());
    lines_.emplace_back(
        "No appraisal. Have a registered forester walk the stand; let no crew take more than "
        "this.");
    return std::move(lines_);
  }

 private:
  static std::string per_acre(MoneyPerAcre amount) { return words::money(amount) + "/ac"; }

  std::string both(MoneyPerAcre amount, double share_standing = 1.0) const {
    return fmt::format("{} ({} in all)", per_acre(amount),
                       words::tract_money(share_standing * amount * answer_.area()));
  }

  std::string now() const {
    const KeyFigure what = key_figures_of(answer_).front();
    const bool plants = answer_.action == Action::plant;
    return fmt::format("{}: {}, {}", plants ? "To do" : "Now", what.value, what.meaning);
  }

  std::string entry(const std::string& name, Age at, const std::vector<Yield>& tons,
                    MoneyPerAcre revenue, double share_standing) const {
    return fmt::format("{}, {}: {} tons/ac, {}", name, answer_.dates.name(at),
                       words::number(answer_.total(tons).in(tons_per_acre)),
                       both(revenue, share_standing));
  }

  void add_entries() {
    const auto& cuts = answer_.cuts;
    if (cuts.empty()) {
      lines_.push_back("Thinnings: none");
      return;
    }
    const std::size_t alone =
        cuts.size() <= most_thinnings_told ? cuts.size() : most_thinnings_told - 1;
    for (std::size_t i = 0; i < alone; ++i) {
      const ThinningRecord& cut = *cuts[i];
      lines_.push_back(entry("Thinning", cut.at, cut.tons, cut.revenue, cut.share_standing) +
                       fmt::format("; leave {} sq ft/ac, {} trees/ac",
                                   square_feet(cut.after.basal_area), trees(cut.after.trees)));
    }
    if (alone == cuts.size()) return;
    std::vector<std::string> later;
    for (std::size_t i = alone; i < cuts.size(); ++i) {
      later.push_back(words::removal(cuts[i]->removal_fraction) + " " +
                      answer_.dates.on(cuts[i]->at));
    }
    lines_.push_back("Later thinnings: " + words::list(later));
  }

  std::string worth() const {
    const MoneyPerAcre value = advice_.best.value.objective;
    return fmt::format("Worth at {} a year: {}, {}", answer_.rate(), both(value),
                       advice_.standing ? "timber and land" : "the land, so managed for ever");
  }

  std::string sold_today() const {
    const SellToday& sale = *advice_.sell_today;
    return fmt::format("Sold today: timber {}, land {}; the plan is worth {} {}",
                       per_acre(sale.timber), per_acre(sale.land),
                       words::size_of(sale.loss_against_best) + "/ac",
                       sale.loss_against_best < dollars_per_acre(0) ? "less" : "more");
  }

  std::string waiting() const {
    const MoneyPerAcre loss = advice_.wait_five->loss_against_best;
    if (loss == dollars_per_acre(0)) return "Left alone for five years: nothing lost";
    return fmt::format("Left alone for five years: {}/ac {}", words::size_of(loss),
                       loss < dollars_per_acre(0) ? "gained, beyond the ages allowed" : "lost");
  }

  std::string as_good() const {
    const NearBest& near = advice_.near_best;
    std::string text = "As good: ";
    if (near.first_thinning_low && near.first_thinning_high) {
      text += fmt::format("first thinning {}, ", answer_.dates.within(*near.first_thinning_low,
                                                                      *near.first_thinning_high));
    }
    return text + fmt::format("final harvest {}, within {}/ac",
                              answer_.dates.within(near.final_harvest_low, near.final_harvest_high),
                              words::size_of(near.tolerance));
  }

  std::string holds() const {
    std::string same, another;
    for (const Survival& survival : advice_.survives) {
      std::string& list = survival.same_advice ? same : another;
      list += (list.empty() ? "" : ", ") + survival.change;
    }
    if (same.empty()) return "Another advice with " + another;
    if (another.empty()) return "The same advice with " + same;
    return "The same advice with " + same + "; another with " + another;
  }

  // The gravest first, as many as the line holds.
  std::string risks() const {
    const std::string storms = advice_.storm ? "; storms are counted in" : "; storms not counted";
    std::string text;
    std::size_t left_out = 0;
    for (const RiskNote& note : advice_.risk_notes) {
      if (note.level == RiskLevel::low) continue;
      std::string longer = text + (text.empty() ? "Risks: " : ", ") + note.topic;
      if (note.level == RiskLevel::high) longer += " (high)";
      constexpr std::size_t room_for_the_rest = 40;
      if (left_out > 0 || longer.size() + room_for_the_rest > text_width) {
        ++left_out;
      } else {
        text = std::move(longer);
      }
    }
    if (text.empty()) text = "Risks: none stands out";
    if (left_out > 0) text += fmt::format(" and {} more", left_out);
    return text + storms;
  }

  const Answer& answer_;
  const Advice& advice_;
  std::vector<std::string> lines_;
};

}  // namespace

std::vector<std::string> summary_of(const Answer& answer) { return Summary(answer).tell(); }

}  // namespace staddle
