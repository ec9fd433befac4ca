// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/stands_answers.h"

#include "io/advice_value.h"
#include "staddle/scenario/advise_problem.h"

namespace staddle {
namespace {

// Enough that threads seldom wait for each other, few enough to be seen to move.
constexpr std::size_t rows_at_once = 64;

struct Answer {
  std::string line;
  std::size_t StandsTally::*kind = nullptr;  // where it counts
};

Answer refusal(const StandRow& row, const Faults& faults) {
  const json::Value object{
      {"name", row.name},
      {"line", row.line},
      {"errors", json::list(faults, [](const Fault& fault) { return to_line(fault); })}};
  return {json::result_line(object), &StandsTally::faulty};
}

Answer answer_of(const StandsReader& reader, const StandRow& row, const StandsOptions& options) {
  const Result<Scenario> scenario = reader.scenario_of(row);
  if (!scenario) return refusal(row, scenario.error());
  const Result<AdviseProblem> problem = make_advise_problem(*scenario);
  if (!problem) return refusal(row, problem.error());
  AdviseOptions how;
  how.exhaustive = options.exhaustive;
  const Result<Advice> advice = advise(*problem, how);
  if (!advice) return refusal(row, advice.error());
  const json::Value told = json::advice(*scenario, *advice);
  json::Value object{{"format", told["format"]}, {"name", row.name}, {"line", row.line}};
  object.update(told);
  return {json::result_line(object), &StandsTally::answered};
}

}  // namespace

StandsTally answer_stands(StandsReader reader, const StandsOptions& options,
                          const std::function<bool(const std::string& line)>& sink) {
  const StandsPart part = options.part;
  require(1 <= part.number && part.number <= part.of, "a part is one of so many");
  const std::size_t begin = reader.size() * (part.number - 1) / part.of;
  const std::size_t end = reader.size() * part.number / part.of;
  for (std::size_t i = 0; i < begin; ++i) reader.next();
  StandsTally tally;
  for (std::size_t at = begin; at < end;) {
    std::vector<StandRow> rows;
    for (; at < end && rows.size() < rows_at_once; ++at) rows.push_back(reader.next().value());
    std::vector<Answer> answers(rows.size());
    const bool all = for_each_chunk(
        rows.size(), options.threads,
        [&](std::size_t i) { answers[i] = answer_of(reader, rows[i], options); }, options.stop);
    if (!all) return tally;
    for (const Answer& answer : answers) {
      ++(tally.*answer.kind);
      if (!sink(answer.line)) return tally;
    }
    if (options.progress) {
      options.progress(static_cast<double>(at - begin) / static_cast<double>(end - begin));
    }
  }
  tally.complete = true;
  return tally;
}

}  // namespace staddle
