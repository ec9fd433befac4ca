// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/growth/establishment_response.h"
#include "staddle/regime/costs.h"
#include "staddle/units/units.h"

namespace staddle {

// What an alternative may claim. Beyond the ranges that the studies print, an answer says so.
inline constexpr double least_years_gained = -3.0, most_years_gained = 10.0;
inline constexpr double largest_site_index_shift_ft = 30.0;
inline constexpr double least_site_index_ft = 30.0, most_site_index_ft = 120.0;

// What is done to the ground before planting and to the young stand after it; the rules of
// time and of the law are read from these.
enum class SiteMethod {
  chemical,    // herbicide before planting
  burn,        // fire before planting
  one_pass,    // one pass of a machine: chopping
  two_pass,    // two: shear and rake
  bed,         // three, with beds
  herbaceous,  // herbicide against weeds in the first year
  release,     // herbicide against hardwoods in a young stand
};

// One way to start the next stand. Its practices take the place of the scenario's
// establishment cost and practices; those at age 0 are what planting costs.
struct EstablishmentAlternative {
  std::string name;
  std::vector<SiteMethod> methods;  // each once
  std::vector<Practice> practices;
  std::optional<TreeDensity> planted;  // absent: as the scenario plants
  Height site_index_shift;             // added to that of the site
  EstablishmentResponse response;
  std::string from;                  // built-in alternative it begins with; may be empty
  std::vector<std::string> sources;  // of its figures, a sentence each

  bool has(SiteMethod method) const;
  MoneyPerAcre establishment() const;  // the practices at age 0, summed
  std::vector<Practice> later_practices() const;
};

// The block of a scenario.
struct Establishment {
  std::vector<EstablishmentAlternative> alternatives;  // at least one, names differ
  // What every command plants on bare land and after a standing stand; absent: what the
  // rest of the scenario says.
  std::optional<std::size_t> use;
  // What the rest of the scenario said before the one in use took its place.
  struct Stated {
    std::optional<TreeDensity> planted;
    MoneyPerAcre establishment;
    std::vector<Practice> practices;
  };
  std::optional<Stated> stated;
};

}  // namespace staddle
