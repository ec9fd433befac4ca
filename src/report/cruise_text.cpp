// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/cruise_text.h"

#include <fmt/format.h>

#include "report/cells.h"
#include "report/signs_table.h"
#include "signs/counted_words.h"
#include "signs/plain_words.h"
#include "staddle/cruise/sale_after_tax.h"
#include "staddle/report/text.h"

namespace staddle {
namespace {

std::string plots_in_words(std::size_t plots) {
  return fmt::format("{} plot{}", words::count(plots), plots == 1 ? "" : "s");
}

class CruiseTelling {
 public:
  CruiseTelling(const CruiseQuestion& question, const Appraisal& appraisal)
      : question_(question), appraisal_(appraisal) {}

  Report tell() const {
    Report report;
    report.title = title() + ": what the plots say";
    report.head = {how_measured()};
    report.sections = {stand()};
    if (appraisal_.strata.size() > 1) report.sections.push_back(strata());
    if (!appraisal_.stand_table.empty()) report.sections.push_back(stand_table());
    report.sections.push_back(signs());
    report.sections.push_back(assumptions());
    report.foot =
        "A sample, not a count: the intervals say how far the plots alone may lead astray, not how "
        "well trees were measured. Tons lean on growth equations and the dollars on the prices "
        "given. This is neither an appraisal nor a land price.";
    return report;
  }

 private:
  std::string title() const {
    return question_.terms.economics ? question_.terms.economics->title : question_.plots_file;
  }

  std::string design() const {
    const PlotDesign& plot = question_.problem.tally.design;
    if (plot.is_point_sample()) {
      const double factor = plot.basal_area_per_tallied_tree(inches(1)).in(square_feet_per_acre);
      return fmt::format("point samples with a factor of {:g}", factor);
    }
    const double plots_to_the_acre = plot.trees_per_tallied_tree(inches(1)).in(trees_per_acre);
    return fmt::format("plots of {:.4g} acre", 1.0 / plots_to_the_acre);
  }

  std::string how_measured() const {
    std::string text = words::capital(plots_in_words(appraisal_.plots)) + ", " + design();
    if (appraisal_.plots_without_trees > 0) {
      text += fmt::format(", {} without trees", words::count(appraisal_.plots_without_trees));
    }
    text += fmt::format("; {} tallied",
                        words::counted(static_cast<double>(appraisal_.trees_tallied), "tree"));
    if (question_.area) {
      const std::string size = fmt::format("{:.4g}", question_.area->in(acres));
      text += fmt::format("; {} {}", size, words::named_beside(size, "acre"));
    }
    if (question_.terms.at) {
      text += fmt::format("; {} old", words::counted(question_.terms.at->in(years), "year"));
    }
    return text + ".";
  }

  Section stand() const {
    Section section{"The stand", {}, {}, {}};
    section.paragraphs = {measures()};
    if (appraisal_.stumpage) section.paragraphs.push_back(worth());
    section.paragraphs.push_back(precision());
    section.tables.push_back(estimates());
    return section;
  }

  std::string measures() const {
    std::string text =
        fmt::format("An acre carries {} square feet of basal area in {} trees",
                    words::number(appraisal_.basal_area.mean.in(square_feet_per_acre)),
                    words::number(appraisal_.trees.mean.in(trees_per_acre)));
    if (appraisal_.quadratic_mean_diameter) {
      text += fmt::format(", {} inches thick in the quadratic and {} in the plain mean",
                          words::number(appraisal_.quadratic_mean_diameter->in(inches), 1),
                          words::number(appraisal_.mean_diameter->in(inches), 1));
    }
    text += ".";
    if (appraisal_.dominant_height) {
      text += fmt::format(" Dominant height is {} feet ({})",
                          words::number(appraisal_.dominant_height->in(feet)),
                          appraisal_.dominant_height_rule);
      if (appraisal_.site_index) {
        text += fmt::format(", which at this age is site index {}",
                            words::number(appraisal_.site_index->in(feet)));
      }
      text += ".";
    }
    if (appraisal_.live_crown_ratio) {
      text += fmt::format(" The live crown is {} of the height.",
                          words::percent(*appraisal_.live_crown_ratio));
    }
    return text;
  }

  std::string worth() const {
    const MoneyPerAcre mean = appraisal_.stumpage->mean;
    std::string text = fmt::format("At the prices given the standing timber is worth {} an acre",
                                   words::money(mean));
    if (question_.area) {
      text += fmt::format(", {} for the tract", words::tract_money(mean * *question_.area));
    }
    if (appraisal_.stumpage->interval_90) {
      text += fmt::format("; with 90 percent confidence between {} and {} an acre",
                          words::money(appraisal_.stumpage->interval_90->low),
                          words::money(appraisal_.stumpage->interval_90->high));
    }
    text += ".";
    const CruiseTerms& terms = question_.terms;
    if (terms.economics && terms.economics->tax) {
      text += fmt::format(
          " Sold today it would leave {} an acre after federal tax (not tax "
          "advice).",
          words::money(after_tax(*appraisal_.stumpage, *terms.economics->tax).mean));
    }
    return text;
  }

  std::string precision() const {
    const auto& interval = appraisal_.basal_area.interval_90;
    if (!interval) return "How sure this is cannot be told: a single plot shows no variation.";
    std::string text =
        fmt::format("With 90 percent confidence the basal area lies between {} and {} square feet.",
                    words::number(interval->low.in(square_feet_per_acre)),
                    words::number(interval->high.in(square_feet_per_acre)));
    if (!appraisal_.plots_needed) return text;
    const int needed = *appraisal_.plots_needed;
    const int more = needed - static_cast<int>(appraisal_.plots);
    return text + fmt::format(" To know it within {} at {} confidence takes {} plots in all: {}.",
                              words::percent(question_.terms.error),
                              words::percent(question_.terms.confidence), needed,
                              more > 0 ? fmt::format("{} more", more) : "these are enough");
  }

  template <class Dimension>
  std::vector<Cell> estimate_row(const std::string& name,
                                 const Estimate<Quantity<Dimension>>& estimate,
                                 Unit<Dimension> unit, int decimals) const {
    std::vector<Cell> row{cells::words(name), cells::number(estimate.mean.in(unit), decimals)};
    const auto add = [&](std::optional<Quantity<Dimension>> value) {
      row.push_back(value ? cells::number(value->in(unit), decimals) : cells::blank());
    };
    add(estimate.standard_error);
    row.push_back(estimate.coefficient_of_variation
                      ? cells::percent(*estimate.coefficient_of_variation)
                      : cells::blank());
    for (const auto& interval : {estimate.interval_90, estimate.interval_95}) {
      add(interval ? std::optional(interval->low) : std::nullopt);
      add(interval ? std::optional(interval->high) : std::nullopt);
    }
    return row;
  }

  Table estimates() const {
    Table table{"",
                {{"", "", true},
                 {"mean"},
                 {"standard error"},
                 {"variation of plots", "percent"},
                 {"90 percent from"},
                 {"to"},
                 {"95 percent from"},
                 {"to"}},
                {}};
    table.rows.push_back(
        estimate_row("basal area, sq ft/acre", appraisal_.basal_area, square_feet_per_acre, 1));
    table.rows.push_back(estimate_row("trees/acre", appraisal_.trees, trees_per_acre, 0));
    for (std::size_t i = 0; appraisal_.tons && i < appraisal_.tons->size(); ++i) {
      table.rows.push_back(estimate_row(words::product(appraisal_.products[i]) + ", tons/acre",
                                        (*appraisal_.tons)[i], tons_per_acre, 1));
    }
    if (appraisal_.stumpage) {
      table.rows.push_back(
          estimate_row("stumpage value, $/acre", *appraisal_.stumpage, dollars_per_acre, 0));
    }
    return table;
  }

  Section strata() const {
    Section section{"The strata", {}, {}, {}};
    Table table{"",
                {{"stratum", "", true},
                 {"plots"},
                 {"acres"},
                 {"weight", "percent"},
                 {"basal area", "sq ft/acre"}},
                {}};
    for (const StratumSummary& stratum : appraisal_.strata) {
      table.rows.push_back(
          {cells::words(stratum.name), cells::whole(static_cast<int>(stratum.plots)),
           stratum.acres ? cells::number(stratum.acres->in(acres), 1) : cells::blank(),
           cells::percent(stratum.weight),
           cells::number(stratum.mean_basal_area.in(square_feet_per_acre))});
    }
    section.tables.push_back(std::move(table));
    return section;
  }

  Section stand_table() const {
    Section section{"Stand and stock table", {}, {}, {}};
    Table table{
        "", {{"diameter", "inches"}, {"trees", "per acre"}, {"basal area", "sq ft/acre"}}, {}};
    for (const std::string& product : appraisal_.products) {
      if (appraisal_.tons) table.columns.push_back({words::product(product), "tons/acre"});
    }
    if (appraisal_.stumpage) table.columns.push_back({"value", "$/acre"});
    for (const StandTableRow& row : appraisal_.stand_table) {
      std::vector<Cell> line{cells::whole(row.dbh_class_in),
                             cells::number(row.trees.in(trees_per_acre), 1),
                             cells::number(row.basal_area.in(square_feet_per_acre), 1)};
      for (const Yield& tons : row.tons) {
        line.push_back(cells::number(tons.in(tons_per_acre), 1));
      }
      if (row.stumpage) line.push_back(cells::as_given(*row.stumpage));
      table.rows.push_back(std::move(line));
    }
    section.tables.push_back(std::move(table));
    if (appraisal_.calibration) section.items.push_back(calibration());
    return section;
  }

  std::string calibration() const {
    std::string text;
    for (std::size_t i = 0; i < appraisal_.products.size(); ++i) {
      const auto& ratio = (*appraisal_.calibration)[i];
      text += (i > 0 ? ", " : "") + words::product(appraisal_.products[i]) + " " +
              (ratio ? words::number(*ratio, 2) : "none");
    }
    return "Tons from the trees over tons from the equations for the same stand: " + text +
           ". The weight of all trees is the equations' own, so this compares the split into "
           "products, not the total.";
  }

  Section signs() const {
    Section section{"Is the stand ready to thin?", {appraisal_.readiness_judgement}, {}, {}};
    const CruiseTerms& terms = question_.terms;
    const auto name = [&terms](Age at) {
      if (!terms.economics || !terms.economics->present_year || !terms.at) {
        return fmt::format("age {}", at.whole());
      }
      return fmt::format("{}", (*terms.economics->present_year + (at - *terms.at)).whole());
    };
    section.tables.push_back(
        signs_table(appraisal_.readiness.signs, question_.problem.ready_limits, name));
    section.items.push_back(how_signs_decide());
    return section;
  }

  Section assumptions() const {
    Section section{"What is missing and what was assumed", {}, {}, {}};
    for (const MissingFigure& missing : appraisal_.missing) {
      section.items.push_back(words::product(missing.key) + " is missing: " + missing.reason + ".");
    }
    for (const Assumption& assumption : assumptions_of(question_, appraisal_)) {
      if (assumption.pointer.empty()) {
        section.items.push_back(words::capital(assumption.why) + ".");
      }
    }
    return section;
  }

  const CruiseQuestion& question_;
  const Appraisal& appraisal_;
};

}  // namespace

Report cruise_report(const CruiseQuestion& question, const Appraisal& appraisal) {
  return CruiseTelling(question, appraisal).tell();
}

std::string cruise_text(const CruiseQuestion& question, const Appraisal& appraisal) {
  return to_text(cruise_report(question, appraisal));
}

}  // namespace staddle
