// SPDX-License-Identifier: GPL-3.0-or-later
#include "fuzz/mutation.h"

#include <algorithm>
#include <array>

namespace staddle::fuzz {
namespace {

struct Part {
  std::size_t begin = 0;
  std::size_t size = 0;
};

std::size_t below(std::size_t count, RandomStream& random) {
  return count == 0 ? 0 : static_cast<std::size_t>(random.next_below(count));
}

Part any_part(const std::string& text, std::size_t longest, RandomStream& random) {
  const std::size_t begin = below(text.size(), random);
  return {begin, std::min(text.size() - begin, 1 + below(longest, random))};
}

bool in_number(char c) { return (c >= '0' && c <= '9') || c == '.' || c == '-' || c == '+'; }
bool in_word(char c) {
  return in_number(c) || c == '_' || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

std::vector<Part> parts_of(const std::string& text, bool (*belongs)(char)) {
  std::vector<Part> parts;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = at;
    while (end < text.size() && belongs(text[end])) ++end;
    if (end > at) parts.push_back({at, end - at});
    at = std::max(end, at + 1);
  }
  return parts;
}

const std::string& one_of(const std::vector<std::string>& texts, RandomStream& random) {
  return texts[below(texts.size(), random)];
}

std::string odd_number(RandomStream& random) {
  static const std::vector<std::string> numbers = {"NaN",
                                                   "-Infinity",
                                                   "1e999",
                                                   "-1e999",
                                                   "1e-999",
                                                   "-0",
                                                   "-0.0",
                                                   "0",
                                                   "1",
                                                   "-1",
                                                   "2",
                                                   "150",
                                                   "151",
                                                   "1e5",
                                                   "100000.0001",
                                                   "4294967296",
                                                   "9223372036854775808",
                                                   "0.9",
                                                   "0.90000001",
                                                   "1e17",
                                                   "99999999999999999999",
                                                   "1.7976931348623157e308",
                                                   "5e-324",
                                                   "0x10",
                                                   "1.",
                                                   ".5",
                                                   "01",
                                                   "--1"};
  return one_of(numbers, random);
}

std::string plausible_number(RandomStream& random) {
  static constexpr std::array<double, 6> scales = {1, 10, 50, 150, 600, 4000};
  const double scale = scales[below(scales.size(), random)];
  const double value = scale * random.next_uniform();
  const bool whole = random.next_below(2) == 0;
  return whole ? std::to_string(static_cast<int>(value)) : std::to_string(value);
}

std::string odd_text(RandomStream& random) {
  static const std::vector<std::string> texts = {"\"",
                                                 "\\",
                                                 "\\u0000",
                                                 "\\ud800",
                                                 "//",
                                                 "/*",
                                                 "null",
                                                 "true",
                                                 "{}",
                                                 "[]",
                                                 "{",
                                                 "}",
                                                 "[",
                                                 "]",
                                                 ",",
                                                 ":",
                                                 "\n",
                                                 "\r",
                                                 std::string(1, '\0'),
                                                 "\xFF",
                                                 "\xC3",
                                                 "\xEF\xBB\xBF",
                                                 "\"*\"",
                                                 "\"#\"",
                                                 "\"~\"",
                                                 "\"/\"",
                                                 "\"\"",
                                                 ";",
                                                 "\t",
                                                 "\"loblolly-planted-upland\"",
                                                 "\"table.csv\""};
  return one_of(texts, random);
}

void replace_part_of(std::string& text, bool (*belongs)(char), const std::string& by,
                     RandomStream& random) {
  const std::vector<Part> parts = parts_of(text, belongs);
  if (parts.empty()) return;
  const Part part = parts[below(parts.size(), random)];
  text.replace(part.begin, part.size, by);
}

void swap_words(std::string& text, RandomStream& random) {
  const std::vector<Part> words = parts_of(text, in_word);
  if (words.empty()) return;
  const Part word = words[below(words.size(), random)];
  const std::string copy = text.substr(word.begin, word.size);
  replace_part_of(text, in_word, copy, random);
}

void harm(std::string& text, const std::vector<std::string>& others, RandomStream& random) {
  switch (random.next_below(11)) {
    case 0:
      if (!text.empty()) {
        text[below(text.size(), random)] ^= static_cast<char>(1u << random.next_below(8));
      }
      break;
    case 1:
      text.resize(below(text.size() + 1, random));
      break;
    case 2: {
      const Part part = any_part(text, 60, random);
      text.erase(part.begin, part.size);
      break;
    }
    case 3: {
      const Part part = any_part(text, 200, random);
      text.insert(below(text.size() + 1, random), text.substr(part.begin, part.size));
      break;
    }
    case 4:
    case 5:
      replace_part_of(text, in_number, odd_number(random), random);
      break;
    case 6:
      replace_part_of(text, in_number, plausible_number(random), random);
      break;
    case 7:
      swap_words(text, random);
      break;
    case 8:
      text.insert(below(text.size() + 1, random), odd_text(random));
      break;
    case 9: {
      const char bracket = random.next_below(2) == 0 ? '[' : '{';
      text.insert(below(text.size() + 1, random), 1 + below(300, random), bracket);
      break;
    }
    default: {
      const std::string& other = one_of(others, random);
      const Part part = any_part(other, 400, random);
      text.insert(below(text.size() + 1, random), other, part.begin, part.size);
    }
  }
}

}  // namespace

std::string mutated(const std::string& text, const std::vector<std::string>& others,
                    RandomStream& random) {
  std::string harmed = text;
  const std::uint64_t harms = 1 + random.next_below(4);
  for (std::uint64_t i = 0; i < harms; ++i) harm(harmed, others, random);
  return harmed;
}

std::string renumbered(const std::string& text, RandomStream& random) {
  std::string other = text;
  const std::uint64_t numbers = 1 + random.next_below(3);
  for (std::uint64_t i = 0; i < numbers; ++i) {
    replace_part_of(other, in_number, plausible_number(random), random);
  }
  return other;
}

}  // namespace staddle::fuzz
