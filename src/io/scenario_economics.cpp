// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "io/number_text.h"
#include "io/scenario_blocks.h"

namespace staddle {
namespace {

constexpr DefaultCondition economics_conditions[] = {
    {"/economics/after_harvest",
     [](const json::Node&, const json::Node& root) { return describes_standing_stand(root); }},
};

class EconomicsReader {
 public:
  EconomicsReader(ScenarioReading& reading, Scenario& scenario)
      : reading_(reading), economics_(reading.root["economics"]), scenario_(scenario) {}

  void read() {
    read_prices();
    read_costs();
    for (const Place& place : economics_["practices"].items()) read_practice(place);
    for (const Place& place : economics_["flows"].items()) read_flow(place);
    read_after_harvest();
    ask_about_rate();
  }

 private:
  // ---- prices

  void read_prices() {
    const Place stumpage = economics_["stumpage_usd_per_ton"];
    refuse_strangers(stumpage);
    refuse_strangers(economics_["thinning_price_factor"]);
    refuse_strangers(economics_["thinning_price_discount_usd_per_ton"]);
    scenario_.thinning_price_given = economics_["thinning_price_factor"].given() ||
                                     economics_["thinning_price_discount_usd_per_ton"].given();
    if (!reading_.products) return;
    for (const std::string& product : *reading_.products) {
      ProductPrice price = read_stumpage(stumpage, product);
      price.thinning_factor = by_product("thinning_price_factor", product, 1);
      price.thinning_discount =
          dollars_per_ton(by_product("thinning_price_discount_usd_per_ton", product, 0));
      scenario_.prices.push_back(price);
    }
    reading_.assumed.push_back({"/economics/stumpage_usd_per_ton", "\"real and flat\"",
                                "prices keep today's worth and do not change"});
  }

  void refuse_strangers(const Place& prices_by_product) {
    if (!reading_.products) return;
    for (const std::string& name : prices_by_product.keys()) {
      if (std::find(reading_.products->begin(), reading_.products->end(), name) !=
          reading_.products->end()) {
        continue;
      }
      reading_.fault(prices_by_product[name], FaultCode::unknown_name,
                     "there is no product " + quoted_text(name),
                     did_you_mean(nearest_name(name, *reading_.products)));
    }
  }

  ProductPrice read_stumpage(const Place& stumpage, const std::string& product) {
    ProductPrice price;
    const Place place = stumpage[product];
    if (stumpage.is(kinds::object) && !place.there()) {
      reading_.fault(place, FaultCode::missing_key,
                     "every product needs a price; this one has none");
    }
    if (const auto by_ton = place.number()) price.stumpage = dollars_per_ton(*by_ton);
    const auto per_unit = place["usd_per_unit"].number();
    const auto tons_per_unit = place["tons_per_unit"].number();
    if (!per_unit || !tons_per_unit) return price;
    const double by_ton = *per_unit / *tons_per_unit;
    const Option& allowed = scenario_option("/economics/stumpage_usd_per_ton/*");
    if (!allowed.range.contains(by_ton)) {
      reading_.fault(place, FaultCode::out_of_range,
                     "this comes to " + number_text(by_ton) + " $/ton; allowed is a number " +
                         range_text(allowed));
    }
    price.stumpage = dollars_per_ton(by_ton);
    price.quoted = {*per_unit, *tons_per_unit};
    return price;
  }

  // A number for all products, or one by product; a product left out has `otherwise`.
  double by_product(const char* key, const std::string& product, double otherwise) {
    const Place place = economics_[key];
    if (const auto for_all = place.number()) return *for_all;
    const Place own = place[product];
    if (place.is(kinds::object) && !own.there()) {
      reading_.assumed.push_back({own.pointer(), number_text(otherwise), "default"});
    }
    return own.number().value_or(otherwise);
  }

  // ---- costs

  void read_costs() {
    Costs& costs = scenario_.costs;
    if (const auto rate = economics_["real_discount_rate"].number()) {
      costs.rate = DiscountRate::real(*rate);
    }
    costs.establishment = per_acre("establishment_usd_ac");
    costs.sale_fee_fraction = economics_["sale_fee_fraction"].number_or_zero();
    costs.harvest_tax_fraction = economics_["harvest_tax_fraction"].number_or_zero();
    costs.thinning_sale_cost = per_acre("thinning_sale_cost_usd_ac");
    costs.final_sale_cost = per_acre("final_sale_cost_usd_ac");
    costs.regeneration_delay_yr = economics_["regeneration_delay_yr"].whole().value_or(0);
    costs.annual_cost = per_acre("annual_cost_usd_ac");
    costs.annual_income = per_acre("annual_income_usd_ac");
    const Place later =
        later_of(economics_["sale_fee_fraction"], economics_["harvest_tax_fraction"]);
    const double share = costs.sale_fee_fraction + costs.harvest_tax_fraction;
    if (share >= 1) {
      reading_.fault(later, FaultCode::contradiction,
                     "fee and harvest tax together take " + number_text(share) +
                         " of the revenue; allowed is below 1");
    }
  }

  static Place later_of(const Place& a, const Place& b) {
    if (!a.given()) return b;
    if (!b.given()) return a;
    return a.order() > b.order() ? a : b;
  }

  MoneyPerAcre per_acre(const char* key) const {
    return dollars_per_acre(economics_[key].number_or_zero());
  }

  void read_practice(const Place& place) {
    scenario_.costs.practices.push_back({place["what"].text_or_empty(),
                                         age(place["age_yr"].whole().value_or(0)),
                                         dollars_per_acre(place["usd_ac"].number_or_zero())});
  }

  void read_flow(const Place& place) {
    DatedFlow flow;
    flow.what = place["what"].text_or_empty();
    flow.per_year = dollars_per_acre(place["usd_ac_yr"].number_or_zero());
    const auto from = place["from_age_yr"].whole();
    const auto to = place["to_age_yr"].whole();
    flow.from = age(from.value_or(1));
    if (place["to_age_yr"].text() == "first_thinning") {
      flow.until = DatedFlow::Until::first_thinning;
    } else if (to) {
      flow.until = DatedFlow::Until::age;
      flow.to = age(*to);
    }
    if (from && to && *to < *from) {
      reading_.fault(
          place["to_age_yr"], FaultCode::contradiction,
          "found " + std::to_string(*to) + ", before from_age_yr, " + std::to_string(*from));
    }
    scenario_.costs.flows.push_back(std::move(flow));
  }

  void read_after_harvest() {
    const Place after = economics_["after_harvest"];
    if (!reading_.standing) {
      if (after.given()) {
        reading_.fault(after, FaultCode::contradiction,
                       "this belongs to a standing stand; bare land is planted for ever");
      }
      return;
    }
    using Kind = AfterHarvest::Kind;
    if (after.text() == "best") scenario_.after_harvest.kind = Kind::best;
    if (const auto price = after.number()) {
      scenario_.after_harvest = {Kind::land_price, dollars_per_acre(*price)};
    }
  }

  void ask_about_rate() {
    constexpr double unusual_rate = 0.08;
    const auto rate = economics_["real_discount_rate"].number();
    if (!rate || *rate <= unusual_rate) return;
    reading_.questions.push_back("A real discount rate of " +
                                 number_text(std::round(*rate * 1e4) / 100) +
                                 " percent: is it nominal? Prices here are without inflation.");
  }

  ScenarioReading& reading_;
  const Place economics_;
  Scenario& scenario_;
};

void read_economics(ScenarioReading& reading, Scenario& scenario) {
  EconomicsReader(reading, scenario).read();
}

}  // namespace

ScenarioBlock economics_block() {
  return {economics_options(), economics_conditions, read_economics};
}

}  // namespace staddle
