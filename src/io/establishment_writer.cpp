// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/establishment_writer.h"

#include <fmt/format.h>

#include "io/number_text.h"
#include "io/site_methods.h"
#include "io/value_writer.h"
#include "report/wrap.h"
#include "staddle/report/text.h"

namespace staddle {
namespace {

using json::Value;

std::string line(const std::string& name, const std::string& text) {
  return wrapped(text, fmt::format("  {:<9}", name), std::string(11, ' '), text_width) + "\n";
}

std::string methods_text(const EstablishmentRecipe& recipe) {
  std::string text;
  for (const SiteMethod method : recipe.methods) {
    text += (text.empty() ? "" : ", ") + site_method_name(method);
  }
  return text.empty() ? "none" : text;
}

std::string gains_text(const EstablishmentRecipe& recipe) {
  std::string text = number_text(recipe.response.years_gained) + " years";
  if (recipe.site_index_shift != Height()) {
    text += ", " + number_text(recipe.site_index_shift.in(feet)) + " ft of site index";
  }
  if (recipe.response.precommercial) {
    text += fmt::format(", thinned to {} trees an acre at age {}",
                        number_text(recipe.response.precommercial->to.in(trees_per_acre)),
                        recipe.response.precommercial->at.whole());
  }
  return text;
}

}  // namespace

std::string establishment_text(const EstablishmentRecipe& recipe) {
  const EstablishmentAlternative whole = alternative_of(recipe, recipe.planted);
  std::string text = recipe.id + "\n" + line("name", recipe.name) +
                     line("methods", methods_text(recipe)) +
                     line("trees", number_text(recipe.planted.in(trees_per_acre)) + " an acre") +
                     line("gains", gains_text(recipe)) + "\nWhat is paid, an acre\n";
  for (const Practice& practice : whole.practices) {
    text += fmt::format("  {}: ${}, {}\n", practice.what,
                        number_text(practice.cost.in(dollars_per_acre)),
                        practice.at == age(0) ? std::string("at planting")
                                              : fmt::format("at age {}", practice.at.whole()));
  }
  text += "\nWhere the figures come from\n";
  for (const std::string& source : recipe.sources) {
    text += wrapped(source, "  ", "  ", text_width) + "\n";
  }
  return text;
}

std::string establishment_json(const EstablishmentRecipe& recipe) {
  const EstablishmentAlternative whole = alternative_of(recipe, recipe.planted);
  Value result{{"format", "staddle-establishment-way/1"}, {"id", recipe.id}, {"name", recipe.name}};
  result["methods"] = json::list(recipe.methods, site_method_name);
  result["planted_tpa"] = json::number(recipe.planted.in(trees_per_acre));
  result["years_gained"] = json::number(recipe.response.years_gained);
  result["site_index_shift_ft"] = json::number(recipe.site_index_shift.in(feet));
  result["precommercial_thinning"] =
      json::optional(recipe.response.precommercial, [](const PrecommercialThinning& thinning) {
        return Value{{"age_yr", json::whole_age(thinning.at)},
                     {"to_tpa", json::number(thinning.to.in(trees_per_acre))}};
      });
  result["practices"] = json::list(whole.practices, [](const Practice& practice) {
    return Value{{"what", practice.what},
                 {"age_yr", json::whole_age(practice.at)},
                 {"usd_ac", json::usd_ac(practice.cost)}};
  });
  result["sources"] = recipe.sources;
  return json::result_text(result);
}

}  // namespace staddle
