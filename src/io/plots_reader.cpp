// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/plots_reader.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <map>

#include "io/csv_columns.h"
#include "io/number_text.h"
#include "io/option_check.h"

namespace staddle {
namespace {

constexpr std::array<const char*, 9> plots_columns = {
    "plot",    "tree_dbh_in", "height_ft", "live_crown_ratio", "crown_class",
    "product", "species",     "stratum",   "crown_width_ft"};
constexpr std::array<const char*, 2> required_columns = {"plot", "tree_dbh_in"};
// What is said of a tree, its diameter aside.
constexpr std::array<const char*, 6> tree_columns = {
    "height_ft", "live_crown_ratio", "crown_class", "product", "species", "crown_width_ft"};

struct Measure {
  const char* column;
  const char* unit;
  NumberRange range;
};
constexpr Measure diameter = {"tree_dbh_in", "in", above_to(0, 100)};
constexpr Measure height = {"height_ft", "ft", above_to(4.5, 200)};
constexpr Measure crown_ratio = {"live_crown_ratio", "", between(0, 1)};
constexpr Measure crown_width = {"crown_width_ft", "ft", above_to(0, 100)};

constexpr std::array<std::pair<const char*, CrownClass>, 4> crown_classes = {
    {{"dominant", CrownClass::dominant},
     {"codominant", CrownClass::codominant},
     {"intermediate", CrownClass::intermediate},
     {"suppressed", CrownClass::suppressed}}};

class PlotsReader {
 public:
  PlotsReader(const CsvTable& csv, const std::string& file,
              const std::optional<std::vector<std::string>>& products, Faults& faults)
      : file_(file),
        products_(products),
        faults_(faults),
        columns_(csv.header, plots_columns, required_columns, file, faults) {}

  std::vector<Plot> read(const CsvTable& csv) {
    if (!faults_.empty()) return {};  // cells would be blamed for the header
    for (const CsvRow& row : csv.rows) read_row(row);
    if (csv.rows.empty()) {
      fault(FaultCode::malformed, "", "no plot stands in the file",
            "a plot without trees is a row with a blank tree_dbh_in");
    }
    return std::move(plots_);
  }

 private:
  void read_row(const CsvRow& row) {
    row_ = &row;
    if (!columns_.fits(row, faults_)) return;
    const std::string name = text_cell("plot");
    if (name.empty()) {
      fault(FaultCode::missing_key, place("plot"), "the cell is empty; every row names its plot");
      return;
    }
    Plot& plot = plot_named(name, text_cell("stratum"));
    if (cell("tree_dbh_in").empty()) {
      read_empty_plot(plot);
    } else {
      read_tree(plot);
    }
  }

  Plot& plot_named(const std::string& name, const std::string& stratum) {
    const auto [at, is_new] = index_.emplace(name, plots_.size());
    if (is_new) {
      plots_.push_back({name, stratum, {}});
      first_line_.push_back(row_->line);
      if (stratum.empty() && columns_.has("stratum")) {
        fault(FaultCode::missing_key, place("stratum"),
              "the cell is empty; where there are strata every plot lies in one");
      }
    }
    Plot& plot = plots_[at->second];
    if (plot.stratum != stratum && !stratum.empty()) {
      fault(FaultCode::contradiction, place("stratum"),
            "plot " + quoted_text(name) + " lies in stratum " + quoted_text(stratum) +
                " here and in " + quoted_text(plot.stratum) + " on line " +
                std::to_string(first_line_[at->second]));
    }
    return plot;
  }

  void read_empty_plot(const Plot& plot) {
    for (const char* column : tree_columns) {
      if (cell(column).empty()) continue;
      fault(FaultCode::missing_key, place("tree_dbh_in"),
            "the cell is empty, but " + std::string(column) + " says something of the tree",
            "a plot without trees is a row with nothing but its plot and stratum");
      return;
    }
    const int first = first_line_[index_.at(plot.name)];
    if (first == row_->line) {
      without_trees_.insert({plot.name, row_->line});
    } else {
      fault(FaultCode::contradiction, place("tree_dbh_in"),
            "plot " + quoted_text(plot.name) + " has no trees here, but stands on line " +
                std::to_string(first) + " already");
    }
  }

  void read_tree(Plot& plot) {
    if (const auto empty = without_trees_.find(plot.name); empty != without_trees_.end()) {
      fault(FaultCode::contradiction, place("tree_dbh_in"),
            "plot " + quoted_text(plot.name) + " has a tree here, but none on line " +
                std::to_string(empty->second));
    }
    TallyTree tree;
    if (const auto dbh_in = measure(diameter)) tree.dbh = inches(*dbh_in);
    if (const auto height_ft = measure(height)) tree.height = feet(*height_ft);
    tree.live_crown_ratio = measure(crown_ratio);
    if (const auto width_ft = measure(crown_width)) tree.crown_width = feet_across(*width_ft);
    tree.crown_class = read_crown_class();
    tree.product = read_product();
    tree.species = text_cell("species");
    plot.trees.push_back(std::move(tree));
  }

  // The number in a cell; absent where the cell is blank or, reported, wrong.
  std::optional<double> measure(const Measure& what) {
    if (cell(what.column).empty()) return std::nullopt;
    const auto value = csv_number(cell(what.column), file_, place(what.column), faults_);
    if (!value || what.range.contains(*value)) return value;
    const bool percent = std::string(what.column) == crown_ratio.column && *value >= 1.0;
    const Option bounds{
        .pointer = "", .meaning = "", .unit = what.unit, .allowed = {}, .range = what.range};
    fault(FaultCode::out_of_range, place(what.column),
          "found " + number_text(*value) + "; allowed is a number " + range_text(bounds),
          percent ? "a share of the height: 0.35, not 35" : "");
    return std::nullopt;
  }

  std::optional<CrownClass> read_crown_class() {
    std::string word = text_cell("crown_class");
    if (word.empty()) return std::nullopt;
    std::transform(word.begin(), word.end(), word.begin(),
                   [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
    std::vector<std::string> known;
    for (const auto& [name, crown_class] : crown_classes) {
      if (word == name || word == std::string(1, name[0])) return crown_class;
      known.push_back(name);
    }
    fault(FaultCode::unknown_name, place("crown_class"),
          "found " + quoted_text(cell("crown_class")) +
              "; allowed is dominant, codominant, intermediate, suppressed or a first letter",
          did_you_mean(nearest_name(word, known)));
    return std::nullopt;
  }

  std::string read_product() {
    const std::string name = text_cell("product");
    if (name.empty() || !products_ ||
        std::find(products_->begin(), products_->end(), name) != products_->end()) {
      return name;
    }
    std::string list;
    for (const std::string& known : *products_) list += (list.empty() ? "" : ", ") + known;
    fault(FaultCode::unknown_name, place("product"),
          "there is no product " + quoted_text(name) + "; there are " + list,
          did_you_mean(nearest_name(name, *products_)));
    return name;
  }

  std::string cell(const char* column) const { return columns_.cell(*row_, column); }

  std::string text_cell(const char* column) {
    std::string text = cell(column);
    if (has_control_character(text)) {
      fault(FaultCode::out_of_range, place(column),
            "found " + quoted_text(text) +
                "; tabs, line ends and other control characters are not allowed");
    }
    return text;
  }

  std::string place(const std::string& column) const { return csv_place(row_->line, column); }

  void fault(FaultCode code, std::string place, std::string text, std::string hint = "") {
    faults_.push_back({code, file_, std::move(place), std::move(text), std::move(hint)});
  }

  const std::string& file_;
  const std::optional<std::vector<std::string>>& products_;
  Faults& faults_;
  const CsvColumns columns_;
  const CsvRow* row_ = nullptr;
  std::vector<Plot> plots_;
  std::vector<int> first_line_;               // of each plot
  std::map<std::string, std::size_t> index_;  // of plots by name
  std::map<std::string, int> without_trees_;  // plots said to be empty, and where
};

}  // namespace

Result<std::vector<Plot>> read_plots(const std::string& text, const std::string& file,
                                     const std::optional<std::vector<std::string>>& products) {
  Faults faults;
  const auto csv = parse_csv(text, file, faults);
  if (!csv) return faults;
  std::vector<Plot> plots = PlotsReader(*csv, file, products, faults).read(*csv);
  if (!faults.empty()) return faults;
  return plots;
}

}  // namespace staddle
