// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/number_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <system_error>

#include "staddle/base/contract.h"

namespace staddle {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// The decimal exponent behind 'e', held within +-1000000; 0 where there is none.
long written_exponent(std::string_view number) {
  const std::size_t at = number.find_first_of("eE");
  if (at == std::string_view::npos) return 0;
  bool negative = false;
  long exponent = 0;
  for (const char c : number.substr(at + 1)) {
    if (c == '-') negative = true;
    if (is_digit(c)) exponent = std::min(1000000L, exponent * 10 + (c - '0'));
  }
  return negative ? -exponent : exponent;
}

// How many bytes the well-formed sequence at the front has; 0 where there is none.
std::size_t utf8_sequence(std::string_view bytes) {
  const auto byte = [&](std::size_t i) {
    return i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0u;
  };
  const auto in = [](unsigned value, unsigned low, unsigned high) {
    return value >= low && value <= high;
  };
  const auto continues = [&](std::size_t from, std::size_t to) {
    for (std::size_t i = from; i <= to; ++i) {
      if (!in(byte(i), 0x80, 0xBF)) return false;
    }
    return true;
  };
  const unsigned first = byte(0);
  const unsigned second = byte(1);
  if (first < 0x80) return 1;
  if (in(first, 0xC2, 0xDF)) return continues(1, 1) ? 2 : 0;
  if (in(first, 0xE0, 0xEF)) {
    const bool shortest = first != 0xE0 || second >= 0xA0;
    const bool no_surrogate = first != 0xED || second <= 0x9F;
    return shortest && no_surrogate && continues(1, 2) ? 3 : 0;
  }
  if (in(first, 0xF0, 0xF4)) {
    const bool shortest = first != 0xF0 || second >= 0x90;
    const bool in_unicode = first != 0xF4 || second <= 0x8F;
    return shortest && in_unicode && continues(1, 3) ? 4 : 0;
  }
  return 0;
}

bool is_control(std::string_view sequence) {
  const auto first = static_cast<unsigned char>(sequence[0]);
  if (sequence.size() == 1) return first < 0x20 || first == 0x7F;
  return first == 0xC2 && static_cast<unsigned char>(sequence[1]) < 0xA0;
}

// The first character of a text; a byte that begins none stands for itself.
std::string_view next_character(std::string_view text) {
  return text.substr(0, std::max<std::size_t>(1, utf8_sequence(text)));
}

// A character as it is, or as an escape where it cannot be shown.
std::string shown(std::string_view character) {
  static constexpr std::string_view hex = "0123456789abcdef";
  const auto byte = static_cast<unsigned char>(character.back());
  const bool no_text = character.size() == 1 && byte >= 0x80;
  if (!no_text && !is_control(character)) return std::string(character);
  return std::string("\\u00") + hex[byte >> 4] + hex[byte & 15];
}

}  // namespace

std::string number_text(double value) {
  require(std::isfinite(value), "number_text needs a finite number");
  value += 0.0;  // no "-0"
  const double magnitude = std::fabs(value);
  const bool plain = magnitude == 0 || (magnitude >= 1e-5 && magnitude < 1e15);
  std::array<char, 64> buffer;
  const auto written = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                     plain ? std::chars_format::fixed : std::chars_format::general);
  return std::string(buffer.data(), written.ptr);
}

std::optional<double> parse_number(std::string_view text) {
  if (text.size() > 1 && text[0] == '+' && text[1] != '-') text.remove_prefix(1);
  double value = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  if (read.ptr != text.data() + text.size()) return std::nullopt;
  if (read.ec == std::errc::result_out_of_range) {
    if (overflows(text)) return std::nullopt;
    value = 0;  // nearer to zero than any other double
  } else if (read.ec != std::errc()) {
    return std::nullopt;
  }
  if (!std::isfinite(value)) return std::nullopt;
  return value + 0.0;
}

bool overflows(std::string_view number) {
  double value = 0;
  const auto read = std::from_chars(number.data(), number.data() + number.size(), value);
  if (read.ec != std::errc::result_out_of_range) return false;
  // Out of range at either end: which one shows in the place of the first digit.
  if (!number.empty() && number[0] == '-') number.remove_prefix(1);
  long place = 0;  // of the first non-zero digit, counted from the decimal point
  bool past_point = false;
  bool found = false;
  for (const char c : number.substr(0, number.find_first_of("eE"))) {
    if (c == '.') {
      past_point = true;
    } else if (found) {
      if (past_point) break;
      ++place;
    } else if (c != '0') {
      found = true;
      if (!past_point) place = 1;
    } else if (past_point) {
      --place;
    }
  }
  return place + written_exponent(number) > 0;
}

std::string quoted_text(std::string_view text, std::size_t most_bytes) {
  std::string quoted = "\"";
  std::size_t at = 0;
  while (at < text.size() && at < most_bytes) {
    const std::string_view next = next_character(text.substr(at));
    if (next == "\"" || next == "\\") quoted += '\\';
    quoted += shown(next);
    at += next.size();
  }
  return quoted + (at < text.size() ? "...\"" : "\"");
}

std::string without_controls(std::string_view text) {
  std::string plain;
  while (!text.empty()) {
    const std::string_view next = next_character(text);
    plain += shown(next);
    text.remove_prefix(next.size());
  }
  return plain;
}

bool is_utf8(std::string_view bytes) {
  while (!bytes.empty()) {
    const std::size_t length = utf8_sequence(bytes);
    if (length == 0) return false;
    bytes.remove_prefix(length);
  }
  return true;
}

bool has_control_character(std::string_view text) {
  while (!text.empty()) {
    const std::string_view next = next_character(text);
    if (is_control(next)) return true;
    text.remove_prefix(next.size());
  }
  return false;
}

}  // namespace staddle
