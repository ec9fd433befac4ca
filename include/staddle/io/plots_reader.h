// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/base/result.h"
#include "staddle/cruise/plots.h"

namespace staddle {

// Reads tallied plots from CSV. The columns plot and tree_dbh_in are required; height_ft,
// live_crown_ratio, crown_class, product, species, stratum and crown_width_ft may stand
// beside them, in any order. A row is a tree; a plot without trees is one row whose
// diameter and all other cells of a tree are blank. Blank cells are absent measures.
// crown_class is dominant, codominant, intermediate or suppressed, or its first letter.
// `products`: the names the product column may hold; absent: any.
// Faults name line and column.
Result<std::vector<Plot>> read_plots(
    const std::string& text, const std::string& file,
    const std::optional<std::vector<std::string>>& products = std::nullopt);

}  // namespace staddle
