// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/cruise/sale_after_tax.h"

namespace staddle {

MoneyPerAcre after_tax(MoneyPerAcre gross, MoneyPerAcre all, const TaxRules& rules) {
  if (all <= MoneyPerAcre()) return gross;
  return gross - (gross - rules.basis * (gross / all)) * rules.long_term_rate;
}

Estimate<MoneyPerAcre> after_tax(const Estimate<MoneyPerAcre>& gross, const TaxRules& rules) {
  const double kept = 1.0 - rules.long_term_rate;
  const MoneyPerAcre saved = rules.basis * rules.long_term_rate;
  const auto interval = [&](const std::optional<Interval<MoneyPerAcre>>& given)
      -> std::optional<Interval<MoneyPerAcre>> {
    if (!given) return std::nullopt;
    return Interval<MoneyPerAcre>{given->low * kept + saved, given->high * kept + saved};
  };
  Estimate<MoneyPerAcre> net{gross.mean * kept + saved, std::nullopt, std::nullopt,
                             interval(gross.interval_90), interval(gross.interval_95)};
  if (gross.standard_error) net.standard_error = *gross.standard_error * kept;
  if (gross.coefficient_of_variation && net.mean > MoneyPerAcre()) {
    net.coefficient_of_variation = *gross.coefficient_of_variation * kept * (gross.mean / net.mean);
  }
  return net;
}

}  // namespace staddle
