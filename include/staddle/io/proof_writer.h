// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "staddle/optimise/prove.h"

namespace staddle {

// The proofs behind one answer: of the stand, and where it stands already also of the
// stand that follows it, which gives the land its value.
struct AnswerProof {
  Proof stand;
  std::optional<Proof> successor;
  // Where tax is asked for: of the best plans after tax; absent where a basis enters, of
  // which the states of a proof know nothing.
  struct AfterTax {
    std::optional<Proof> stand, successor;
  };
  std::optional<AfterTax> after_tax;

  bool agrees() const {
    const auto holds = [](const std::optional<Proof>& proof) { return !proof || proof->agrees; };
    return stand.agrees && holds(successor) &&
           (!after_tax || (holds(after_tax->stand) && holds(after_tax->successor)));
  }
};

// What was proved, in a few lines that follow the answer in text.
std::string proof_text(const AnswerProof& proof);

}  // namespace staddle
