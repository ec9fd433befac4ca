// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/table_bounds.h"

#include <algorithm>
#include <cmath>

#include "staddle/base/contract.h"
#include "stand/stand_constants.h"

namespace staddle {
namespace {

constexpr double steps = 1024;
// A part of a year may reach a step whose edge it meets within rounding.
constexpr double edge = 1e-9;

}  // namespace

TableBounds::TableBounds(const CaseKernel& kernel, const LatticeRules& rules)
    : kernel_(kernel), final_to_(rules.final_to()) {
  require(kernel.assortment().table().has_value() && !kernel.hazard_active() && !kernel.has_basis(),
          "these bounds are of a yield table without storms");
  const auto size = static_cast<std::size_t>(final_to_) + 1;
  for (auto* array : {&basal_area_, &tons_per_area_, &trees_, &summed_}) array->assign(size, 0.0);
  double sum = 0.0;
  for (int at = kernel.present_yr(); at <= final_to_; ++at) {
    const auto t = static_cast<std::size_t>(at);
    const AgeRow& row = kernel.growth().row(at);
    trees_[t] = row.survival_term;
    if (row.timber) {
      exponent_ = row.log_basal_exponent;
      basal_area_[t] = std::exp(row.log_basal_constant + exponent_ * std::log(trees_[t]));
      if (row.tons) tons_per_area_[t] = std::exp(row.log_tons_constant);
    }
    if (at > kernel.present_yr()) {
      sum += kernel.discount(at) * (kernel.yearly_money(at, true) + kernel.practice_money(at));
    }
    summed_[t] = sum;
  }

  std::vector<double> prices;
  for (std::size_t i = 0; i < kernel.products(); ++i) prices.push_back(kernel.final_price(i));
  const auto parts = kernel.assortment().table()->priced_parts(prices.data());
  double most = 0.0;
  least_ = HUGE_VAL;
  for (const auto& part : parts) {
    least_ = std::min(least_, part.least_basal_area);
    if (std::isfinite(part.most_basal_area)) most = std::max(most, part.most_basal_area);
    if (part.at_an_end) price_outside_ = std::max(price_outside_, part.most_price);
  }
  per_step_ = most > least_ ? steps / (most - least_) : 1.0;
  most_price_.assign(static_cast<std::size_t>(steps) + 1, 0.0);
  for (const auto& part : parts) {
    const double low = (part.least_basal_area * (1.0 - edge) - least_) * per_step_ - edge;
    const double high = (std::min(part.most_basal_area, most) * (1.0 + edge) - least_) * per_step_;
    const auto from = static_cast<std::size_t>(std::clamp(std::floor(low), 0.0, steps));
    const auto to = static_cast<std::size_t>(std::clamp(std::floor(high + edge), 0.0, steps));
    for (std::size_t step = from; step <= to; ++step) {
      most_price_[step] = std::max(most_price_[step], part.most_price);
    }
  }
  // Where the table's diameters stop, a row at their end is read.
  const auto step_of = [&](double diameter_in) {
    return (basal_area_factor * diameter_in * diameter_in - least_) * per_step_;
  };
  const TableColumns& table = *kernel.assortment().table();
  const double first = step_of(table.least_diameter_in() * (1.0 + edge)) + edge;
  const double last = step_of(table.most_diameter_in() * (1.0 - edge)) - edge;
  for (std::size_t step = 0; step < most_price_.size(); ++step) {
    const bool inside = static_cast<double>(step) > first && static_cast<double>(step + 1) < last;
    if (!inside) most_price_[step] = std::max(most_price_[step], price_outside_);
  }
}

double TableBounds::most_price_of(double basal_area_per_tree) const {
  const double at = (basal_area_per_tree - least_) * per_step_;
  return most_price_[static_cast<std::size_t>(std::clamp(at, 0.0, steps))];
}

void TableBounds::bound(const StandPoint& after_cut, int from, std::vector<double>& bounds) const {
  const double share = after_cut.trees.invariant;
  const double of_area = std::pow(share, exponent_);
  const double decay = std::exp(-after_cut.recovery_per_yr);
  double competition = after_cut.competition *
                       std::exp(-after_cut.recovery_per_yr * (from - after_cut.stretch_from_yr));
  double offset = 0.0;  // of a standing stand whose growth is multiplied
  const double multiplier = kernel_.growth_multiplier();
  if (kernel_.standing() && multiplier != 1.0) {
    for (std::size_t i = 0; i < kernel_.products(); ++i) {
      offset += kernel_.final_price(i) *
                (after_cut.scaled_start[i] - multiplier * after_cut.plain_start[i]);
    }
  }
  const double before =
      after_cut.money - summed_[static_cast<std::size_t>(after_cut.stretch_from_yr)];
  for (int at = from; at <= final_to_; ++at, competition *= decay) {
    const auto t = static_cast<std::size_t>(at);
    const double area = basal_area_[t] * of_area * (1.0 - competition);
    const double price = area > 0.0 ? most_price_of(area / (share * trees_[t])) : 0.0;
    const double stumpage =
        kernel_.other_timber_value(at) + offset + multiplier * tons_per_area_[t] * area * price;
    const double net = stumpage * kernel_.net_share() - kernel_.final_sale_cost();
    const FinishedRegime finished{
        before + summed_[t] + kernel_.discount(at) * (net + kernel_.delay_money()),
        kernel_.land_discount(at)};
    bounds[t] = kernel_.objective(finished);
  }
}

}  // namespace staddle
