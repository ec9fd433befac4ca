// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "signs/plain_words.h"
#include "staddle/plant/gates.h"

namespace staddle {
namespace {

using Drainage = SiteFacts::Drainage;
using Soil = SiteFacts::Soil;

constexpr const char* fits = "fits";
constexpr const char* first_choice = "first choice";
constexpr const char* possible = "possible";
constexpr const char* not_here = "not here";
constexpr const char* unknown = "not known";

// What the ground says, in words that can stand as reasons.
class Ground {
 public:
  explicit Ground(const SiteFacts& site) : site_(site) {
    if (site.deep_sand()) sand_.emplace_back("the topsoil is a deep sand: sand, and dry");
    if (!site.deep_sand_plants.empty()) {
      sand_.push_back(words::list(site.deep_sand_plants) + " grows here, a sign of deep sand");
    }
    if (!site.wet_flatwoods_plants.empty()) {
      flatwoods_.push_back(words::list(site.wet_flatwoods_plants) +
                           " grows here, a sign of wet flatwoods (from memory)");
    }
  }

  const std::vector<std::string>& sand() const { return sand_; }
  const std::vector<std::string>& flatwoods() const { return flatwoods_; }
  bool wet() const { return site_.drainage == Drainage::wet; }
  bool dry_ridge() const {
    return site_.drainage == Drainage::dry && site_.soil && site_.soil != Soil::sand;
  }
  bool known() const { return site_.soil || site_.drainage || !site_.indicator_plants.empty(); }

 private:
  const SiteFacts& site_;
  std::vector<std::string> sand_, flatwoods_;
};

constexpr const char* nothing_known =
    "nothing is said of the soil: give site.soil, site.drainage or the plants that grow here";

SpeciesAdvice loblolly(const Ground& ground) {
  SpeciesAdvice advice{"loblolly pine", fits, {}, ""};
  if (!ground.sand().empty()) {
    advice.advice = not_here;
    advice.reasons = ground.sand();
    advice.reasons.emplace_back("it grows almost anywhere but on deep sands");
  } else if (!ground.flatwoods().empty()) {
    advice.advice = possible;
    advice.reasons = ground.flatwoods();
    advice.reasons.emplace_back("slash pine is the usual one there");
  } else {
    advice.reasons = {"it grows almost anywhere but on deep sands"};
    if (!ground.known()) advice.reasons.emplace_back(nothing_known);
  }
  return advice;
}

SpeciesAdvice longleaf(const Ground& ground) {
  SpeciesAdvice advice{"longleaf pine", unknown, {}, ""};
  if (!ground.sand().empty()) {
    advice.advice = first_choice;
    advice.reasons = ground.sand();
  } else if (!ground.known()) {
    advice.reasons = {
        "the one for deep sands: look for reindeer moss, prickly pear, sparkleberry "
        "and scrub oaks"};
  } else {
    advice.advice = possible;
    advice.reasons = {
        "nothing here speaks of a deep sand, where it is the one to plant; it "
        "stands storms better than loblolly (assumption)"};
  }
  return advice;
}

SpeciesAdvice slash(const Ground& ground) {
  SpeciesAdvice advice{"slash pine", unknown, {}, ""};
  if (!ground.flatwoods().empty()) {
    advice.advice = first_choice;
    advice.reasons = ground.flatwoods();
  } else if (!ground.known()) {
    advice.reasons = {
        "the one for wet flatwoods: look for gallberry, saw-palmetto and titi (from "
        "memory)"};
  } else if (ground.wet()) {
    advice.advice = possible;
    advice.reasons = {"the ground is wet; it is at home in wet flatwoods (from memory)"};
  } else {
    advice.advice = not_here;
    advice.reasons = {"nothing here speaks of wet flatwoods, where it is at home (from memory)"};
  }
  return advice;
}

SpeciesAdvice shortleaf(const Ground& ground) {
  if (ground.dry_ridge()) {
    return {"shortleaf pine",
            possible,
            {"dry ground with some clay or loam; it is at home on dry "
             "piedmont ridges (from memory)"},
            ""};
  }
  return {"shortleaf pine",
          ground.known() ? not_here : unknown,
          {"at home on dry piedmont ridges (from memory)"},
          ""};
}

SpeciesAdvice hardwoods(const Ground& ground) {
  if (ground.wet() && ground.flatwoods().empty()) {
    return {"hardwoods",
            possible,
            {"the ground is wet: where it is bottomland, leave it in hardwoods (from memory)"},
            ""};
  }
  return {"hardwoods",
          ground.known() ? not_here : unknown,
          {"bottomland is left in hardwoods (from memory)"},
          ""};
}

}  // namespace

std::vector<SpeciesAdvice> species_advice(const PlantProblem& problem) {
  const Ground ground(problem.site);
  std::vector<SpeciesAdvice> all{loblolly(ground), longleaf(ground), slash(ground),
                                 shortleaf(ground), hardwoods(ground)};
  for (SpeciesAdvice& species : all) {
    if (!ground.sand().empty() && !ground.flatwoods().empty() && species.advice == first_choice) {
      species.advice = possible;
      species.reasons.emplace_back(
          "the signs contradict each other: both kinds of ground seem to be here");
    }
    const bool built_in =
        problem.equations && problem.equations->species.find(species.name) != std::string::npos;
    species.priced =
        built_in ? "by the built-in equations, as here"
        : problem.equations
            ? "only from a yield table of your own (stand.yield_table); not priced here"
            : "only where your yield table is of this species";
  }
  return all;
}

}  // namespace staddle
