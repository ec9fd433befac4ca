// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/operations.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "report/dates.h"
#include "report/season.h"
#include "signs/counted_words.h"
#include "signs/plain_words.h"
#include "staddle/base/contract.h"
#include "staddle/scenario/planting.h"

namespace staddle {
namespace {

constexpr int years_to_measuring = 5;
const char* const practice_of_trade = "common practice, no source";
const char* const months_from_memory = "common practice, no source; the months are from memory";
const char* const from_the_file = "as the scenario states it";

const char* const felling =
    "Felling and logging are dangerous work, for trained crews. The state's rules on wetlands, "
    "endangered species and best management practices apply.";
const char* const herbicides =
    "Herbicides are put out only by a licensed applicator and by the label.";
const char* const fire = "Prescribed fire is set only by certified burners with a permit.";
const char* const forester = "Have a registered forester walk the stand before a sale.";

// A plan whose work is told, and how its jobs are named apart from those of others.
struct Planned {
  const Scenario& scenario;
  const RegimeReport& plan;
  bool standing;
  Area area;
  std::string key_prefix, name_prefix;
  std::string about_first_sale;  // a sentence; may be empty
};

class WorkPlan {
 public:
  explicit WorkPlan(const Planned& planned)
      : scenario_(planned.scenario),
        plan_(planned.plan),
        standing_(planned.standing),
        area_(planned.area),
        key_prefix_(planned.key_prefix),
        name_prefix_(planned.name_prefix),
        about_first_sale_(planned.about_first_sale),
        dates_(planned.scenario) {
    require(dates_.calendar(), "operations need the year of the present");
    present_ = dates_.year_of(dates_.present());
  }

  std::vector<Operation> all() {
    if (!standing_) add_planting("first", present_, 0, scenario_.site.month_of_cut);
    add_stated_practices();
    add_measuring_after_last_thinning();
    int entry = 0;
    for (const ThinningRecord& cut : plan_.thinnings) {
      if (!cut.cuts_nothing) add_thinning(cut, ++entry);
    }
    add_final_harvest();
    // What is over when the present year begins is left out, what runs is cut short.
    const CalendarDay today = season::day(present_, 1, 1);
    std::erase_if(work_, [&](const Operation& job) { return job.last < today; });
    for (Operation& job : work_) job.first = std::max(job.first, today);
    std::ranges::stable_sort(work_, {}, &Operation::first);
    return std::move(work_);
  }

 private:
  void add(const std::string& key, const std::string& what, season::Days days,
           const std::string& details, const std::string& caution = "",
           const std::string& basis = practice_of_trade) {
    work_.push_back(
        {key_prefix_ + key, name_prefix_ + what, days.first, days.last, details, caution, basis});
  }

  bool wet() const { return scenario_.site.drainage == SiteFacts::Drainage::wet; }

  // Marking, bids, contract and cut.
  season::Sale add_sale(const std::string& key, const std::string& name, Age at,
                        const std::string& what_to_leave, const std::string& what_it_yields) {
    const season::Sale sale = season::sale(dates_.year_of(at), scenario_.site, present_);
    const std::string to_mark =
        what_to_leave.empty() ? "Mark the lines of the sale." : what_to_leave;
    add(key + "-marking", "Mark " + name, sale.marking,
        to_mark + " Allow two months for marking and a cruise of what is to be sold.", forester);
    add(key + "-bids", "Ask for sealed bids on " + name, sale.bids,
        what_it_yields + " Give buyers four to six weeks.", forester);
    add(key + "-contract", "Contract of " + name, sale.contract,
        "A timber contract gives the buyer 12 to 24 months to cut; this one ends after 24 at the "
        "latest. It says who repairs roads and what is paid for damage to the trees that stay.");
    std::string when = cutting_season() + std::exchange(about_first_sale_, {});
    if (sale.month_too_early) {
      when =
          "The month that the file names comes too early this year to mark and sell before it. " +
          when;
    }
    add(key + "-cutting", words::capital(name.starts_with("the ") ? name.substr(4) : name),
        sale.cutting, what_to_leave + (what_to_leave.empty() ? "" : " ") + when, felling,
        wet() && !scenario_.site.month_of_cut ? months_from_memory : practice_of_trade);
    return sale;
  }

  std::string cutting_season() const {
    if (wet()) return "This ground is wet: log in the dry season only.";
    std::string text = "Log wet spots in the dry season only.";
    if (scenario_.site.soil == SiteFacts::Soil::sand) {
      text += " On sand thin from May to August, against root disease (from memory).";
    }
    return text;
  }

  std::string yields(const std::vector<Yield>& products, MoneyPerAcre revenue,
                     double share_standing) const {
    Yield sum;
    for (const Yield& product : products) sum += product;
    return fmt::format(
        "The plan expects about {} an acre, {} in all, and {} in all after fees.",
        words::counted(sum.in(tons_per_acre), "ton"),
        words::counted(share_standing * (sum * area_).in(tons), "ton"),
        words::tract_money(share_standing * revenue * area_));
  }

  void add_thinning(const ThinningRecord& cut, int entry) {
    const std::string key = fmt::format("thinning-{}", entry);
    const std::string name =
        entry == 1 && !standing_ ? "the first thinning" : fmt::format("thinning {}", entry);
    std::string leave = fmt::format(
        "Leave {} square feet of basal area and {} trees an acre ({} of the basal area is taken).",
        words::number(cut.after.basal_area.in(square_feet_per_acre)),
        words::number(cut.after.trees.in(trees_per_acre)), words::percent(cut.removal_fraction));
    add_sale(key, name, cut.at, leave, yields(cut.tons, cut.revenue, cut.share_standing));
    add_measuring(key, cut.at, name);
  }

  void add_measuring(const std::string& key, Age entry, const std::string& name) {
    const Age due = entry + years(years_to_measuring);
    if (due > plan_.final_harvest_age || due < dates_.present()) return;
    add(key + "-measuring", "Measure the stand again", season::months(dates_.year_of(due), 1, 1),
        fmt::format("Five years after {}: count and measure trees on plots, ask for the "
                    "prices of the day, and ask the question anew before anything is marked.",
                    name));
  }

  void add_measuring_after_last_thinning() {
    if (!standing_ || !scenario_.stand.standing->last_thinning) return;
    add_measuring("last-thinning", scenario_.stand.standing->last_thinning->at,
                  "the last thinning");
  }

  void add_stated_practices() {
    std::size_t number = 0;
    const std::vector<Practice> practices =
        standing_ ? scenario_.costs.practices : planting_of(scenario_).practices;
    for (const Practice& practice : practices) {
      ++number;
      if (practice.at > plan_.final_harvest_age || practice.at < dates_.present()) continue;
      if (standing_ && practice.at == dates_.present()) continue;
      add(fmt::format("practice-{}", number), "This year: " + practice.what,
          season::months(dates_.year_of(practice.at), 1, 1),
          fmt::format("At age {}, about {} an acre. Choose the season with your forester.",
                      practice.at.whole(), words::money(practice.cost)),
          std::string(herbicides) + " " + fire, from_the_file);
    }
  }

  void add_final_harvest() {
    const season::Sale sale =
        add_sale("final-harvest", "the final harvest", plan_.final_harvest_age, "",
                 yields(plan_.final_harvest.tons, plan_.final_harvest.revenue,
                        plan_.final_harvest.share_standing));
    const bool land_is_sold =
        standing_ && scenario_.after_harvest.kind == AfterHarvest::Kind::land_price;
    if (land_is_sold) return;
    std::optional<int> last_month;
    if (scenario_.site.month_of_cut && !sale.month_too_early)
      last_month = scenario_.site.month_of_cut;
    add_planting("next", dates_.year_of(plan_.final_harvest_age),
                 scenario_.costs.regeneration_delay_yr, last_month);
  }

  void add_planting(const std::string& key, int bare_from, int delay_yr,
                    std::optional<int> last_month_cut) {
    const season::Planting work = season::planting(bare_from, delay_yr, last_month_cut);
    add(key + "-spraying", "Spray before planting, where the site is sprayed", work.spray,
        "From summer to early fall, before the leaves turn. Land cut before March can usually be "
        "sprayed the same September or October; land cut later may not have sprouted enough and "
        "waits for the next year.",
        herbicides);
    add(key + "-burning", "Burn the site, where it is burned", work.burn,
        "Not before eight weeks after the spray; slash settles first. Done before planting.", fire);
    add(key + "-seedlings", "Order seedlings", work.order_seedlings,
        "Six to twelve months before planting. " + trees_to_order());
    add(key + "-planting", "Plant", work.plant, "From December to early March.");
    add(key + "-herbaceous", "Grass and weeds: spray where they crowd the seedlings",
        work.herbaceous, "From March to May of the first summer.", herbicides);
    add(key + "-release", "Look whether hardwoods overtop the pines, and release them",
        work.release,
        "From August to October of the second year. A release spray is weaker than spraying "
        "before planting, and so is what it does.",
        herbicides, "common practice, no source; the year is from memory");
  }

  std::string trees_to_order() const {
    const std::optional<TreeDensity> trees = planting_of(scenario_).planted;
    if (!trees) return "";
    const TreeDensity planted = *trees;
    const double all = planted.in(trees_per_acre)*area_.in(acres);
    return fmt::format("The plan plants {} an acre, {} in all.",
                       words::number(planted.in(trees_per_acre)), words::number(all));
  }

  const Scenario& scenario_;
  const RegimeReport& plan_;
  bool standing_;
  Area area_;
  std::string key_prefix_, name_prefix_, about_first_sale_;
  Dates dates_;
  int present_ = 0;
  std::vector<Operation> work_;
};

}  // namespace

std::vector<Operation> operations(const Scenario& scenario, const Advice& advice) {
  std::string sooner;
  if (advice.waiting_earns) {
    sooner = fmt::format(
        " The stand is due: sold sooner, to a good buyer, it does nearly as well. Waiting until "
        "then earns {} an acre.",
        words::about(*advice.waiting_earns));
  }
  return WorkPlan({scenario, advice.best, advice.standing, scenario.area, "", "", sooner}).all();
}

std::vector<Operation> operations(const TractFile& tract, const TractSolution& solution) {
  require(tract.present_year.has_value(), "operations need the year of the present");
  const int end = tract.present_year->whole() + tract.plan.years;
  std::vector<Operation> work;
  for (std::size_t i = 0; i < solution.stands.size(); ++i) {
    const StandSchedule& stand = solution.stands[i];
    Scenario scenario = tract.stands.at(i).scenario;
    scenario.present_year = tract.present_year;
    for (std::size_t part = 0; part < stand.regimes.size(); ++part) {
      const RegimeShare& share = stand.regimes[part];
      std::string name = stand.name;
      if (stand.regimes.size() > 1) {
        name += fmt::format(" ({})", words::acres_of(share.acres));
      }
      const std::string key = fmt::format("stand-{}-part-{}-", i + 1, part + 1);
      for (Operation& job : WorkPlan({scenario, share.report, scenario.is_standing(), share.acres,
                                      key, name + ": ", ""})
                                .all()) {
        if (static_cast<int>(job.first.year()) <= end) work.push_back(std::move(job));
      }
    }
  }
  std::ranges::stable_sort(work, {}, &Operation::first);
  return work;
}

}  // namespace staddle
