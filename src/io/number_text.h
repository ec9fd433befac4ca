// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

// Numbers as text, the same whatever the locale of the process.
namespace staddle {

// The shortest text that reads back as the same double, without an exponent between
// 1e-5 and 1e15: "0.05", "62", "100000". REQUIRES: finite.
std::string number_text(double value);

// The finite number that is the whole of `text`; nothing else may stand there.
std::optional<double> parse_number(std::string_view text);

// Whether this text, which has the form of a JSON number, is too large for a double.
bool overflows(std::string_view json_number);

// A text between quotation marks, with control characters escaped, at most about
// `most_bytes` long: for messages and for JSON values.
std::string quoted_text(std::string_view text, std::size_t most_bytes = std::string_view::npos);

// The text with control characters, and bytes that are no text, written as \u00XX: for
// names from a file that stand in a message.
std::string without_controls(std::string_view text);

// Whether the bytes are well-formed UTF-8 (Unicode standard, table 3-7).
bool is_utf8(std::string_view bytes);

// Whether a control character (C0, DEL or C1) stands in this UTF-8 text.
bool has_control_character(std::string_view text);

}  // namespace staddle
