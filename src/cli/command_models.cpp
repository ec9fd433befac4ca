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

const char* const models_example_output =
    R"(loblolly-planted-coastal
  species  loblolly pine, planted on prepared sites
  region   lower coastal plain of the Carolinas, Georgia, Alabama and Florida
  source   Harrison, W.M. and Borders, B.E. (1996), Yield prediction and growth projection for
           site-prepared loblolly pine plantations in the Carolinas, Georgia, Alabama and Florida,
           technical report 1996-1, University of Georgia
  fitted   ages 10 to 25 years, 100 to 1000 trees per acre, site index 45 to 90 feet

A: age in years; SI: site index, the dominant height at the base age; H: dominant height;
N: trees and B: basal area per acre; Dq: quadratic mean diameter; ln: natural logarithm.

dominant height, feet
  H = SI ((1 - exp(-rate A)) / (1 - exp(-rate base)))^shape
  rate = 0.014452, shape = 0.8216, base = 25

trees per acre
  N2 = floor + ((N1 - floor)^-e + rate^2 SI (A2^p - A1^p))^(-1/e); held at or below the floor
  floor = 100, e = 0.745339, rate = 0.0003425, p = 1.97472

basal area of an unthinned stand, square feet per acre
  ln Bu = b0 + b1 / A + b2 ln N + b3 ln H + b4 ln N / A + b5 ln H / A)";

}  // namespace

Command models_command() {
  return {"models",
          "the growth models and ways to start a stand built in, with their sources",
          "Which growth models the program carries, where each comes from and for which stands\n"
          "it was fitted, and which ways to start a stand; with an ID, the equations and the\n"
          "coefficients in use, or the costs and gains.",
          "staddle models loblolly-planted-coastal",
          models_example_output,
          binder<ModelsOptions>(set_up, run)};
}

}  // namespace staddle::cli
