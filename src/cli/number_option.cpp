// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/number_option.h"

#include <fmt/format.h>

#include "io/number_text.h"
#include "io/option_check.h"

namespace staddle::cli {

Result<double> number_option(const std::string& option, const std::string& typed,
                             const NumberRange& range, const std::string& unit) {
  const std::optional<double> value = parse_number(typed);
  if (value && range.contains(*value)) return *value;
  const Option allowed{
      .pointer = "", .meaning = "", .unit = unit, .allowed = kinds::number, .range = range};
  return Faults{{FaultCode::out_of_range, "", "",
                 fmt::format("option {}: found {}, allowed is a number {}", option,
                             quoted_text(typed), range_text(allowed)),
                 ""}};
}

}  // namespace staddle::cli
