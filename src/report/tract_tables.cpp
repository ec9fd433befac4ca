// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/tract_tables.h"

#include <fmt/format.h>

#include <algorithm>

#include "report/cells.h"
#include "report/plan_words.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

// More jobs than this are told for the first period alone.
constexpr std::size_t most_jobs = 200;

Cell tons_cell(Weight weight) { return cells::number(weight.in(tons)); }

Cell acres_cell(Area area) { return cells::number(area.in(acres), 1); }

std::string what_of(const TractAction& job) {
  std::string what = name_of(job);
  if (job.kind == TractAction::Kind::thinning) {
    what += ", " + words::removal(job.removal_fraction) + " of the basal area";
  }
  return job.successor ? what + " (next stand)" : what;
}

}  // namespace

std::string name_of(const TractAction& job) {
  switch (job.kind) {
    case TractAction::Kind::thinning:
      return "thinning";
    case TractAction::Kind::final_harvest:
      return "final harvest";
    case TractAction::Kind::planting:
      break;
  }
  return "planting";
}

Weight all_tons(const TractAction& job) {
  Weight sum;
  for (const Weight tons_of_product : job.tons) sum += tons_of_product;
  return sum;
}

std::vector<TractAction> jobs_of(const TractSolution& solution) {
  constexpr double shown_acres = 0.05;  // acres have one decimal
  std::vector<TractAction> jobs;
  for (const TractAction& action : solution.actions) {
    const auto alike = std::ranges::find_if(jobs, [&](const TractAction& job) {
      return job.year == action.year && job.stand == action.stand && job.kind == action.kind &&
             job.successor == action.successor && job.removal_fraction == action.removal_fraction;
    });
    if (alike == jobs.end()) {
      jobs.push_back(action);
      continue;
    }
    alike->acres += action.acres;
    alike->money += action.money;
    for (std::size_t i = 0; i < alike->tons.size(); ++i) alike->tons[i] += action.tons[i];
  }
  std::erase_if(jobs, [](const TractAction& job) { return job.acres.in(acres) < shown_acres; });
  return jobs;
}

Section jobs_section(const TractFile& tract, const TractSolution& solution) {
  Section section{"What to do, year by year", {}, {}, {}};
  const std::vector<TractAction> jobs = jobs_of(solution);
  if (jobs.empty()) {
    section.paragraphs.push_back("Nothing is cut or planted within the plan.");
    return section;
  }
  const PlanYears in_plan(tract);
  const bool all = jobs.size() <= most_jobs;
  const int last = all ? tract.plan.years : tract.plan.period_yr;
  if (!all) {
    section.paragraphs.push_back(
        fmt::format("The jobs of the first period; --format csv lists all {}.",
                    words::number(static_cast<double>(jobs.size()))));
  }
  Table table{"",
              {{"year"},
               {"stand", "", true},
               {"what", "", true},
               {"area", "acres"},
               {"cut", "tons"},
               {"money", "$"}},
              {}};
  for (const TractAction& job : jobs) {
    if (job.year > last) break;
    const bool planting = job.kind == TractAction::Kind::planting;
    table.rows.push_back(
        {cells::words(in_plan.name(job.year)), cells::words(solution.stands.at(job.stand).name),
         cells::words(what_of(job)), acres_cell(job.acres),
         planting ? cells::blank() : tons_cell(all_tons(job)), cells::tract(job.money)});
  }
  section.tables.push_back(std::move(table));
  return section;
}

Section money_section(const TractFile& tract, const TractSolution& solution) {
  Section section{"Money, acres and tons by period", {}, {}, {}};
  const PlanYears in_plan(tract);
  const bool storms = std::ranges::any_of(
      tract.stands, [](const TractFileStand& stand) { return stand.scenario.hazard.active(); });
  section.paragraphs.push_back(
      std::string("Dollars of today's worth as they come, not discounted. Income is what cuts "
                  "bring after fees, and yearly income; cost is everything else. What falls into "
                  "the present year counts in the first period.") +
      (storms ? " Storms are in these figures as averages: no single year will be like them."
              : ""));
  Table table{"",
              {{"years", "", true},
               {"income", "$"},
               {"cost", "$"},
               {"left over", "$"},
               {"final harvest", "acres"}},
              {}};
  for (const std::string& product : solution.products) {
    table.columns.push_back({words::product(product), "tons"});
  }
  if (tract.plan.open_stand) table.columns.push_back({"kept open", "acres"});
  for (const TractPeriod& period : solution.periods) {
    std::vector<Cell> row{cells::words(in_plan.span(period.from_year, period.to_year)),
                          cells::tract(period.income), cells::tract(period.cost),
                          cells::tract(period.income - period.cost),
                          acres_cell(period.final_harvest_acres)};
    for (const Weight weight : period.tons) row.push_back(tons_cell(weight));
    if (tract.plan.open_stand) row.push_back(acres_cell(period.open_acres));
    table.rows.push_back(std::move(row));
  }
  section.tables.push_back(std::move(table));
  return section;
}

Section stands_section(const TractFile& tract, const TractSolution& solution) {
  Section section{"Stand by stand, beside the best of each alone", {}, {}, {}};
  Table table{"",
              {{"stand", "", true},
               {"area", "acres"},
               {"in this plan", "", true},
               {"worth", "$/acre"},
               {"alone", "", true},
               {"worth", "$/acre"}},
              {}};
  for (std::size_t i = 0; i < solution.stands.size(); ++i) {
    const StandSchedule& stand = solution.stands[i];
    const Dates dates(tract.stands.at(i).scenario);
    const std::string alone = plan_in_words(dates, stand.unlimited);
    bool first = true;
    for (const RegimeShare& share : stand.regimes) {
      const std::string here = plan_in_words(dates, share.report.regime());
      table.rows.push_back({cells::words(first ? stand.name : ""), acres_cell(share.acres),
                            cells::words(here), cells::per_acre(share.present_value),
                            cells::words(!first          ? ""
                                         : alone == here ? "the same"
                                                         : alone),
                            first ? cells::per_acre(stand.unlimited_value) : cells::blank()});
      first = false;
    }
  }
  section.tables.push_back(std::move(table));
  return section;
}

}  // namespace staddle
