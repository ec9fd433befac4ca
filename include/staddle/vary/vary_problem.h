// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "staddle/finance/tax.h"
#include "staddle/growth/equation_set.h"
#include "staddle/growth/establishment_response.h"
#include "staddle/optimise/stand_problem.h"
#include "staddle/regime/regime.h"
#include "staddle/vary/vary_question.h"

namespace staddle {

// A stand, what follows it, and what is to be varied.
struct VaryProblem {
  StandProblem stand;                     // land_value is filled in
  std::optional<StandProblem> successor;  // standing: the stand that follows
  // Standing: the worth of an acre after harvest, from the successor's best LEV (absent
  // where planted trees are unknown). REQUIRES: not empty for a standing stand.
  std::function<MoneyPerAcre(std::optional<MoneyPerAcre> successor_lev)> land_value;
  std::vector<StatedRegime> stated;
  std::vector<std::string> products;      // their names, in the order of the price list
  // What the growth model is made from, so that site index and planted trees can be set;
  // absent for a yield table, whose parameters they are not.
  std::optional<EquationSet> equations;
  std::optional<Height> site_index;
  std::optional<TreeDensity> planted;     // bare: now; standing: after its final harvest
  VaryQuestion question;
  std::optional<TaxRules> tax = std::nullopt;  // absent: before tax alone
  // How bare land and a successor are established: on a site so much better, with this
  // response.
  Height site_index_shift = {};
  EstablishmentResponse response = {};
};

}  // namespace staddle
