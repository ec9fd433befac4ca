// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/signs_table.h"

#include <algorithm>

#include "report/cells.h"
#include "report/key_words.h"
#include "report/level.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

int decimals_of(const std::string& sign) {
  if (sign == "age_yr" || sign == "dominant_height_ft" || sign == "basal_area_ft2_ac") return 0;
  return sign == "qmd_in" ? 1 : 2;
}

const SignLimit* limit_of(const ReadyLimits& limits, const std::string& sign) {
  const auto found = std::ranges::find(limits, sign, &SignLimit::sign);
  return found == limits.end() ? nullptr : &*found;
}

std::string limit_text(const SignLimit& limit, double value, bool strict) {
  const std::string text = words::number(value, decimals_of(limit.sign));
  if (!limit.falling) return text;
  return strict ? "below " + text : text + " and below";
}

}  // namespace

Table signs_table(const std::vector<SignReading>& signs, const ReadyLimits& limits,
                  const std::function<std::string(Age)>& name) {
  Table table{"",
              {{"sign", "", true},
               {"today"},
               {"due from"},
               {"late from"},
               {"verdict", "", true},
               {"comes due about", "", true}},
              {}};
  for (const SignReading& reading : signs) {
    const int decimals = decimals_of(reading.sign);
    const SignLimit* limit = limit_of(limits, reading.sign);
    table.rows.push_back(
        {cells::words(sign_in_words(reading.sign)),
         reading.value ? cells::number(*reading.value, decimals) : cells::blank(),
         {limit ? limit_text(*limit, reading.threshold, false)
                : words::number(reading.threshold, decimals),
          reading.threshold},
         limit && limit->late
             ? Cell{limit_text(*limit, *limit->late, limit->late_is_strict), *limit->late}
             : cells::blank(),
         cells::words(verdict_in_words(reading.verdict)),
         cells::words(reading.about_age_yr ? name(age(*reading.about_age_yr)) : "")});
  }
  return table;
}

std::string how_signs_decide() {
  return "Height, mean diameter and basal area decide together; short crowns make a thinning late "
         "whatever they say; the other signs explain. Common practice, no source.";
}

}  // namespace staddle
