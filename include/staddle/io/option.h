// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <limits>
#include <span>
#include <string_view>

namespace staddle {

// The kinds of JSON values; an option may allow several of them: number | text.
struct ValueKinds {
  unsigned bits = 0;
  constexpr bool has(ValueKinds other) const { return (bits & other.bits) != 0; }
  friend constexpr ValueKinds operator|(ValueKinds a, ValueKinds b) { return {a.bits | b.bits}; }
  friend constexpr bool operator==(ValueKinds, ValueKinds) = default;
};

namespace kinds {
inline constexpr ValueKinds null{1}, boolean{2}, number{4}, text{8}, list{16}, object{32};
// A number without a fraction: 15 and 15.0, not 15.5.
inline constexpr ValueKinds whole{64};
}  // namespace kinds

// The numbers an option allows; an open end is not itself allowed.
struct NumberRange {
  double low = -std::numeric_limits<double>::infinity();
  double high = std::numeric_limits<double>::infinity();
  bool low_open = false;
  bool high_open = false;

  constexpr bool contains(double value) const {
    return (low_open ? value > low : value >= low) && (high_open ? value < high : value <= high);
  }
  friend constexpr bool operator==(const NumberRange&, const NumberRange&) = default;
};

constexpr NumberRange from_to(double low, double high) { return {low, high, false, false}; }
constexpr NumberRange above_to(double low, double high) { return {low, high, true, false}; }
constexpr NumberRange from_below(double low, double high) { return {low, high, false, true}; }
constexpr NumberRange between(double low, double high) { return {low, high, true, true}; }

// What the format says of one key, in one place: from this the reader checks a file
// and fills in defaults, and from this help and the published schema are made.
struct Option {
  // A JSON pointer in which "*" stands for any key and "#" for any place in a list:
  // "/products/#/top_in".
  std::string_view pointer;
  std::string_view meaning;
  std::string_view unit = "";
  ValueKinds allowed;
  NumberRange range = {};         // of a number
  std::string_view choices = "";  // the only texts allowed, "a|b|c"; empty: any text
  std::size_t least_items = 0;    // of a list
  std::size_t most_items = std::numeric_limits<std::size_t>::max();
  bool required = false;
  std::string_view default_json = "";  // the value of a missing key; empty: none
  bool implied = false;  // an object that exists even when absent, so that the defaults
                         // of the keys inside it apply
};

// Every option of a scenario file, block by block, in the order of the format.
std::span<const Option> scenario_options();
// Every option of a tract file.
std::span<const Option> tract_options();

}  // namespace staddle
