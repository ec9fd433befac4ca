// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "staddle/advise/advice.h"
#include "staddle/base/result.h"
#include "staddle/finance/tax.h"
#include "staddle/optimise/stand_problem.h"

namespace staddle {

// A table of one fixed regime, ready to price, and the ages at which it may end. The
// lattice of its problem gives limits on nothing but the final age.
struct TabledChoice {
  std::string name;
  StandProblem problem;
  std::vector<Age> final_ages;  // rising, after the last thinning
};

// A stand known from plots: the interval that holds its basal area with 90 percent
// confidence, and the stand that it would be at present with another basal area.
struct PlotsQuestion {
  std::size_t plots = 0;
  BasalArea mean, low, high;  // low above zero
  // Basal area and trees of the plots times `share`, brought to the present.
  std::function<MeasuredStand(double share)> stand;
};

// All that the answer is made from.
struct AdviseProblem {
  StandProblem stand;                      // land_value is filled in by advise
  std::optional<StandProblem> successor;   // standing: the stand that follows
  // Standing: the worth of an acre after harvest, from the successor's best LEV (absent
  // where planted trees are unknown).
  std::function<MoneyPerAcre(std::optional<MoneyPerAcre> successor_lev)> land_value;
  std::vector<StatedRegime> stated;
  ReadyLimits ready_limits;
  SiteFacts site;
  // Fitted ranges of the growth equations; absent for a yield table.
  std::optional<EquationSet> equations;
  std::optional<Height> site_index;
  // Not empty: fixed regimes, compared as they are on bare land; `stand` is not used.
  std::vector<TabledChoice> tabled = {};
  std::optional<PlotsQuestion> plots = std::nullopt;
  std::optional<TaxRules> tax = std::nullopt;  // absent: before tax alone
  std::optional<double> crown_cover = std::nullopt;  // crown areas over ground, measured
  std::optional<Height> successor_site_index = std::nullopt;  // where equations grow it
};

struct AdviseOptions {
  bool exhaustive = false;  // every solve values every regime
  std::stop_token stop;
};

// Solves the problem and every question that an answer asks. Faults: a stated regime
// that is impossible (placed at "/regimes/i/..."), or no regime (code no_regime).
Result<Advice> advise(const AdviseProblem& problem, const AdviseOptions& options = {});

}  // namespace staddle
