// SPDX-License-Identifier: GPL-3.0-or-later
#include "fuzz/reading_promise.h"

#include <cmath>
#include <stdexcept>

#include "staddle/io/scenario_reader.h"
#include "staddle/regime/simulate.h"
#include "staddle/scenario/problems.h"

namespace staddle::fuzz {
namespace {

void promise(bool kept, const std::string& what) {
  if (!kept) throw std::logic_error("broken promise: " + what);
}

void check_faults(const Faults& faults) {
  promise(!faults.empty(), "a scenario that is refused has a fault");
  for (const Fault& fault : faults) {
    promise(!fault.text.empty(), "a fault says what was found");
    for (const char c : to_line(fault)) {
      promise(static_cast<unsigned char>(c) >= 0x20, "a fault is plain text");
    }
  }
}

void check_priced(const StandCase& stand_case, const StatedRegime& regime) {
  const auto report = simulate(stand_case, regime);
  if (!report) return check_faults(report.error());
  const RegimeValue& value = report->value;
  promise(std::isfinite(value.objective.in(dollars_per_acre)), "a value is finite");
  promise(std::isfinite(value.net_present_value.in(dollars_per_acre)), "a value is finite");
}

void check_scenario(const Scenario& scenario) {
  for (const Assumption& assumption : scenario.assumed) {
    promise(!assumption.value_json.empty() && !assumption.why.empty(), "an assumption is told");
  }
  if (std::holds_alternative<std::vector<TabledRegime>>(scenario.stand.source)) return;
  const ScenarioProblems problems = make_problems(scenario);
  const StandCase& stand_case = problems.stand.stand_case;
  for (const StatedRegime& regime : scenario.regimes) check_priced(stand_case, regime);
  const DecisionLattice& lattice = problems.stand.lattice;
  if (lattice.final_from <= lattice.final_to) {
    check_priced(stand_case, {"first", {}, lattice.final_from});
    check_priced(stand_case, {"last", {}, lattice.final_to});
  }
}

}  // namespace

Outcome check_reading(const std::string& text, const Files& files) {
  const auto result =
      read_scenario(text, "scenario.json", [&](const std::string& name) -> Result<std::string> {
        const auto found = files.find(name);
        if (found != files.end()) return found->second;
        return Faults{{FaultCode::unreadable, name, "", "there is no such file", ""}};
      });
  if (!result) {
    check_faults(result.error());
    for (const Fault& fault : result.error()) {
      promise(!fault.file.empty(), "a fault names its file");
    }
    return Outcome::refused;
  }
  check_scenario(*result);
  return Outcome::accepted;
}

}  // namespace staddle::fuzz
