// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "support/files.h"
#include "support/program.h"

namespace staddle {
namespace {

using Json = nlohmann::ordered_json;
using support::run_staddle;

TEST_CASE("the list of models names both loblolly fits with source and fitted range") {
  const std::string text = run_staddle({"models"}).out;
  const Json json = Json::parse(run_staddle({"models", "--format", "json"}).out);
  CHECK(json["format"] == "staddle-models/1");
  REQUIRE(json["models"].size() >= 2);
  for (const Json& model : json["models"]) {
    for (const std::string key : {"id", "species", "region", "source", "fitted_range"}) {
      CHECK(model.contains(key));
    }
    CHECK(text.find(model["id"].get<std::string>() + "\n") != std::string::npos);
  }
  CHECK(text.find("site index 45 to 90 feet") != std::string::npos);
}

TEST_CASE("a model is shown with the coefficients of its file") {
  for (const std::string id : {"loblolly-planted-coastal", "loblolly-planted-upland"}) {
    CAPTURE(id);
    const Json file = Json::parse(
        support::read_file(support::in_source_tree("models/equations/" + id + ".json")));
    const Json shown = Json::parse(run_staddle({"models", id, "--format", "json"}).out);
    CHECK(shown["id"] == id);
    for (const auto& [part, letter, first] :
         {std::tuple{"basal_area", "b", 0}, {"total_weight", "y", 0}, {"merchantable", "m", 1}}) {
      CAPTURE(part);
      const Json& coefficients = file[part]["coefficients"];
      REQUIRE(coefficients.size() >= 5);
      for (std::size_t i = 0; i < coefficients.size(); ++i) {
        const std::string name = letter + std::to_string(i + static_cast<std::size_t>(first));
        CHECK(shown["equations"][part]["coefficients"][name] == coefficients[i]);
      }
    }
    CHECK(shown["equations"]["dominant_height"]["coefficients"]["rate"] ==
          file["dominant_height"]["rate"]);
    CHECK(shown["equations"]["survival"]["coefficients"]["e"] == file["survival"]["exponent"]);
    CHECK(shown["equations"]["thinned_stand"]["coefficients"]["k"] ==
          file["thinned_stand"]["recovery_per_yr"]);
  }
}

TEST_CASE("ways to start a stand are listed and shown with costs and sources") {
  const std::string list = run_staddle({"models"}).out;
  const Json json = Json::parse(run_staddle({"models", "--format", "json"}).out);
  REQUIRE(json["establishment"].size() >= 10);
  for (const Json& way : json["establishment"]) {
    const std::string id = way["id"];
    CAPTURE(id);
    CHECK(list.find("  " + id + " ") != std::string::npos);
    const std::string text = run_staddle({"models", id}).out;
    CHECK(text.starts_with(id + "\n"));
    const Json shown = Json::parse(run_staddle({"models", id, "--format", "json"}).out);
    CHECK(shown["planted_tpa"].get<double>() >= 400);
    CHECK(shown["sources"].size() >= 2);
    for (const Json& practice : shown["practices"]) {
      CHECK(text.find(practice["what"].get<std::string>() + ": $") != std::string::npos);
    }
  }
}

TEST_CASE("what the program adds to a model is shown with its numbers as assumptions") {
  const std::string text = run_staddle({"models", "loblolly-planted-upland"}).out;
  for (const std::string part :
       {"adds to every model: assumptions", "CR = 1 - exp((a + b / A) Dq / H)", "a = -1.35243",
        "rate = k clamp((CR - low) / span, 0, 1)", "low = 0.2, span = 0.2", "N_cut = f N / q^2",
        "P_i = Ym(t_i, d_i) - Ym(t_i, d_(i-1))", "d1 = 11.5, t1 = 8"}) {
    CAPTURE(part);
    CHECK(text.find(part) != std::string::npos);
  }
  const Json shown =
      Json::parse(run_staddle({"models", "loblolly-planted-upland", "--format", "json"}).out);
  for (const std::string key : {"products", "thinning", "live_crown_ratio", "thinning_response"}) {
    CHECK(shown["conventions"][key]["equation"].is_string());
  }
  CHECK(shown["conventions"]["live_crown_ratio"]["coefficients"]["b"] == -33.54194);
}

TEST_CASE("a model in text shows every equation and its coefficients") {
  const std::string text = run_staddle({"models", "loblolly-planted-coastal"}).out;
  for (const std::string part : {"b1 = -42.689283", "y0 = -5.175922", "m4 = -0.422117",
                                 "k = 0.110521", "second-hand", "exp(m1 (t / Dq)^m2"}) {
    CAPTURE(part);
    CHECK(text.find(part) != std::string::npos);
  }
}

}  // namespace
}  // namespace staddle
