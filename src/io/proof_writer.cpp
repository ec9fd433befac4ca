// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/proof_writer.h"

#include <fmt/format.h>

#include "io/proof_value_writer.h"

namespace staddle {
namespace {

std::string lines_of(const std::string& what, const Proof& proof) {
  return fmt::format(
      "Proof for {} ({} states, {} choices), dollars per acre:\n"
      "  {:.6f} by the optimiser\n"
      "  {:.6f} by dynamic programming\n"
      "  {:.6f} by linear programming, {:.6f} by its dual\n"
      "  {}\n",
      what, proof.states, proof.choices, proof.by_optimiser.in(dollars_per_acre),
      proof.by_dynamic_programming.in(dollars_per_acre),
      proof.by_linear_program.in(dollars_per_acre), proof.by_dual.in(dollars_per_acre),
      proof.agrees ? "They agree." : "They do not agree: " + proof.linear_program_status);
}

}  // namespace

std::string proof_text(const AnswerProof& proof) {
  std::string text = lines_of("this stand", proof.stand);
  if (proof.successor) text += lines_of("the stand that follows it", *proof.successor);
  if (proof.after_tax && proof.after_tax->stand) {
    text += lines_of("this stand after tax", *proof.after_tax->stand);
  }
  return text;
}

namespace json {
namespace {

constexpr const char* no_state_knows =
    "what a basis saves depends on all cuts before, which the states of the proof do not know";

Value proof(const Proof& proof) {
  return {{"states", count(static_cast<double>(proof.states))},
          {"choices", count(static_cast<double>(proof.choices))},
          {"by_optimiser_usd_ac", usd_ac(proof.by_optimiser)},
          {"by_dynamic_programming_usd_ac", usd_ac(proof.by_dynamic_programming)},
          {"by_linear_program_usd_ac", usd_ac(proof.by_linear_program)},
          {"by_dual_usd_ac", usd_ac(proof.by_dual)},
          {"largest_dual_difference_usd_ac", usd_ac(proof.largest_dual_difference)},
          {"linear_program_status", proof.linear_program_status},
          {"agrees", proof.agrees}};
}

Value not_proved() {
  Value object;
  const Value form = proof(Proof{});
  for (const auto& [key, value] : form.items()) {
    if (key.ends_with("_usd_ac")) object[key] = nullptr;
  }
  object["reason"] = no_state_knows;
  return object;
}

// `after_tax`: no pointer where tax is not asked for.
Value proof_with_tax(const std::optional<Proof>& proved, const std::optional<Proof>* after_tax) {
  if (!proved) return nullptr;
  Value object = proof(*proved);
  if (after_tax != nullptr) object["after_tax"] = *after_tax ? proof(**after_tax) : not_proved();
  return object;
}

}  // namespace

Value answer_proof(const AnswerProof& answer) {
  const auto& taxed = answer.after_tax;
  return {{"stand", proof_with_tax(answer.stand, taxed ? &taxed->stand : nullptr)},
          {"successor", proof_with_tax(answer.successor, taxed ? &taxed->successor : nullptr)}};
}

}  // namespace json
}  // namespace staddle
