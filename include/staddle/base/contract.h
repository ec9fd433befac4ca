// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <stdexcept>
#include <string>

namespace staddle {

// Thrown when the caller broke a promise that the header states: a bug in the
// calling code, never a fault of an input file (those travel as Faults).
class ContractViolation : public std::logic_error {
 public:
  explicit ContractViolation(const std::string& broken_promise)
      : std::logic_error(broken_promise) {}
};

// REQUIRES lines of the headers are checked with this.
inline void require(bool promise_kept, const char* promise) {
  if (!promise_kept) throw ContractViolation(promise);
}

}  // namespace staddle
