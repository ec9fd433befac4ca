// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/establishment_block.h"

#include <algorithm>
#include <array>

#include "io/number_text.h"
#include "io/site_methods.h"
#include "staddle/io/model_library.h"
#include "staddle/plant/gates.h"
#include "staddle/scenario/planting.h"

namespace staddle {
namespace {

// A key that a built-in alternative gives has no default beside "from"; one that belongs to
// equations has none beside a table.
bool written_out(const json::Node& alternative, const json::Node&) {
  return alternative.find("from") == nullptr;
}
bool written_out_on_equations(const json::Node& alternative, const json::Node& root) {
  return written_out(alternative, root) && grows_by_equations(root);
}

constexpr DefaultCondition establishment_conditions[] = {
    {"/establishment/alternatives/#/methods", written_out},
    {"/establishment/alternatives/#/practices", written_out},
    {"/establishment/alternatives/#/site_index_shift_ft", written_out_on_equations},
    {"/establishment/alternatives/#/years_gained", written_out_on_equations},
};

// What only growth by equations answers to.
constexpr std::array<std::string_view, 6> of_equations = {
    "from",         "planted_tpa",      "site_index_shift_ft",
    "years_gained", "hardwood_percent", "precommercial_thinning"};

class EstablishmentReader {
 public:
  EstablishmentReader(ScenarioReading& reading, Scenario& scenario)
      : reading_(reading), block_(reading.root["establishment"]), scenario_(scenario) {}

  void read() {
    if (!block_.is(kinds::object)) return;
    if (reading_.tabled_regimes) {
      reading_.fault(block_, FaultCode::contradiction,
                     "tables of fixed regimes hold what was planted: there is nothing to choose",
                     "give a model or a yield table of the unthinned stand");
      return;
    }
    const Place list = block_["alternatives"];
    if (list.given()) {
      for (const Place& place : list.items()) read_alternative(place);
    } else {
      take_built_in(list);
    }
    if (establishment_.alternatives.empty()) return;
    read_use(block_["use"]);
    scenario_.establishment = std::move(establishment_);
    take_alternative_in_use(scenario_);
  }

 private:
  void take_built_in(const Place& list) {
    if (reading_.from_tables) {
      reading_.fault(list, FaultCode::missing_key,
                     "this key is required: the built-in ways to start a stand belong to growth by "
                     "a model, and this stand grows by a yield table");
      return;
    }
    std::string names;
    for (const EstablishmentRecipe& recipe : built_in_establishments()) {
      add(list, alternative_of(recipe, recipe.planted));
      names += (names.empty() ? "" : ",") + quoted_text(recipe.id);
    }
    reading_.assumed.push_back({list.pointer(), "[" + names + "]", "all that are built in"});
  }

  void read_alternative(const Place& place) {
    if (reading_.from_tables && refuse_responses(place)) return;
    EstablishmentAlternative alternative;
    const Place from = place["from"];
    if (from.given()) {
      const EstablishmentRecipe* recipe = recipe_of(from);
      if (!recipe) return;
      const std::optional<double> planted = place["planted_tpa"].number();
      alternative = alternative_of(*recipe, planted ? trees_per_acre(*planted) : recipe->planted);
    }
    read_name(place, alternative);
    if (place["methods"].there()) read_methods(place["methods"], alternative);
    if (place["practices"].there()) read_practices(place["practices"], alternative);
    read_growth(place, alternative);
    add(place, std::move(alternative));
  }

  bool refuse_responses(const Place& place) {
    bool refused = false;
    for (const std::string_view key : of_equations) {
      if (!place[key].given()) continue;
      refused = true;
      reading_.fault(place[key], FaultCode::contradiction,
                     "this belongs to growth by a model: a yield table grows as it stands",
                     "give names, methods and practices; what each way grows is the table's");
    }
    return refused;
  }

  const EstablishmentRecipe* recipe_of(const Place& from) {
    const auto id = from.text();
    if (!id) return nullptr;
    std::vector<std::string> known;
    for (const EstablishmentRecipe& recipe : built_in_establishments()) {
      if (recipe.id == *id) return &recipe;
      known.push_back(recipe.id);
    }
    std::string list;
    for (const std::string& name : known) list += (list.empty() ? "" : ", ") + name;
    reading_.fault(from, FaultCode::unknown_name,
                   "there is no built-in way " + quoted_text(*id) + "; there are " + list,
                   did_you_mean(nearest_name(*id, known)));
    return nullptr;
  }

  void read_name(const Place& place, EstablishmentAlternative& alternative) {
    const Place name = place["name"];
    const auto text = name.text();
    if (text && text->find_first_not_of(' ') == std::string::npos) {
      reading_.fault(name, FaultCode::out_of_range, "the text is empty");
    } else if (text) {
      alternative.name = *text;
    } else if (!name.given() && alternative.name.empty()) {
      reading_.fault(name, FaultCode::missing_key,
                     "this key is required: the name of the alternative");
    }
  }

  void read_methods(const Place& list, EstablishmentAlternative& alternative) {
    alternative.methods.clear();
    bool none = false;
    for (const Place& place : list.items()) {
      const auto name = place.text();
      if (!name) continue;
      none = none || *name == "none";
      if (*name == "none") continue;
      const SiteMethod method = site_method(*name);
      if (alternative.has(method)) {
        reading_.fault(place, FaultCode::contradiction, quoted_text(*name) + " is named twice");
      } else {
        alternative.methods.push_back(method);
      }
    }
    if (none && !alternative.methods.empty()) {
      reading_.fault(list, FaultCode::contradiction, "\"none\" stands beside other methods");
    }
  }

  void read_practices(const Place& list, EstablishmentAlternative& alternative) {
    alternative.practices.clear();
    alternative.sources.clear();
    for (const Place& place : list.items()) {
      const auto at = place["age_yr"].whole();
      const auto cost = place["usd_ac"].number();
      if (!at || !cost) continue;
      alternative.practices.push_back(
          {place["what"].text_or_empty(), age(*at), dollars_per_acre(*cost)});
    }
  }

  void read_growth(const Place& place, EstablishmentAlternative& alternative) {
    if (const auto tpa = place["planted_tpa"].number()) alternative.planted = trees_per_acre(*tpa);
    if (const auto shift = place["site_index_shift_ft"].number()) {
      alternative.site_index_shift = feet(*shift);
    }
    if (const auto gained = place["years_gained"].number()) {
      alternative.response.years_gained = *gained;
    }
    read_hardwoods(place["hardwood_percent"], alternative);
    const Place thinning = place["precommercial_thinning"];
    const auto at = thinning["age_yr"].whole();
    const auto to = thinning["to_tpa"].number();
    if (at && to) {
      alternative.response.precommercial = PrecommercialThinning{age(*at), trees_per_acre(*to)};
    }
    check_site(place, alternative);
    check_planting(place, alternative);
    if (alternative.response.precommercial) check_thinning(place, alternative);
  }

  void read_hardwoods(const Place& percent, EstablishmentAlternative& alternative) {
    const auto value = percent.number();
    const auto* equations = std::get_if<EquationSet>(&scenario_.stand.source);
    if (!value || !equations || equations->id.empty()) return;
    if (!equations->hardwood_per_percent) {
      reading_.fault(percent, FaultCode::contradiction,
                     "the model " + equations->id + " prints no response to hardwoods",
                     "leave it out, or take loblolly-planted-upland where the land is upland");
      return;
    }
    alternative.response.hardwood_percent = *value;
  }

  void check_site(const Place& place, const EstablishmentAlternative& alternative) {
    if (!scenario_.stand.site_index) return;
    const double site = (*scenario_.stand.site_index + alternative.site_index_shift).in(feet);
    if (site >= least_site_index_ft && site <= most_site_index_ft) return;
    const Place shift = place["site_index_shift_ft"];
    reading_.fault(shift.given() ? shift : place, FaultCode::out_of_range,
                   "it would make the site index " + number_text(site) + " ft; allowed is from " +
                       number_text(least_site_index_ft) + " to " + number_text(most_site_index_ft) +
                       " ft");
  }

  void check_planting(const Place& place, const EstablishmentAlternative& alternative) {
    const bool known = reading_.from_tables || alternative.planted || scenario_.stand.planted ||
                       reading_.root["stand"]["planted_tpa"].given();
    if (known) return;
    reading_.fault(place["planted_tpa"], FaultCode::missing_key,
                   "this key is required where the stand names no planted_tpa");
  }

  void check_thinning(const Place& place, const EstablishmentAlternative& alternative) {
    const PrecommercialThinning& thinning = *alternative.response.precommercial;
    const Place own = place["precommercial_thinning"];
    const auto planted = alternative.planted ? alternative.planted : scenario_.stand.planted;
    if (planted && thinning.to >= *planted) {
      reading_.fault(own.given() ? own["to_tpa"] : place, FaultCode::contradiction,
                     "it would leave " + number_text(thinning.to.in(trees_per_acre)) +
                         " trees an acre of " + number_text(planted->in(trees_per_acre)));
    }
    const DecisionLattice& lattice = scenario_.lattice;
    if (lattice.max_thinnings > 0 && thinning.at >= lattice.thinning_from) {
      reading_.fault(own.given() ? own["age_yr"] : place, FaultCode::contradiction,
                     "it comes at age " + std::to_string(thinning.at.whole()) +
                         ", and thinnings for sale may begin at " +
                         std::to_string(lattice.thinning_from.whole()),
                     "let decisions.thinning_age_yr begin later");
    }
  }

  void add(const Place& place, EstablishmentAlternative alternative) {
    const auto same = [&](const EstablishmentAlternative& other) {
      return !alternative.name.empty() && other.name == alternative.name;
    };
    if (std::ranges::any_of(establishment_.alternatives, same)) {
      reading_.fault(place["name"].given() ? place["name"] : place, FaultCode::contradiction,
                     "two alternatives are named " + quoted_text(alternative.name));
    }
    establishment_.alternatives.push_back(std::move(alternative));
  }

  // ---- the one in use

  void read_use(const Place& place) {
    const auto name = place.text();
    if (!name) return;
    std::vector<std::string> known;
    for (std::size_t i = 0; i < establishment_.alternatives.size(); ++i) {
      known.push_back(establishment_.alternatives[i].name);
      if (known.back() == *name) establishment_.use = i;
    }
    if (!establishment_.use) {
      std::string list;
      for (const std::string& one : known) list += (list.empty() ? "" : ", ") + quoted_text(one);
      reading_.fault(place, FaultCode::unknown_name,
                     "there is no alternative " + quoted_text(*name) + "; there are " + list,
                     did_you_mean(nearest_name(*name, known)));
      return;
    }
    const EstablishmentAlternative& used = establishment_.alternatives[*establishment_.use];
    const std::string shut = shut_by(used, scenario_.site);
    if (!shut.empty()) {
      reading_.fault(place, FaultCode::contradiction,
                     quoted_text(*name) + " may not be used here: " + shut);
    }
    check_stated_regimes(place, used);
    reading_.assumed.push_back({place.pointer(), quoted_text(*name),
                                "it takes the place of economics.establishment_usd_ac, "
                                "economics.practices and stand.planted_tpa wherever a stand is "
                                "planted"});
  }

  // A young stand's thinning comes before any other cut of it.
  void check_stated_regimes(const Place& place, const EstablishmentAlternative& used) {
    if (reading_.standing || !used.response.precommercial) return;
    for (const StatedRegime& regime : scenario_.regimes) {
      for (const StatedThinning& thinning : regime.thinnings) {
        if (thinning.at > used.response.precommercial->at) continue;
        reading_.fault(place, FaultCode::contradiction,
                       "the regime " + quoted_text(regime.name) + " cuts at age " +
                           std::to_string(thinning.at.whole()) +
                           ", not after the young stand is thinned");
        return;
      }
    }
  }

  ScenarioReading& reading_;
  const Place block_;
  Scenario& scenario_;
  Establishment establishment_;
};

void read_establishment(ScenarioReading& reading, Scenario& scenario) {
  EstablishmentReader(reading, scenario).read();
}

}  // namespace

ScenarioBlock establishment_block() {
  return {establishment_options(), establishment_conditions, read_establishment};
}

}  // namespace staddle
