// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

// What a user typed is text and stays text, whatever signs it is made of.
namespace staddle::escape {

// For the text and the attributes of HTML and SVG. Control characters become spaces.
std::string markup(const std::string& text);
// For a line of Markdown: nothing in it is a heading, list, link, table, emphasis or HTML.
std::string markdown(const std::string& text);
// The same inside a line, after other words or in a cell of a table.
std::string markdown_within(const std::string& text);
// One line: breaks and other control characters become spaces.
std::string one_line(const std::string& text);

}  // namespace staddle::escape
