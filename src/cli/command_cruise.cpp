// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_cruise.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <filesystem>

#include "cli/cruise_options.h"
#include "cli/input_file.h"
#include "cli/output_file.h"
#include "cli/relocated.h"
#include "staddle/io/cruise_writer.h"
#include "staddle/io/plots_reader.h"
#include "staddle/report/cruise_text.h"

namespace staddle::cli {
namespace {

namespace fs = std::filesystem;

// The files of a cruise, read; and the text of the economics, which --to writes on.
struct CruiseFiles {
  std::vector<Plot> plots;
  std::optional<Scenario> economics;
  std::string economics_text;
};

Outcome wrong_words(Faults faults) { return {ExitCode::wrong_command_line, "", std::move(faults)}; }

Fault word_fault(FaultCode code, const std::string& text, const std::string& hint = "") {
  return {code, "", "", text, hint};
}

// What can be wrong with the files a command line names before any is read.
Faults faults_of_files(const CruiseOptions& options) {
  Faults faults;
  if (options.plots == "-" && options.economics == "-") {
    faults.push_back(word_fault(FaultCode::contradiction,
                                "tally and economics cannot both be read from standard input"));
  }
  const auto overwrites = [&](const std::string& option, const std::string& target,
                              const std::string& input) {
    if (same_file(target, input)) {
      faults.push_back(word_fault(FaultCode::contradiction,
                                  option + " " + target + " would overwrite an input"));
    }
  };
  if (options.output.file) {
    overwrites("-o", *options.output.file, options.plots);
    if (options.economics) overwrites("-o", *options.output.file, *options.economics);
  }
  if (!options.to) return faults;
  std::error_code error;
  if (fs::exists(fs::symlink_status(*options.to, error))) {
    faults.push_back(word_fault(FaultCode::contradiction,
                                "option --to: " + *options.to + " exists and is not overwritten"));
  } else if (options.output.file && fs::path(*options.output.file) == fs::path(*options.to)) {
    faults.push_back(
        word_fault(FaultCode::contradiction, "--to and -o name the same file, " + *options.to));
  }
  return faults;
}

Result<CruiseFiles> read_files(const CruiseOptions& options) {
  CruiseFiles files;
  if (options.economics) {
    Result<std::string> text = read_input(*options.economics);
    if (!text) return text.error();
    files.economics_text = std::move(text).value();
    Result<Scenario> scenario = read_scenario(files.economics_text, shown_name(*options.economics),
                                              loader_beside(*options.economics));
    if (!scenario) return scenario.error();
    files.economics = std::move(scenario).value();
  }
  std::vector<std::string> products;
  for (const ProductLimit& product :
       files.economics ? files.economics->products : default_products()) {
    products.push_back(product.name);
  }
  const Result<std::string> text = read_input(options.plots);
  if (!text) return text.error();
  Result<std::vector<Plot>> plots = read_plots(*text, shown_name(options.plots), products);
  if (!plots) return plots.error();
  files.plots = std::move(plots).value();
  return files;
}

// What the words say that the files contradict.
Faults contradictions(const CruiseRequest& request, const CruiseFiles& files) {
  Faults faults;
  std::vector<std::string> names;
  for (const Plot& plot : files.plots) names.push_back(plot.stratum);
  Area sum;
  bool all_known = !request.strata.empty();
  for (const StratumAcres& stratum : request.strata) {
    sum += stratum.acres;
    if (std::find(names.begin(), names.end(), stratum.name) != names.end()) continue;
    const std::string nearest = nearest_name(stratum.name, names);
    faults.push_back(
        word_fault(FaultCode::unknown_name,
                   "option --stratum-acres: no plot lies in a stratum \"" + stratum.name + "\"",
                   nearest.empty() ? "" : "did you mean " + nearest + "?"));
  }
  for (const std::string& name : names) {
    all_known = all_known && std::any_of(request.strata.begin(), request.strata.end(),
                                         [&](const StratumAcres& s) { return s.name == name; });
  }
  constexpr double rounding = 0.01;  // acres are often stated to a tenth
  if (all_known && request.terms.area && std::fabs(sum / *request.terms.area - 1.0) > rounding) {
    faults.push_back(word_fault(FaultCode::contradiction,
                                fmt::format("--acres is {:g}, but the strata sum to {:g} acres",
                                            request.terms.area->in(acres), sum.in(acres))));
  }
  const auto* table =
      files.economics ? std::get_if<YieldTable>(&files.economics->stand.source) : nullptr;
  if (table != nullptr && !request.terms.model && request.terms.at) {
    const int at = request.terms.at->whole();
    if (at < table->age_yr.front() || at > table->age_yr.back()) {
      faults.push_back(
          word_fault(FaultCode::out_of_range,
                     fmt::format("option --age-yr: found {}; the yield table covers ages {} to {}",
                                 at, table->age_yr.front(), table->age_yr.back())));
    }
  }
  return faults;
}

// Writes the scenario; nothing where all went well.
std::optional<Outcome> write_scenario(const CruiseOptions& options, const CruiseQuestion& question,
                                      const Appraisal& appraisal,
                                      const std::string& economics_text) {
  const Result<std::string> text = cruise_scenario(
      question, appraisal, economics_text,
      [&](const std::string& name) { return relocated(name, *options.economics, *options.to); });
  if (!text) return wrong_input(text.error(), shown_name(options.plots));
  const Result<Scenario> check = read_scenario(*text, *options.to, loader_beside(*options.to));
  if (!check) return wrong_input(check.error(), *options.to);
  const std::optional<std::string> failure = write_output(*text, options.to);
  if (!failure) return std::nullopt;
  return Outcome{ExitCode::fault, "", {{FaultCode::unreadable, "", "", *failure, ""}}};
}

Outcome run(const CruiseOptions& options) {
  Result<CruiseRequest> request = understand(options);
  if (!request) return wrong_words(request.error());
  Faults faults = faults_of_files(options);
  if (!faults.empty()) return wrong_words(std::move(faults));
  Result<CruiseFiles> files = read_files(options);
  if (!files) return wrong_input(files.error(), shown_name(options.plots));
  faults = contradictions(*request, *files);
  if (!faults.empty()) return wrong_words(std::move(faults));

  CruiseTerms terms = request->terms;
  terms.economics = files->economics;
  const CruiseQuestion question =
      make_cruise_question(shown_name(options.plots),
                           {request->design, files->plots, request->strata}, std::move(terms));
  const Appraisal appraisal = appraise(question.problem);
  if (options.to) {
    if (const auto failed = write_scenario(options, question, appraisal, files->economics_text)) {
      return *failed;
    }
  }
  if (options.output.format == "json") return done(cruise_json(question, appraisal));
  if (options.output.format == "csv") return done(cruise_csv(appraisal));
  return done(cruise_text(question, appraisal));
}

constexpr const char* cruise_example =
    "scenarios/cruise/prism_points.csv: what the plots say\n"
    "=====================================================\n"
    "12 plots, point samples with a factor of 10, one without trees; 151 trees tallied.\n"
    "...\n";

}  // namespace

Command cruise_command() {
  return {
      "cruise",
      "what the plots of a cruise say of a stand: timber, error, value, ready or not",
      "How much stands on an acre, of what sizes and products, what it is worth today, how far\n"
      "all that may be from the truth, how many plots would be needed, and whether the stand\n"
      "is ready to be thinned. With --to the stand becomes a scenario to ask advice on.",
      "staddle cruise scenarios/cruise/prism_points.csv --basal-area-factor 10",
      cruise_example,
      binder<CruiseOptions>(set_up_cruise, run)};
}

}  // namespace staddle::cli
