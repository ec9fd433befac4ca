// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/ready_writer.h"

namespace staddle::json {

Value sign(const SignReading& reading) {
  static constexpr const char* verdicts[] = {"not yet", "due", "late"};
  return {{"sign", reading.sign},
          {"value", optional(reading.value, number)},
          {"threshold", number(reading.threshold)},
          {"verdict", verdicts[static_cast<std::size_t>(reading.verdict)]},
          {"about_age_yr", optional(reading.about_age_yr, [](int at) { return Value(at); })}};
}

}  // namespace staddle::json
