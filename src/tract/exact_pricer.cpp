// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/exact_pricer.h"

#include <algorithm>
#include <optional>

#include "optimise/candidates.h"
#include "staddle/base/contract.h"
#include "staddle/base/parallel.h"
#include "tract/weighted_years.h"

namespace staddle {
namespace {

// A lattice that may be larger than this is never kept.
constexpr double most_bytes_grown = 400e6;

TreeQuestion question_of(const StandModel& model, const Limits& limits) {
  TreeQuestion question;
  for (const TonsMeasure& measure : limits.tons) {
    std::vector<std::size_t> of_stand;
    for (std::size_t i = 0; i < model.reading.product_of.size(); ++i) {
      const std::size_t product = model.reading.product_of[i];
      const auto& wanted = measure.products;
      if (std::find(wanted.begin(), wanted.end(), product) != wanted.end()) of_stand.push_back(i);
    }
    question.tons.push_back(of_stand);
  }
  if (limits.need_open()) question.open_below = model.reading.open_below;
  return question;
}

// The regimes worth most, best first; of equal worth the one met first.
class Best {
 public:
  explicit Best(std::size_t most) : most_(most) {}

  void offer(double worth, const LatticeRegime& regime, int final_yr) {
    if (kept_.size() == most_ && worth <= kept_.back().worth) return;
    if (kept_.size() == most_) kept_.pop_back();
    const auto after = std::upper_bound(kept_.begin(), kept_.end(), worth,
                                        [](double w, const Kept& k) { return w > k.worth; });
    const auto here = kept_.insert(after, {worth, regime});
    here->regime.final_yr = final_yr;
  }

  std::vector<WeighedRegime> tell(const LatticeRules& rules) const {
    std::vector<WeighedRegime> result;
    for (const Kept& kept : kept_) result.push_back({regime_of(kept.regime, rules), kept.worth});
    return result;
  }

 private:
  struct Kept {
    double worth;
    LatticeRegime regime;
  };
  std::size_t most_;
  std::vector<Kept> kept_;
};

}  // namespace

struct ExactPricer::Stand {
  Stand(const StandModel& stand, const Limits& limits)
      : model(stand),
        kernel(stand.problem.stand_case),
        rules(stand.problem, kernel),
        question(question_of(stand, limits)) {}

  int last_year() const { return rules.final_to() - kernel.present_yr(); }

  void visit(const StretchVisitor& visitor) const {
    if (tree) {
      tree->visit(visitor);
    } else {
      visit_stretches(kernel, rules, question, visitor);
    }
  }

  void grow() {
    if (RegimeTree::most_bytes(kernel, rules, question) > most_bytes_grown) return;
    tree.emplace(kernel, rules, question);
  }

  const StandModel& model;
  CaseKernel kernel;
  LatticeRules rules;
  TreeQuestion question;
  std::optional<RegimeTree> tree;
};

ExactPricer::ExactPricer(const std::vector<StandModel>& models, const Limits& limits, double bytes,
                         unsigned threads, std::stop_token stop)
    : limits_(limits) {
  for (const StandModel& model : models) {
    stands_.push_back(std::make_unique<Stand>(model, limits));
  }
  // In batches, so that what is kept depends on nothing but the order, and little more than
  // that is ever held.
  constexpr std::size_t batch = 32;
  for (std::size_t from = 0; from < stands_.size() && bytes > 0.0; from += batch) {
    const std::size_t count = std::min(batch, stands_.size() - from);
    for_each_chunk(
        count, threads, [&](std::size_t i) { stands_[from + i]->grow(); }, stop);
    for (std::size_t i = from; i < from + count; ++i) {
      if (!stands_[i]->tree) continue;
      bytes -= stands_[i]->tree->bytes();
      if (bytes < 0.0) stands_[i]->tree.reset();
    }
  }
}

ExactPricer::~ExactPricer() = default;

std::size_t ExactPricer::stands() const { return stands_.size(); }

bool ExactPricer::is_slow(std::size_t stand) const { return !stands_[stand]->tree; }

std::vector<WeighedRegime> ExactPricer::best(std::size_t place, const PlanWeights& weights,
                                             std::size_t most) {
  require(most >= 1, "a pricer is asked for one regime at least");
  const Stand& stand = *stands_[place];
  const WeightedYears years(stand.model, stand.kernel, limits_, weights, stand.last_year());
  WorthWalk walk(stand.kernel, years);
  Best best(most);
  const int present = stand.kernel.present_yr();
  stand.visit([&](const RegimeStretch& stretch) {
    const std::vector<double>& worths = walk.pass(stretch);
    for (std::size_t i = 0; i < worths.size(); ++i) {
      best.offer(worths[i], stretch.regime,
                 present + stretch.final_from_year + static_cast<int>(i));
    }
  });
  return best.tell(stand.rules);
}

std::vector<Regime> ExactPricer::all_regimes(std::size_t place) const {
  const Stand& stand = *stands_[place];
  std::vector<Regime> regimes;
  stand.visit([&](const RegimeStretch& stretch) {
    LatticeRegime regime = stretch.regime;
    for (int year = stretch.final_from_year; year <= stretch.to_year; ++year) {
      regime.final_yr = stand.kernel.present_yr() + year;
      regimes.push_back(regime_of(regime, stand.rules));
    }
  });
  return regimes;
}

double ExactPricer::count_regimes(std::size_t place) const {
  return stands_[place]->rules.count_regimes();
}

}  // namespace staddle
