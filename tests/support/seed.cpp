// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/seed.h"

#include <cstdlib>

namespace staddle::support {
namespace {

// FNV-1a (Fowler, Noll, Vo): a number from a text, the same on every machine.
std::uint64_t from_text(const std::string& text) {
  std::uint64_t hash = 0xCBF29CE484222325ULL;
  for (const char letter : text) {
    hash ^= static_cast<unsigned char>(letter);
    hash *= 0x100000001B3ULL;
  }
  return hash;
}

std::uint64_t shift() {
  const char* text = std::getenv("STADDLE_TEST_SEED");
  return text == nullptr ? 0 : std::strtoull(text, nullptr, 10);
}

Catch::ScopedMessage message(const std::string& tag, std::uint64_t seed) {
  Catch::MessageBuilder builder("seed", CATCH_INTERNAL_LINEINFO, Catch::ResultWas::Info);
  builder << "seed of \"" << tag << "\": " << seed;
  return Catch::ScopedMessage(builder);
}

}  // namespace

TaggedSeed::TaggedSeed(const std::string& tag)
    : value_(from_text(tag) + shift()), message_(message(tag, value_)) {}

}  // namespace staddle::support
