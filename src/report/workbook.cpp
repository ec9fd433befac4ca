// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/workbook.h"

#include <fmt/format.h>
#include <xlsxwriter.h>

#include <cerrno>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstring>
#include <ctime>
#include <utility>

#include "report/utf8.h"
#include "staddle/base/contract.h"

namespace staddle::sheets {
namespace {

// What one cell holds: 32,767 letters; some of room for readers that count otherwise.
constexpr std::size_t longest_text = 30'000;
// One fixed date of creation, so that the same answer gives the same bytes.
constexpr std::time_t created = 946'684'800;  // 2000-01-01T00:00:00Z

constexpr lxw_color_t input_ink = 0x1F3FA8;
constexpr lxw_color_t input_paper = 0xFFF7D6;
constexpr lxw_color_t heading_paper = 0xE4EBE1;
constexpr lxw_color_t quiet_ink = 0x4A4A4A;

lxw_row_t row_of(Place place) { return static_cast<lxw_row_t>(place.row); }
lxw_col_t column_of(Place place) { return static_cast<lxw_col_t>(place.column); }

const char* number_form(Look look) {
  switch (look) {
    case Look::whole:
    case Look::tract:
    case Look::total_tract:
      return "#,##0";
    case Look::year:
      return "0";
    case Look::tenths:
      return "#,##0.0";
    case Look::share:
      return "0.0000";
    case Look::dollars:
    case Look::total:
    case Look::input_dollars:
      return "#,##0.00";
    case Look::percent:
    case Look::input_percent:
      return "0.00%";
    default:
      return nullptr;
  }
}

void mark_as_input(lxw_format* format) {
  format_set_font_color(format, input_ink);
  format_set_bg_color(format, input_paper);
  format_set_border(format, LXW_BORDER_HAIR);
}

void dress(lxw_format* format, Look look) {
  format_set_align(format, LXW_ALIGN_VERTICAL_TOP);
  if (const char* form = number_form(look)) {
    format_set_num_format(format, form);
    format_set_align(format, LXW_ALIGN_RIGHT);
  }
  switch (look) {
    case Look::wrapped:
      format_set_text_wrap(format);
      break;
    case Look::title:
      format_set_bold(format);
      format_set_font_size(format, 15);
      break;
    case Look::heading:
      format_set_bold(format);
      format_set_font_size(format, 12);
      break;
    case Look::column:
      format_set_bold(format);
      format_set_text_wrap(format);
      format_set_align(format, LXW_ALIGN_CENTER);
      format_set_bg_color(format, heading_paper);
      break;
    case Look::unit:
      format_set_font_color(format, quiet_ink);
      format_set_align(format, LXW_ALIGN_CENTER);
      format_set_bg_color(format, heading_paper);
      format_set_bottom(format, LXW_BORDER_THIN);
      break;
    case Look::note:
      format_set_font_color(format, quiet_ink);
      break;
    case Look::total:
    case Look::total_tract:
      format_set_bold(format);
      break;
    case Look::input_dollars:
    case Look::input_percent:
    case Look::input_number:
    case Look::input_text:
      mark_as_input(format);
      break;
    default:
      break;
  }
}

std::optional<std::string> failure_to_open(const std::string& path) {
  std::FILE* file = std::fopen(path.c_str(), "ab");
  if (file == nullptr || std::fclose(file) != 0) return std::strerror(errno);
  return std::nullopt;
}

void must(lxw_error error) { require(error == LXW_NO_ERROR, "a cell that the sheet can hold"); }

}  // namespace

// ---- sheet ----

void Sheet::text(Place place, const std::string& text, Look look) {
  if (text.empty()) return;
  const std::string held = utf8::cut(text, longest_text, " [...]");
  must(worksheet_write_string(sheet_, row_of(place), column_of(place), held.c_str(),
                              book_.format(look)));
}

void Sheet::number(Place place, double value, Look look) {
  require(std::isfinite(value), "a number of a sheet is finite");
  must(worksheet_write_number(sheet_, row_of(place), column_of(place), value, book_.format(look)));
}

Live Sheet::formula(Place place, const Live& formula, Look look) {
  require(std::isfinite(formula.value()), "a number of a sheet is finite");
  must(worksheet_write_formula_num(sheet_, row_of(place), column_of(place),
                                   ("=" + formula.formula()).c_str(), book_.format(look),
                                   formula.value()));
  return {cell_name(place), formula.value()};
}

void Sheet::formula(Place place, const std::string& formula, const std::string& text, Look look) {
  must(worksheet_write_formula_str(sheet_, row_of(place), column_of(place), ("=" + formula).c_str(),
                                   book_.format(look), text.c_str()));
}

Live Sheet::seen_from_outside(Place place, double value) const {
  std::string quoted;
  for (const char c : name_) quoted += c == '\'' ? std::string("''") : std::string(1, c);
  return {"'" + quoted + "'!" + fixed_cell_name(place), value};
}

void Sheet::width(int first_column, int last_column, double letters) {
  must(worksheet_set_column(sheet_, static_cast<lxw_col_t>(first_column),
                            static_cast<lxw_col_t>(last_column), letters, nullptr));
}

void Sheet::height(int row, double points) {
  must(worksheet_set_row(sheet_, static_cast<lxw_row_t>(row), points, nullptr));
}

void Sheet::freeze(Place first_that_moves) {
  worksheet_freeze_panes(sheet_, row_of(first_that_moves), column_of(first_that_moves));
}

void Sheet::print_setup(const Print& print) {
  constexpr std::uint8_t letter_paper = 1;
  worksheet_set_paper(sheet_, letter_paper);
  if (print.landscape) worksheet_set_landscape(sheet_);
  worksheet_fit_to_pages(sheet_, static_cast<std::uint16_t>(print.pages_wide), 0);
  worksheet_set_footer(sheet_, "&L&A&RPage &P of &N");
  if (print.rows_on_top) {
    must(worksheet_repeat_rows(sheet_, static_cast<lxw_row_t>(print.rows_on_top->first),
                               static_cast<lxw_row_t>(print.rows_on_top->second)));
  }
  if (print.columns_at_left > 0) {
    must(worksheet_repeat_columns(sheet_, 0, static_cast<lxw_col_t>(print.columns_at_left - 1)));
  }
}

void Sheet::allow(Place place, double least, double most, const std::string& why) {
  lxw_data_validation rule{};
  rule.validate = LXW_VALIDATION_TYPE_DECIMAL;
  rule.criteria = LXW_VALIDATION_CRITERIA_BETWEEN;
  rule.minimum_number = least;
  rule.maximum_number = most;
  std::string title = "Not possible here";
  std::string message = why;
  rule.error_title = title.data();
  rule.error_message = message.data();
  must(worksheet_data_validation_cell(sheet_, row_of(place), column_of(place), &rule));
}

void Sheet::bars(const Bars& bars) {
  lxw_chart* chart = workbook_add_chart(book_.book_, LXW_CHART_BAR);
  require(chart != nullptr, "a workbook takes a chart");
  lxw_chart_series* series = chart_add_series(chart, nullptr, nullptr);
  const auto first = static_cast<lxw_row_t>(bars.first_row);
  const auto last = static_cast<lxw_row_t>(bars.last_row);
  const auto names = static_cast<lxw_col_t>(bars.names_column);
  const auto values = static_cast<lxw_col_t>(bars.values_column);
  chart_series_set_categories(series, name_.c_str(), first, names, last, names);
  chart_series_set_values(series, name_.c_str(), first, values, last, values);
  chart_series_set_name(series, bars.series.c_str());
  chart_title_set_name(chart, bars.title.c_str());
  // Of bars the library calls the horizontal axis x, though the names stand on the other.
  chart_axis_set_name(chart->x_axis, bars.axis.c_str());
  chart_axis_set_reverse(chart->y_axis);
  chart_axis_set_num_format(chart->x_axis, "#,##0");
  if (bars.from_zero) chart_axis_set_min(chart->x_axis, 0);
  chart_legend_set_position(chart, LXW_CHART_LEGEND_NONE);
  lxw_chart_options size{};
  size.x_scale = 1.6;
  size.y_scale = 1.1;
  must(worksheet_insert_chart_opt(sheet_, row_of(bars.at), column_of(bars.at), chart, &size));
}

// ---- workbook ----

Workbook::Workbook(const std::string& path) : path_(path), book_(workbook_new(path.c_str())) {
  require(book_ != nullptr, "memory for a workbook");
  lxw_doc_properties properties{};
  properties.created = created;
  must(workbook_set_properties(book_, &properties));
}

Workbook::~Workbook() { lxw_workbook_free(book_); }

Sheet& Workbook::add_sheet(const std::string& wanted_name) {
  std::vector<std::string> taken;
  for (const Sheet& sheet : sheets_) taken.push_back(sheet.name());
  const std::string name = sheet_name(wanted_name, taken);
  lxw_worksheet* sheet = workbook_add_worksheet(book_, name.c_str());
  require(sheet != nullptr, "a name that a sheet can bear");
  sheets_.push_back(Sheet(*this, sheet, name));
  return sheets_.back();
}

std::optional<std::string> Workbook::close() {
  // Asked first, because the library would print its own message.
  if (auto failure = failure_to_open(path_)) return failure;
  // Frees the workbook too.
  const lxw_error error = workbook_close(std::exchange(book_, nullptr));
  if (error == LXW_NO_ERROR) return std::nullopt;
  return lxw_strerror(error);
}

lxw_format* Workbook::format(Look look) {
  lxw_format*& format = formats_[look];
  if (format == nullptr) {
    format = workbook_add_format(book_);
    dress(format, look);
  }
  return format;
}

}  // namespace staddle::sheets
