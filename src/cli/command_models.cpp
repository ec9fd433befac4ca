// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_models.h"

#include <algorithm>

#include "staddle/io/establishment_writer.h"
#include "staddle/io/model_library.h"
#include "staddle/io/models_writer.h"

namespace staddle::cli {
namespace {

struct ModelsOptions {
  std::optional<std::string> id;
  OutputOptions output;
};

void set_up(CommandLine& line, ModelsOptions& options) {
  line.optional_argument("ID",
                         "show the equations and coefficients of this model, or what this way to "
                         "start a stand costs and gains",
                         &options.id);
  add_output_options(line, {"text", "json"}, &options.output);
}

Outcome run(const ModelsOptions& options) {
  const std::vector<EquationSet>& models = built_in_equation_sets();
  const bool json = options.output.format == "json";
  const std::vector<EstablishmentRecipe>& ways = built_in_establishments();
  if (!options.id) return done(json ? models_json(models, ways) : models_text(models, ways));
  const auto model = std::find_if(models.begin(), models.end(), [&](const EquationSet& candidate) {
    return candidate.id == *options.id;
  });
  if (model != models.end()) return done(json ? model_json(*model) : model_text(*model));
  const auto way = std::ranges::find(ways, *options.id, &EstablishmentRecipe::id);
  if (way != ways.end()) return done(json ? establishment_json(*way) : establishment_text(*way));
  Words ids;
  for (const EquationSet& known : models) ids.push_back(known.id);
  for (const EstablishmentRecipe& known : ways) ids.push_back(known.id);
  const std::string nearest = nearest_name(*options.id, ids);
  return wrong_command_line(
      "no model has the id \"" + *options.id + "\"",
      nearest.empty() ? "\"staddle models\" lists them" : "did you mean " + nearest + "?");
}

}  // namespace

Command models_command() {
  return {"models",
          "the growth models and ways to start a stand built in, with their sources",
          "Which growth models the program carries, where each comes from and for which stands\n"
          "it was fitted, and which ways to start a stand; with an ID, the equations and the\n"
          "coefficients in use, or the costs and gains.",
          "staddle models loblolly-planted-coastal",
          "loblolly-planted-coastal\n"
          "  species  loblolly pine, planted on prepared sites",
          binder<ModelsOptions>(set_up, run)};
}

}  // namespace staddle::cli
