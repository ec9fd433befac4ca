// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/csv_writer.h"

#include <cmath>

#include "io/number_text.h"
#include "staddle/base/contract.h"

namespace staddle::csv {
namespace {

std::string cell(const std::string& text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + "\"";
}

}  // namespace

std::string line(const std::vector<std::string>& cells) {
  std::string text;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i > 0) text += ',';
    text += cell(cells[i]);
  }
  return text + "\r\n";
}

std::string number(double value) {
  require(std::isfinite(value), "a result holds finite numbers only");
  return number_text(value == 0.0 ? 0.0 : value);  // never -0
}

}  // namespace staddle::csv
