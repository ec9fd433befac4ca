// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/advise/advice.h"
#include "staddle/io/proof_writer.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// The answer as JSON, format staddle-advice/1. The keys stand in the order of the format,
// numbers in full precision. A number that is NaN or infinite is a ContractViolation.
// The proof stands at the end, where one was asked for.
// REQUIRES: the advice of this scenario.
std::string advice_json(const Scenario& scenario, const Advice& advice,
                        const AnswerProof* proof = nullptr);

}  // namespace staddle
