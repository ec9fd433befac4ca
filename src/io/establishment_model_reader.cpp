// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "io/establishment_options.h"
#include "io/model_readers.h"
#include "io/number_text.h"
#include "io/option_check.h"
#include "io/place.h"
#include "io/site_methods.h"

namespace staddle {
namespace {

// "chemical site preparation, $90 an acre: seen printed, a secondary source".
std::string sourced(const std::string& figure, const Place& place) {
  return figure + ": " + place["mark"].text_or_empty() + ", " + place["source"].text_or_empty();
}

// The entry with this id, or a fault that names those known.
template <class Entry>
const Entry* named(const std::vector<Entry>& entries, const Place& place, FaultList& faults) {
  const auto id = place.text();
  if (!id) return nullptr;
  const auto found =
      std::ranges::find_if(entries, [&](const Entry& entry) { return entry.id == *id; });
  if (found != entries.end()) return &*found;
  std::vector<std::string> known;
  for (const Entry& entry : entries) known.push_back(entry.id);
  faults.add(place.order(), FaultCode::unknown_name, place.pointer(),
             "there is no " + quoted_text(*id), did_you_mean(nearest_name(*id, known)));
  return nullptr;
}

// An id that stands in the list already is a fault.
template <class Entry>
void refuse_twice(const std::vector<Entry>& entries, const Place& place, FaultList& faults) {
  const std::string id = place["id"].text_or_empty();
  if (std::ranges::find(entries, id, &Entry::id) == entries.end()) return;
  faults.add(place["id"].order(), FaultCode::repeated_key, place["id"].pointer(),
             quoted_text(id) + " is defined twice");
}

class RecipeReader {
 public:
  RecipeReader(const EstablishmentCosts& costs, const EstablishmentResponses& responses,
               FaultList& faults)
      : costs_(costs), responses_(responses), faults_(faults) {}

  EstablishmentRecipe read(const Place& place) const {
    EstablishmentRecipe recipe;
    recipe.id = place["id"].text_or_empty();
    recipe.name = place["name"].text_or_empty();
    for (const Place& method : place["methods"].items()) {
      const auto name = method.text();
      if (name && *name != "none") recipe.methods.push_back(site_method(*name));
    }
    const Place density = place["density"];
    recipe.planted = trees_per_acre(density["planted_tpa"].number_or_zero());
    recipe.sources.push_back(
        sourced(number_text(density["planted_tpa"].number_or_zero()) + " trees an acre", density));
    read_responses(place["responses"], recipe);
    read_thinning(place["precommercial_thinning"], recipe);
    for (const Place& cost : place["costs"].items()) read_cost(cost, recipe);
    return recipe;
  }

 private:
  void read_responses(const Place& list, EstablishmentRecipe& recipe) const {
    double gained = 0.0, shift = 0.0;
    for (const Place& place : list.items()) {
      const auto* gain = named(responses_.gains, place, faults_);
      if (!gain) continue;
      gained += gain->years_gained;
      shift += gain->site_index_shift_ft;
      recipe.sources.push_back(gain->source);
    }
    recipe.response.years_gained = std::min(gained, responses_.most_years_together);
    recipe.site_index_shift = feet(shift);
    if (gained <= responses_.most_years_together) return;
    recipe.sources.push_back("together no more than " +
                             number_text(responses_.most_years_together) +
                             " years are gained: assumption");
  }

  static void read_thinning(const Place& place, EstablishmentRecipe& recipe) {
    const auto at = place["age_yr"].whole();
    const auto to = place["to_tpa"].number();
    if (!at || !to) return;
    recipe.response.precommercial = PrecommercialThinning{age(*at), trees_per_acre(*to)};
    recipe.sources.push_back(
        sourced("thinned to " + number_text(*to) + " trees at age " + std::to_string(*at), place));
  }

  void read_cost(const Place& place, EstablishmentRecipe& recipe) const {
    const auto* cost = named(costs_.costs, place["cost"], faults_);
    const auto at = place["age_yr"].whole();
    if (!cost || !at) return;
    recipe.costs.push_back({cost->what, age(*at), dollars_per_acre(cost->usd_ac.value_or(0.0)),
                            cost->usd_per_thousand.value_or(0.0)});
    recipe.sources.push_back(cost->source);
  }

  const EstablishmentCosts& costs_;
  const EstablishmentResponses& responses_;
  FaultList& faults_;
};

}  // namespace

Result<EstablishmentCosts> read_establishment_costs(const std::string& text,
                                                    const std::string& file) {
  FaultList faults(file);
  auto tree = json::parse(text, faults);
  if (!tree) return faults.in_file_order();
  check_values(*tree, establishment_cost_options(), faults);
  EstablishmentCosts costs;
  for (const Place& place : Place(&*tree, "")["costs"].items()) {
    refuse_twice(costs.costs, place, faults);
    EstablishmentCosts::Cost cost{place["id"].text_or_empty(), place["what"].text_or_empty(), "",
                                  place["usd_ac"].number(), place["usd_per_thousand"].number()};
    if (place["usd_ac"].given() == place["usd_per_thousand"].given()) {
      faults.add(place.order(), FaultCode::contradiction, place.pointer(),
                 "a cost is either by the acre or by the thousand seedlings");
    }
    cost.source = sourced(
        cost.usd_ac
            ? cost.what + ", $" + number_text(*cost.usd_ac) + " an acre"
            : cost.what + ", $" + number_text(cost.usd_per_thousand.value_or(0.0)) + " a thousand",
        place);
    costs.costs.push_back(std::move(cost));
  }
  if (!faults.empty()) return faults.in_file_order();
  return costs;
}

Result<EstablishmentResponses> read_establishment_responses(const std::string& text,
                                                            const std::string& file) {
  FaultList faults(file);
  auto tree = json::parse(text, faults);
  if (!tree) return faults.in_file_order();
  check_values(*tree, establishment_response_options(), faults);
  const Place root(&*tree, "");
  EstablishmentResponses responses;
  responses.most_years_together = root["most_years_together"]["years_gained"].number_or_zero();
  for (const Place& row : root["increments"]["rows"].items()) {
    responses.increments.push_back(
        {row["treatment"].text_or_empty(), row["m3_ha_yr"].number_or_zero()});
  }
  for (const Place& place : root["responses"].items()) {
    refuse_twice(responses.gains, place, faults);
    EstablishmentResponses::Gain gain{place["id"].text_or_empty(),
                                      place["what"].text_or_empty(),
                                      place["treatment"].text_or_empty(),
                                      "",
                                      place["years_gained"].number_or_zero(),
                                      place["site_index_shift_ft"].number_or_zero()};
    std::string figure = gain.what + ", " + number_text(gain.years_gained) +
                         (gain.years_gained == 1.0 ? " year gained" : " years gained");
    if (gain.site_index_shift_ft != 0.0) {
      figure += " and " + number_text(gain.site_index_shift_ft) + " ft of site index";
    }
    gain.source = sourced(figure, place);
    const bool known =
        gain.treatment.empty() || std::ranges::any_of(responses.increments, [&](const auto& row) {
          return row.treatment == gain.treatment;
        });
    if (!known) {
      faults.add(place.order(), FaultCode::unknown_name, place["treatment"].pointer(),
                 "no row of the increments has this treatment");
    }
    responses.gains.push_back(std::move(gain));
  }
  if (!faults.empty()) return faults.in_file_order();
  return responses;
}

Result<std::vector<EstablishmentRecipe>> read_establishment_recipes(
    const std::string& text, const std::string& file, const EstablishmentCosts& costs,
    const EstablishmentResponses& responses) {
  FaultList faults(file);
  auto tree = json::parse(text, faults);
  if (!tree) return faults.in_file_order();
  check_values(*tree, establishment_alternative_options(), faults);
  const RecipeReader reader(costs, responses, faults);
  std::vector<EstablishmentRecipe> recipes;
  for (const Place& place : Place(&*tree, "")["alternatives"].items()) {
    refuse_twice(recipes, place, faults);
    recipes.push_back(reader.read(place));
  }
  if (!faults.empty()) return faults.in_file_order();
  return recipes;
}

}  // namespace staddle
