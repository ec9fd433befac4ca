// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/vary_block.h"

#include <algorithm>

#include "io/number_text.h"
#include "io/prices_reader.h"
#include "staddle/scenario/planting.h"

namespace staddle {
namespace {

using kinds::number;

constexpr Option vary_rows[] = {
    {.pointer = "/vary", .meaning = "what the command vary is to vary", .allowed = kinds::object},
    {.pointer = "/vary/rates",
     .meaning = "discount rates; missing: the scenario's own",
     .allowed = kinds::list,
     .least_items = 1},
    {.pointer = "/vary/rates/#",
     .meaning = "a real discount rate",
     .unit = "per year",
     .allowed = number,
     .range = above_to(0, 0.5)},
    {.pointer = "/vary/price_scenarios",
     .meaning = "price sets beside the scenario's own",
     .allowed = kinds::list,
     .least_items = 1},
    {.pointer = "/vary/price_scenarios/#", .meaning = "a price set", .allowed = kinds::object},
    {.pointer = "/vary/price_scenarios/#/name",
     .meaning = "its name",
     .allowed = kinds::text,
     .required = true},
    {.pointer = "/vary/price_scenarios/#/stumpage_usd_per_ton",
     .meaning = "its prices; a product left out keeps its own",
     .allowed = kinds::object},
    {.pointer = "/vary/price_scenarios/#/stumpage_usd_per_ton/*",
     .meaning = "standing price",
     .unit = "$/ton",
     .allowed = number,
     .range = from_to(0, 1e5)},
    {.pointer = "/vary/price_scenarios/#/multiply",
     .meaning = "factors on the scenario's prices; a product left out keeps its own",
     .allowed = kinds::object},
    {.pointer = "/vary/price_scenarios/#/multiply/*",
     .meaning = "factor of one product",
     .allowed = number,
     .range = from_to(0, 100)},
    {.pointer = "/vary/price_scenarios/#/weight",
     .meaning = "its weight in averages",
     .allowed = number,
     .range = from_to(0, 1e6),
     .default_json = "1"},
    {.pointer = "/vary/prices_csv",
     .meaning = "a file of dated prices, from which percentiles are taken",
     .allowed = kinds::text},
    {.pointer = "/vary/one_at_a_time",
     .meaning = "parameters to vary alone, each from a low to a high value",
     .allowed = kinds::object},
    {.pointer = "/vary/one_at_a_time/*",
     .meaning = "low and high; relative changes for prices and costs",
     .allowed = kinds::list,
     .least_items = 2,
     .most_items = 2},
    {.pointer = "/vary/one_at_a_time/*/#", .meaning = "an end", .allowed = number},
    {.pointer = "/vary/grid",
     .meaning = "two parameters varied together",
     .allowed = kinds::object},
    {.pointer = "/vary/grid/x",
     .meaning = "the parameter across",
     .allowed = kinds::object,
     .required = true},
    {.pointer = "/vary/grid/x/parameter",
     .meaning = "its name",
     .allowed = kinds::text,
     .required = true},
    {.pointer = "/vary/grid/x/values",
     .meaning = "its values; relative changes for prices and costs",
     .allowed = kinds::list,
     .least_items = 1,
     .required = true},
    {.pointer = "/vary/grid/x/values/#", .meaning = "a value", .allowed = number},
    {.pointer = "/vary/grid/y",
     .meaning = "the parameter down",
     .allowed = kinds::object,
     .required = true},
    {.pointer = "/vary/grid/y/parameter",
     .meaning = "its name",
     .allowed = kinds::text,
     .required = true},
    {.pointer = "/vary/grid/y/values",
     .meaning = "its values; relative changes for prices and costs",
     .allowed = kinds::list,
     .least_items = 1,
     .required = true},
    {.pointer = "/vary/grid/y/values/#", .meaning = "a value", .allowed = number},
};

class VaryReader {
 public:
  VaryReader(ScenarioReading& reading, Scenario& scenario)
      : reading_(reading), vary_(reading.root["vary"]), scenario_(scenario) {
    if (reading.products) parameters_ = parameters_of(*reading.products);
  }

  void read() {
    if (!vary_.is(kinds::object)) return;
    if (reading_.tabled_regimes) {
      reading_.fault(vary_, FaultCode::contradiction,
                     "tables of fixed regimes are compared as they are: there is no plan to find "
                     "anew for other prices",
                     "give a model or a yield table of the unthinned stand");
      return;
    }
    if (!reading_.products || scenario_.prices.size() != reading_.products->size()) return;
    read_rates();
    for (const Place& place : vary_["price_scenarios"].items()) read_price_scenario(place);
    read_dated();
    const Place spans = vary_["one_at_a_time"];
    for (const std::string& key : spans.keys()) read_span(key, spans[key]);
    read_grid();
    scenario_.vary = std::move(question_);
  }

 private:
  // ---- rates and prices

  void read_rates() {
    for (const Place& place : vary_["rates"].items()) {
      if (const auto rate = place.number()) question_.rates.push_back(DiscountRate::real(*rate));
    }
    if (vary_["rates"].given()) return;
    question_.rates.push_back(scenario_.costs.rate);
    reading_.assumed.push_back({vary_["rates"].pointer(),
                                "[" + number_text(scenario_.costs.rate.per_year()) + "]",
                                "the scenario's own rate"});
  }

  void refuse_strangers(const Place& by_product) {
    for (const std::string& name : by_product.keys()) {
      const std::vector<std::string>& known = *reading_.products;
      if (std::find(known.begin(), known.end(), name) != known.end()) continue;
      reading_.fault(by_product[name], FaultCode::unknown_name,
                     "there is no product " + quoted_text(name),
                     did_you_mean(nearest_name(name, known)));
    }
  }

  void read_price_scenario(const Place& place) {
    PriceScenario scenario;
    scenario.name = place["name"].text_or_empty();
    scenario.weight = place["weight"].number().value_or(1.0);
    const Place absolute = place["stumpage_usd_per_ton"], factors = place["multiply"];
    if (absolute.given() == factors.given() && place.is(kinds::object)) {
      reading_.fault(place, absolute.given() ? FaultCode::contradiction : FaultCode::missing_key,
                     "a price set gives stumpage_usd_per_ton or multiply" +
                         std::string(absolute.given() ? "; this one gives both" : ""));
    }
    refuse_strangers(absolute);
    refuse_strangers(factors);
    for (std::size_t i = 0; i < reading_.products->size(); ++i) {
      const std::string& product = (*reading_.products)[i];
      const Price own = scenario_.prices[i].stumpage;
      const Place price = absolute[product];
      if (absolute.is(kinds::object) && !price.there()) {
        reading_.assumed.push_back(
            {price.pointer(), number_text(own.in(dollars_per_ton)), "the scenario's own price"});
      }
      scenario.stumpage.push_back(price.number() ? dollars_per_ton(*price.number())
                                                 : own * factors[product].number().value_or(1.0));
    }
    check_name(place["name"], scenario.name);
    question_.price_scenarios.push_back(std::move(scenario));
  }

  // Names that the result gives to prices of its own.
  static bool is_taken(const std::string& name) {
    const std::vector<std::string> percentiles = {"p10", "p25", "p50", "p75", "p90"};
    return name == "base" ||
           std::any_of(percentiles.begin(), percentiles.end(), [&](const std::string& percentile) {
             return name == percentile || name == "joint " + percentile;
           });
  }

  void check_name(const Place& place, const std::string& name) {
    if (is_taken(name)) {
      reading_.fault(place, FaultCode::contradiction,
                     "the name " + quoted_text(name) + " is taken: choose another");
    }
    for (const PriceScenario& earlier : question_.price_scenarios) {
      if (name.empty() || earlier.name != name) continue;
      reading_.fault(place, FaultCode::repeated_key,
                     quoted_text(name) + " is the name of an earlier price set too");
      return;
    }
  }

  void read_dated() {
    const Place place = vary_["prices_csv"];
    const auto name = place.text();
    if (!name) return;
    const Result<std::string> content = reading_.load(*name);
    if (!content) {
      for (const Fault& fault : content.error()) {
        reading_.fault(place, FaultCode::unreadable,
                       "cannot read " + quoted_text(*name) + ": " + fault.text, fault.hint);
      }
      return;
    }
    Faults faults;
    question_.dated_prices = read_dated_prices(*content, *name, *reading_.products, faults);
    reading_.faults.add_all(place.order(), faults);
  }

  // ---- parameters

  std::optional<Parameter> parameter_named(const std::string& name, const Place& place) {
    std::vector<std::string> names;
    for (const Parameter& parameter : parameters_) {
      if (parameter.name == name) return usable(parameter, place);
      names.push_back(parameter.name);
    }
    reading_.fault(place, FaultCode::unknown_name, "there is no parameter " + quoted_text(name),
                   did_you_mean(nearest_name(name, names)));
    return std::nullopt;
  }

  // A parameter that this scenario does not have.
  std::optional<Parameter> usable(const Parameter& parameter, const Place& place) {
    using Kind = Parameter::Kind;
    const bool of_equations = parameter.kind == Kind::site_index || parameter.kind == Kind::planted;
    if (of_equations && reading_.from_tables) {
      reading_.fault(
          place, FaultCode::contradiction,
          "a yield table grows as it stands; " + parameter.name + " belongs to growth by a model");
      return std::nullopt;
    }
    if (parameter.kind == Kind::planted && !scenario_.stand.planted) {
      reading_.fault(place, FaultCode::contradiction,
                     "nothing is planted in this scenario: /stand/planted_tpa is missing");
      return std::nullopt;
    }
    if (parameter.kind == Kind::storm_odds_ratio && !odds_ratio_counts()) {
      reading_.fault(place, FaultCode::contradiction,
                     "no peril of this scenario has an odds ratio of thinned stands",
                     "choose a storm zone");
      return std::nullopt;
    }
    return parameter;
  }

  bool odds_ratio_counts() const {
    return std::any_of(scenario_.hazard.perils.begin(), scenario_.hazard.perils.end(),
                       [](const Peril& peril) { return peril.logistic.has_value(); });
  }

  // A site that the alternative in use shifts stays within the range of sites.
  ParameterRange range_here(const Parameter& parameter) const {
    ParameterRange range = range_of(parameter);
    if (parameter.kind != Parameter::Kind::site_index) return range;
    const double shift = planting_of(scenario_).site_index_shift.in(feet);
    range.low = std::max(range.low, range.low - shift);
    range.high = std::min(range.high, range.high - shift);
    return range;
  }

  std::optional<double> value_of(const Parameter& parameter, const Place& place) {
    const auto value = place.number();
    if (!value) return std::nullopt;
    const ParameterRange range = range_here(parameter);
    if (range.contains(*value)) return value;
    reading_.fault(
        place, FaultCode::out_of_range,
        "found " + number_text(*value) + "; allowed is a number " +
            (range.low_open ? "above " : "from ") + number_text(range.low) + " to " +
            number_text(range.high) +
            (parameter.is_relative() ? ", a relative change: -0.3 is 30 percent less" : ""));
    return std::nullopt;
  }

  void read_span(const std::string& name, const Place& place) {
    const auto parameter = parameter_named(name, place);
    if (!parameter || !place.usable()) return;
    const auto low = value_of(*parameter, place.item(0));
    const auto high = value_of(*parameter, place.item(1));
    if (!low || !high) return;
    if (*low > *high) {
      reading_.fault(
          place, FaultCode::contradiction,
          "the low end, " + number_text(*low) + ", lies above the high end, " + number_text(*high));
      return;
    }
    question_.one_at_a_time.push_back({*parameter, *low, *high});
  }

  std::optional<ParameterValues> read_axis(const Place& axis) {
    const auto name = axis["parameter"].text();
    if (!name) return std::nullopt;
    const auto parameter = parameter_named(*name, axis["parameter"]);
    if (!parameter) return std::nullopt;
    ParameterValues values{*parameter, {}};
    for (const Place& place : axis["values"].items()) {
      if (const auto value = value_of(*parameter, place)) values.values.push_back(*value);
    }
    if (values.values.empty()) return std::nullopt;
    return values;
  }

  void read_grid() {
    const Place grid = vary_["grid"];
    if (!grid.is(kinds::object)) return;
    const auto x = read_axis(grid["x"]), y = read_axis(grid["y"]);
    if (!x || !y) return;
    if (x->parameter == y->parameter) {
      reading_.fault(grid["y"]["parameter"], FaultCode::contradiction,
                     "x and y are the same parameter, " + x->parameter.name);
      return;
    }
    question_.grid = GridQuestion{*x, *y};
  }

  ScenarioReading& reading_;
  const Place vary_;
  Scenario& scenario_;
  std::vector<Parameter> parameters_;
  VaryQuestion question_;
};

void read_vary(ScenarioReading& reading, Scenario& scenario) {
  VaryReader(reading, scenario).read();
}

}  // namespace

ScenarioBlock vary_block() { return {vary_rows, {}, read_vary}; }

}  // namespace staddle
