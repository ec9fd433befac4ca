// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

// Texts in UTF-8, letter by letter (code point by code point).
namespace staddle::utf8 {

// The bytes of the letter that begins here; one byte where none does.
// REQUIRES: at < text.size().
std::string_view letter_at(std::string_view text, std::size_t at);

// How many units the letter takes in UTF-16, by which spreadsheets count.
std::size_t utf16_units(std::string_view letter);

// The text if it has no more letters than that, else as many of its first ones as leave
// room for `ending`, and the ending. REQUIRES: an ending in ASCII, not longer than that.
std::string cut(const std::string& text, std::size_t letters, const std::string& ending);

}  // namespace staddle::utf8
