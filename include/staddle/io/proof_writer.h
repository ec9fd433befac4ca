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

  bool agrees() const { return stand.agrees && (!successor || successor->agrees); }
};

// What was proved, in a few lines that follow the answer in text.
std::string proof_text(const AnswerProof& proof);

}  // namespace staddle
