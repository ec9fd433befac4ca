// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/utf8.h"

#include "report/wrap.h"
#include "staddle/base/contract.h"

namespace staddle::utf8 {

std::string_view letter_at(std::string_view text, std::size_t at) {
  require(at < text.size(), "a letter begins within the text");
  std::size_t end = at + 1;
  // Bytes that continue a letter begin with the bits 10.
  while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) ++end;
  return text.substr(at, end - at);
}

// Only letters of four bytes lie beyond the first 65,536.
std::size_t utf16_units(std::string_view letter) { return letter.size() >= 4 ? 2 : 1; }

std::string cut(const std::string& text, std::size_t letters, const std::string& ending) {
  if (text.size() <= letters || width_of(text) <= letters) return text;
  std::size_t end = 0;
  for (std::size_t kept = 0; kept + ending.size() < letters; ++kept) {
    end += letter_at(text, end).size();
  }
  return text.substr(0, end) + ending;
}

}  // namespace staddle::utf8
