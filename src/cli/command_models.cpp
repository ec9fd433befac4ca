// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_models.h"

#include <algorithm>

#include "staddle/io/model_library.h"
#include "staddle/io/models_writer.h"

namespace staddle::cli {
namespace {

struct ModelsOptions {
  std::optional<std::string> id;
  OutputOptions output;
};

void set_up(CommandLine& line, ModelsOptions& options) {
  line.optional_argument("ID", "show the equations and coefficients of this model", &options.id);
  add_output_options(line, {"text", "json"}, &options.output);
}

Outcome run(const ModelsOptions& options) {
  const std::vector<EquationSet>& models = built_in_equation_sets();
  const bool json = options.output.format == "json";
  if (!options.id) return done(json ? models_json(models) : models_text(models));
  const auto model = std::find_if(models.begin(), models.end(), [&](const EquationSet& candidate) {
    return candidate.id == *options.id;
  });
  if (model != models.end()) return done(json ? model_json(*model) : model_text(*model));
  Words ids;
  for (const EquationSet& known : models) ids.push_back(known.id);
  const std::string nearest = nearest_name(*options.id, ids);
  return wrong_command_line(
      "no model has the id \"" + *options.id + "\"",
      nearest.empty() ? "\"staddle models\" lists them" : "did you mean " + nearest + "?");
}

}  // namespace

Command models_command() {
  return {"models",
          "the growth models built in: species, region, source, fitted range",
          "Which growth models the program carries, where each comes from and for which stands\n"
          "it was fitted; with an ID, the equations and the coefficients in use.",
          "staddle models loblolly-planted-coastal",
          "loblolly-planted-coastal\n"
          "  species  loblolly pine, planted on prepared sites",
          binder<ModelsOptions>(set_up, run)};
}

}  // namespace staddle::cli
