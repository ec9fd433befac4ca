// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "growth/growth_kernel.h"
#include "io/shown_equation.h"
#include "optimise/lattice_rules.h"
#include "regime/case_kernel.h"
#include "staddle/products/assortment.h"

namespace staddle {

std::vector<ShownEquation> shown_conventions() {
  ShownEquation products{
      "tons of a product, by the limits of the scenario (here the defaults), largest first",
      "products",
      "P_i = Ym(t_i, d_i) - Ym(t_i, d_(i-1)), the first without the second term; the smallest "
      "takes all else that is merchantable",
      {}};
  int number = 0;
  for (const ProductLimit& product : default_products()) {
    ++number;
    products.coefficients.emplace_back(fmt::format("d{}", number), product.min_dbh.in(inches));
    products.coefficients.emplace_back(fmt::format("t{}", number), product.top.in(inches));
  }
  return {
      products,
      {"trees and basal area cut when a share f of the basal area is taken, q: cut_diameter_ratio",
       "thinning",
       "N_cut = f N / q^2, B_cut = f B; tons cut = tons before - tons after, by product; no "
       "product may stand more than `ton` higher after the cut, at least `trees` must be left",
       {{"ton", most_rise_of_a_product}, {"trees", fewest_trees_left}}},
      {"live crown ratio (Dyer and Burkhart 1987, from memory, unverified; unthinned stands)",
       "live_crown_ratio",
       "CR = 1 - exp((a + b / A) Dq / H); a measured ratio adds measured - computed to all later "
       "ones of the rotation",
       {{"a", crown_asymptote}, {"b", crown_per_inverse_age}}},
      {"recovery after a cut, thinning_response crown-limited; as-published: k itself",
       "thinning_response",
       "rate = k clamp((CR - low) / span, 0, 1), CR just before the cut",
       {{"low", crown_without_response}, {"span", crown_range_of_response}}},
  };
}

}  // namespace staddle
