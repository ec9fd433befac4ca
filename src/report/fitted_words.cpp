// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/fitted_words.h"

#include <fmt/format.h>

#include <algorithm>

#include "signs/plain_words.h"

namespace staddle {
namespace {

std::string range_in_words(const OutsideRange& outside) {
  const std::string range =
      fmt::format("{} to {}", words::number(outside.low), words::number(outside.high));
  if (outside.what == "age_yr") return fmt::format("ages of {} years", range);
  if (outside.what == "tpa") return fmt::format("stands of {} trees an acre", range);
  return fmt::format("site indexes of {} feet", range);
}

std::string who_leans(const std::string& of) {
  if (of == "best") return "the best plan";
  if (of == "successor") return "the stand planted after it";
  return fmt::format("\"{}\"", of);
}

}  // namespace

std::vector<std::string> outside_fitted_words(const std::vector<OutsideRange>& outside) {
  std::vector<std::string> texts;
  for (const std::string what : {"age_yr", "tpa", "site_index_ft"}) {
    std::vector<std::string> leaning;
    const OutsideRange* one = nullptr;
    for (const OutsideRange& entry : outside) {
      if (entry.what != what) continue;
      one = &entry;
      leaning.push_back(fmt::format("{}{} {}", who_leans(entry.of),
                                    leaning.empty() ? " leans on" : " on",
                                    words::number(entry.value)));
    }
    if (one == nullptr) continue;
    texts.push_back(fmt::format("The equations were fitted to {}; beyond that they guess: {}.",
                                range_in_words(*one), words::list(leaning)));
  }
  return texts;
}

std::vector<std::string> fitted_words_of_years(const std::vector<OutsideRange>& outside) {
  std::vector<std::string> texts;
  for (const OutsideRange& entry : outside) {
    texts.push_back(fmt::format(
        "The equations were fitted to {}; beyond that they guess: these rows reach {}.",
        range_in_words(entry), words::number(entry.value)));
  }
  return texts;
}

}  // namespace staddle
