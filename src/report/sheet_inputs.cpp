// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/sheet_inputs.h"

#include <fmt/format.h>

#include "signs/plain_words.h"
#include "staddle/scenario/planting.h"

namespace staddle::sheets {
namespace {

constexpr double most_money = 1e5;  // as a scenario allows

struct InputsWriter {
  Sheet& sheet;
  int row = 0;

  Live amount(const std::string& label, double value, Look look, const std::string& unit,
              double least, double most, const std::string& note = "") {
    sheet.text({row, 0}, label);
    const Live cell = input({row, 1}, value, look, least, most);
    sheet.text({row, 2}, unit, Look::note);
    sheet.text({row, 3}, note, Look::note);
    ++row;
    return cell;
  }
  Live money(const std::string& label, MoneyPerAcre value, const std::string& unit = "$/acre",
             const std::string& note = "") {
    return amount(label, value.in(dollars_per_acre), Look::input_dollars, unit, -most_money,
                  most_money, note);
  }
  Live share(const std::string& label, double value, const std::string& note = "") {
    return amount(label, value, Look::input_percent, "of the sale", 0.0, 0.99, note);
  }
  Live input(Place place, double value, Look look, double least, double most) {
    sheet.number(place, value, look);
    sheet.allow(place, least, most,
                fmt::format("A number from {:.6g} to {:.6g} can stand here.", least, most));
    return sheet.seen_from_outside(place, value);
  }
  void heading(const std::string& text) {
    ++row;
    sheet.text({row++, 0}, text, Look::heading);
  }
  void columns(const std::vector<std::string>& names) {
    for (std::size_t i = 0; i < names.size(); ++i) {
      sheet.text({row, static_cast<int>(i)}, names[i], Look::column);
    }
    sheet.height(row++, 32);
  }

  Inputs::Timber product(const std::string& name, const ProductPrice& price) {
    const double stumpage = price.stumpage.in(dollars_per_ton);
    const double discount = price.thinning_discount.in(dollars_per_ton);
    sheet.text({row, 0}, words::product(name));
    Inputs::Timber timber{name, input({row, 1}, stumpage, Look::input_dollars, 0, most_money),
                          std::nullopt, std::nullopt, std::nullopt};
    input({row, 2}, price.thinning_factor, Look::input_number, 0, 10);
    input({row, 3}, discount, Look::input_dollars, 0, most_money);
    const double thinning = net_thinning_price(price).in(dollars_per_ton);
    sheet.formula({row, 4},
                  {fmt::format("MAX(0,{}*{}-{})", cell_name({row, 1}), cell_name({row, 2}),
                               cell_name({row, 3})),
                   thinning},
                  Look::dollars);
    timber.thinning_price = sheet.seen_from_outside({row, 4}, thinning);
    if (price.quoted.tons_per_unit > 0.0) {
      sheet.text({row, 5},
                 fmt::format("given as ${:.4g} a unit of {:.4g} tons", price.quoted.usd_per_unit,
                             price.quoted.tons_per_unit),
                 Look::note);
    }
    ++row;
    return timber;
  }

  Inputs::Timber other(const OtherTimber& timber) {
    sheet.text({row, 0}, timber.what);
    const double price = timber.stumpage.in(dollars_per_ton);
    const double now = timber.now.in(tons_per_acre);
    Inputs::Timber result{timber.what, input({row, 1}, price, Look::input_dollars, 0, most_money),
                          std::nullopt, std::nullopt, std::nullopt};
    result.tons_now = input({row, 2}, now, Look::input_number, 0, most_money);
    result.growth = input({row, 3}, timber.growth_fraction_per_yr, Look::input_percent, -0.5, 0.5);
    ++row;
    return result;
  }
};

std::string when_flow_falls(const DatedFlow& flow) {
  switch (flow.until) {
    case DatedFlow::Until::age:
      return fmt::format("every year from age {} to {}", flow.from.whole(), flow.to.whole());
    case DatedFlow::Until::first_thinning:
      return fmt::format("every year from age {} to the first thinning", flow.from.whole());
    case DatedFlow::Until::final_harvest:
      break;
  }
  return fmt::format("every year from age {} to the final harvest", flow.from.whole());
}

void write_prices(InputsWriter& writer, const Scenario& scenario, Inputs& inputs) {
  writer.heading("Prices of standing timber");
  writer.columns({"product", "at the final harvest, $/ton", "thinning: this factor",
                  "thinning: less so many $/ton", "at a thinning, $/ton"});
  for (std::size_t i = 0; i < scenario.products.size(); ++i) {
    inputs.timber.push_back(writer.product(scenario.products[i].name, scenario.prices[i]));
  }
  if (!scenario.is_standing() || scenario.stand.standing->other_timber.empty()) return;
  writer.heading("Other timber, sold at the final harvest");
  writer.columns({"what", "$/ton", "tons/acre now", "growth a year"});
  for (const OtherTimber& timber : scenario.stand.standing->other_timber) {
    inputs.timber.push_back(writer.other(timber));
  }
}

std::vector<Live> write_practices(InputsWriter& writer, const std::vector<Practice>& practices) {
  std::vector<Live> cells;
  for (const Practice& practice : practices) {
    cells.push_back(writer.money(practice.what, practice.cost, "$/acre, a cost",
                                 fmt::format("at age {}", practice.at.whole())));
  }
  return cells;
}

void write_costs(InputsWriter& writer, const Scenario& scenario, Inputs& inputs) {
  const Costs& costs = scenario.costs;
  const Planting planting = planting_of(scenario);
  writer.heading("Costs of selling");
  inputs.fee = writer.share("seller's fee", costs.sale_fee_fraction);
  inputs.harvest_tax = writer.share("tax on the harvest", costs.harvest_tax_fraction);
  inputs.thinning_sale_cost = writer.money("cost of a thinning sale", costs.thinning_sale_cost);
  inputs.final_sale_cost = writer.money("cost of the final sale", costs.final_sale_cost);
  writer.heading("Costs and income of growing");
  inputs.establishment = writer.money("establishment: site preparation and planting",
                                      planting.establishment, "$/acre", "at age 0");
  const std::string every_year = "every year, also while the land waits to be planted";
  inputs.annual_cost = writer.money("annual cost", costs.annual_cost, "$/acre", every_year);
  inputs.annual_income = writer.money("annual income", costs.annual_income, "$/acre", every_year);
  inputs.practices = write_practices(writer, stand_practices(scenario));
  for (const DatedFlow& flow : costs.flows) {
    inputs.flows.push_back(writer.money(flow.what, flow.per_year, "$/acre a year, income positive",
                                        when_flow_falls(flow)));
  }
  if (used_alternative(scenario) == nullptr || !scenario.is_standing()) {
    inputs.next_practices = inputs.practices;
  } else if (!planting.practices.empty()) {
    writer.heading("Work in the stand that follows");
    inputs.next_practices = write_practices(writer, planting.practices);
  }
}

void write_tax(InputsWriter& writer, const StandAnswers& answers, Inputs& inputs) {
  if (!answers.scenario.tax || !answers.advice.after_tax) return;
  const TaxRules& rules = *answers.scenario.tax;
  writer.heading("Tax");
  inputs.long_term_rate = writer.amount("rate on timber sold", rules.long_term_rate,
                                        Look::input_percent, "of what it brings", 0.0, 0.99);
  inputs.ordinary_rate = writer.amount(
      "rate on other income, saved on costs", rules.ordinary_rate, Look::input_percent, "of it",
      0.0, 0.99, "what basis and deductions for planting save is a number of the plan's sheet");
  if (!answers.advice.standing) return;
  inputs.land_after_tax = writer.money("worth of an acre of bare land after tax",
                                       answers.advice.after_tax->land_value, "$/acre", "as solved");
}

}  // namespace

std::vector<Practice> stand_practices(const Scenario& scenario) {
  return scenario.is_standing() ? scenario.costs.practices : planting_of(scenario).practices;
}

Live Inputs::net_share() const { return Live(Live::constant(1) - fee - harvest_tax); }

Inputs write_inputs(Sheet& sheet, const StandAnswers& answers) {
  const Scenario& scenario = answers.scenario;
  const Live none = Live::constant(0);
  Inputs inputs{none, none, none, none, none, none, none, none, none,
                {},   {},   {},   {},   {},   {},   {},   {}};
  sheet.width(0, 0, 50);
  sheet.width(1, 4, 15);
  sheet.width(5, 5, 40);
  InputsWriter writer{sheet};
  sheet.text({0, 0}, "Prices and rate", Look::title);
  sheet.height(0, 22);
  sheet.text({1, 0},
             "Change a cell with a coloured ground: the sheets of the plans follow. The cuts of "
             "each plan and its tons stay as they are; which plan is",
             Look::note);
  sheet.text({2, 0},
             "best at other prices is a new question for the program. Prices and costs are real, "
             "in today's dollars, and stay as they are for all years.",
             Look::note);
  writer.row = 3;
  writer.heading("Rate and size");
  inputs.rate =
      writer.amount("real discount rate", scenario.costs.rate.per_year(), Look::input_percent,
                    "a year", 0.0001, 0.5, "what you ask of your money beyond inflation");
  inputs.acres =
      writer.amount("acres", scenario.area.in(acres), Look::input_number, "net acres", 0.0, 1e6);
  write_prices(writer, scenario, inputs);
  write_costs(writer, scenario, inputs);
  if (answers.advice.standing) {
    writer.heading("The land after the final harvest");
    inputs.land = writer.money("worth of an acre of bare land", answers.advice.land_value, "$/acre",
                               "as solved at the rate and prices of the file: a stated number, "
                               "which does not follow the cells above");
  }
  write_tax(writer, answers, inputs);
  sheet.freeze({4, 0});
  sheet.print_setup({});
  return inputs;
}

}  // namespace staddle::sheets
