// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "io/value_writer.h"
#include "staddle/io/proof_writer.h"

namespace staddle::json {

// The block "proof" of staddle-advice/1, there when a proof was asked for.
Value answer_proof(const AnswerProof& answer);

}  // namespace staddle::json
