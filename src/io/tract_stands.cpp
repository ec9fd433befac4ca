// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/tract_stands.h"

#include "io/number_text.h"

namespace staddle {
namespace {

constexpr int orders_of_a_line = 16;  // more than a table has columns

}  // namespace

TractStands::TractStands(json::Node& tree, const FileLoader& load, FaultList& faults)
    : tree_(tree), faults_(faults), of_table_("") {
  const json::Node* stands = tree.find("stands");
  const json::Node* table = tree.find("stands_csv");
  if (tree.kind != kinds::object) return;
  if (stands == nullptr && table == nullptr) {
    faults.add(tree.order, FaultCode::missing_key, "/stands",
               "the tract has no stands; one of \"stands\" and \"stands_csv\" is required");
  } else if (stands != nullptr && table != nullptr) {
    const bool table_later = table->order > stands->order;
    faults.add(table_later ? table->order : stands->order, FaultCode::contradiction,
               table_later ? "/stands_csv" : "/stands",
               "stands stand here and in a table; one of \"stands\" and \"stands_csv\" is "
               "allowed");
  } else if (table != nullptr && table->kind == kinds::text) {
    read_table(json::Node(*table), load);
  }
}

void TractStands::read_table(const json::Node& name, const FileLoader& load) {
  table_ = name.text;
  order_of_table_ = name.order;
  of_table_ = FaultList(table_);
  const Result<std::string> text = load(table_);
  if (!text) {
    for (const Fault& fault : text.error()) {
      faults_.add(name.order, FaultCode::unreadable, "/stands_csv",
                  "cannot read " + quoted_text(table_) + ": " + fault.text, fault.hint);
    }
    return;
  }
  Faults found;
  const auto csv = parse_csv(*text, table_, found);
  if (csv) columns_.emplace(csv->header, table_, found);
  if (csv && csv->rows.empty()) {
    found.push_back({FaultCode::malformed, table_, "", "no stand stands in it", ""});
  }
  if (!found.empty()) {
    faults_.add_all(name.order, found);
    columns_.reset();
    return;
  }
  json::Node list;
  list.kind = kinds::list;
  list.order = name.order;
  for (const CsvRow& row : csv->rows) {
    Faults of_row;
    const int order = row.line * orders_of_a_line;
    list.items.push_back(columns_->entry(row, order, of_row));
    of_table_.add_all(order, of_row);
    lines_.push_back(row.line);
  }
  tree_.members.push_back({"stands", std::move(list)});
}

std::size_t TractStands::size() const {
  const json::Node* stands = tree_.find("stands");
  return stands != nullptr && stands->kind == kinds::list ? stands->items.size() : 0;
}

const json::Node& TractStands::entry(std::size_t i) const {
  return tree_.find("stands")->items.at(i);
}

void TractStands::report(int order, const Fault& fault) {
  constexpr std::string_view before = "/stands/";
  const bool of_stand = fault.place.starts_with(before);
  if (!columns_ || !of_stand) {
    faults_.add(order, fault.code, fault.place, fault.text, fault.hint);
    return;
  }
  const std::size_t slash = std::min(fault.place.find('/', before.size()), fault.place.size());
  const std::string index = fault.place.substr(before.size(), slash - before.size());
  Fault moved = fault;
  moved.place = fault.place.substr(slash);
  report_in(static_cast<std::size_t>(std::stoul(index)), order, moved);
}

void TractStands::report_in(std::size_t i, int order, Fault fault) {
  if (columns_) {
    of_table_.add_all(order, {columns_->placed(std::move(fault), lines_.at(i))});
    return;
  }
  faults_.add(order, fault.code, json::pointer_to("/stands", i) + fault.place, fault.text,
              fault.hint);
}

void TractStands::finish() { faults_.add_all(order_of_table_, of_table_.in_file_order()); }

}  // namespace staddle
