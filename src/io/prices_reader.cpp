// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/prices_reader.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <chrono>
#include <map>
#include <optional>

#include "io/csv_columns.h"
#include "io/number_text.h"
#include "io/option_check.h"
#include "io/ranges.h"

namespace staddle {
namespace {

constexpr std::array<const char*, 3> prices_columns = {"date", "product", "usd_per_ton"};
using ranges::prices;

// "2024-06-30", a day that there was.
bool is_iso_date(const std::string& text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool digit = std::isdigit(static_cast<unsigned char>(text[i])) != 0;
    if (i != 4 && i != 7 && !digit) return false;
  }
  const auto part = [&](std::size_t from, std::size_t count) {
    return std::stoi(text.substr(from, count));
  };
  const std::chrono::year_month_day date{std::chrono::year(part(0, 4)),
                                         std::chrono::month(static_cast<unsigned>(part(5, 2))),
                                         std::chrono::day(static_cast<unsigned>(part(8, 2)))};
  return date.ok();
}

class PricesReader {
 public:
  PricesReader(const CsvTable& csv, const std::string& file,
               const std::vector<std::string>& products, Faults& faults)
      : file_(file),
        products_(products),
        faults_(faults),
        columns_(csv.header, prices_columns, prices_columns, file, faults) {}

  std::vector<DatedPrices> read(const CsvTable& csv) {
    if (!faults_.empty()) return {};  // cells would be blamed for the header
    for (const CsvRow& row : csv.rows) read_row(row);
    if (csv.rows.empty()) {
      fault(FaultCode::malformed, "line " + std::to_string(csv.header.line),
            "no price stands in the file");
    }
    if (!faults_.empty()) return {};  // a faulty row would show as a gap
    return gather();
  }

 private:
  struct Quote {
    int line = 0;
    double usd_per_ton = 0;
  };

  void fault(FaultCode code, const std::string& place, std::string text, std::string hint = "") {
    faults_.push_back({code, file_, place, std::move(text), std::move(hint)});
  }

  void read_row(const CsvRow& row) {
    if (!columns_.fits(row, faults_)) return;
    const std::string date = columns_.cell(row, "date");
    const std::string product = columns_.cell(row, "product");
    const bool dated = is_iso_date(date);
    if (!dated) {
      fault(FaultCode::wrong_type, csv_place(row.line, "date"),
            "found " + quoted_text(date) + "; allowed is a date like 2024-06-30");
    }
    const bool known = std::find(products_.begin(), products_.end(), product) != products_.end();
    if (!known) {
      fault(FaultCode::unknown_name, csv_place(row.line, "product"),
            "there is no product " + quoted_text(product),
            did_you_mean(nearest_name(product, products_)));
    }
    const std::string place = csv_place(row.line, "usd_per_ton");
    const auto price = csv_number(columns_.cell(row, "usd_per_ton"), file_, place, faults_);
    if (price && !prices.contains(*price)) {
      fault(FaultCode::out_of_range, place,
            "found " + number_text(*price) + "; allowed is a number from 0 to 100000 $/ton");
    }
    if (!dated || !known || !price) return;
    const auto [earlier, is_new] = quotes_[date].emplace(product, Quote{row.line, *price});
    if (is_new) return;
    fault(FaultCode::repeated_key, "line " + std::to_string(row.line),
          product + " has a price of " + date + " already, in line " +
              std::to_string(earlier->second.line));
  }

  std::vector<DatedPrices> gather() {
    std::vector<DatedPrices> dates;
    for (const auto& [date, by_product] : quotes_) {
      DatedPrices prices_then{date, {}};
      int first_line = by_product.begin()->second.line;
      for (const auto& [product, quote] : by_product) first_line = std::min(first_line, quote.line);
      for (const std::string& product : products_) {
        const auto quote = by_product.find(product);
        if (quote == by_product.end()) {
          fault(FaultCode::missing_key, "line " + std::to_string(first_line),
                "on " + date + " there is no price of " + product +
                    "; every date needs one of every product");
          continue;
        }
        prices_then.stumpage.push_back(dollars_per_ton(quote->second.usd_per_ton));
      }
      dates.push_back(std::move(prices_then));
    }
    std::sort(faults_.begin(), faults_.end(),
              [](const Fault& a, const Fault& b) { return line_of(a) < line_of(b); });
    return dates;
  }

  static int line_of(const Fault& fault) {
    return std::stoi(fault.place.substr(std::string("line ").size()));
  }

  const std::string& file_;
  const std::vector<std::string>& products_;
  Faults& faults_;
  const CsvColumns columns_;
  std::map<std::string, std::map<std::string, Quote>> quotes_;  // by date and product
};

}  // namespace

std::vector<DatedPrices> read_dated_prices(const std::string& text, const std::string& file,
                                           const std::vector<std::string>& products,
                                           Faults& faults) {
  Faults own;
  std::vector<DatedPrices> dates;
  if (const auto csv = parse_csv(text, file, own)) {
    dates = PricesReader(*csv, file, products, own).read(*csv);
  }
  faults.insert(faults.end(), own.begin(), own.end());
  return dates;
}

}  // namespace staddle
