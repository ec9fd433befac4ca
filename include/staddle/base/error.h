// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace staddle {

// What is wrong, for programs; the wording for people is in Fault::text.
enum class FaultCode {
  unreadable,     // the file cannot be opened, or is not text
  malformed,      // not JSON, not CSV, truncated, nested too deeply
  unknown_key,    // a key or column the format does not have
  repeated_key,   // a key or column given twice
  missing_key,    // a required key or column is absent
  wrong_type,     // a number where a text was needed, and the like
  out_of_range,   // a number outside the range the format allows
  contradiction,  // two values that cannot both be true
  unknown_name,   // an id or a name that stands nowhere else
  no_regime,      // well formed, but no regime satisfies the limits
};

// One thing wrong with an input.
struct Fault {
  FaultCode code = FaultCode::malformed;
  std::string file;   // as the user named it; empty where there is none
  std::string place;  // a JSON pointer ("/stand/age_yr"), or "line 7, column tpa"
  std::string text;   // what was found, and what is allowed
  std::string hint;   // the nearest known name, or a way out; may be empty
};

// All faults of one input, in the order in which they stand in it.
using Faults = std::vector<Fault>;

// "FILE: PLACE: TEXT (HINT)": the one way in which a fault is worded as a line.
std::string to_line(const Fault& fault);

// The name in `known` closest to `name` by edit distance, or "" when none is
// within max(2, length/3) edits, or when no letter would stay. Ties go to the first
// in `known`.
std::string nearest_name(const std::string& name, const std::vector<std::string>& known);

}  // namespace staddle
