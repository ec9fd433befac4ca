// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/help.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>
#include <utility>
#include <vector>

#include "cli/commands.h"
#include "report/wrap.h"
#include "staddle/report/text.h"

namespace staddle::cli {
namespace {

// Pairs in two columns, the left one as wide as it needs to be, the right one wrapped.
std::string two_columns(const std::vector<std::pair<std::string, std::string>>& rows) {
  std::size_t width = 0;
  for (const auto& [left, right] : rows) width = std::max(width, left.size());
  std::string text;
  for (const auto& [left, right] : rows) {
    const std::string indent(width + 4, ' ');
    text += wrapped(right, fmt::format("  {:<{}}  ", left, width), indent, text_width) + "\n";
  }
  return text;
}

std::string indented(const std::string& text) {
  std::istringstream stream(text);
  std::string result;
  for (std::string line; std::getline(stream, line);) {
    result += line.empty() ? "\n" : "  " + line + "\n";
  }
  return result;
}

std::string words_of(const CommandOption& option) {
  std::string words = option.letter.empty() ? "    " : fmt::format("-{}, ", option.letter);
  words += "--" + option.name;
  if (!option.placeholder.empty()) words += " " + option.placeholder;
  return words;
}

const char* const exit_statuses =
    "Exit status: 0 done; 1 a fault of the program or of writing its output; 2 the command\n"
    "line is wrong; 3 an input file is wrong; 4 no regime satisfies the limits.\n";

}  // namespace

std::string overview() {
  std::vector<std::pair<std::string, std::string>> rows;
  for (const Command& command : commands()) rows.emplace_back(command.name, command.summary);
  rows.emplace_back("help COMMAND", "what a command answers, its options, an example");
  return "staddle: when to thin and cut a pine stand, how much, and what it is worth\n\n"
         "usage: staddle COMMAND ... [options]\n\n"
         "Commands\n" +
         two_columns(rows) + "\nOptions\n" +
         two_columns({{"-h, --help", "this overview; with a command, its help"},
                      {"    --version", "the version of the program"}}) +
         "\n" + exit_statuses;
}

std::string usage_of(const Command& command, const CommandLine& line) {
  std::string usage = "usage: staddle " + command.name;
  for (const CommandArgument& argument : line.arguments()) {
    usage += argument.required ? " " + argument.placeholder : " [" + argument.placeholder + "]";
  }
  return usage + " [options]\n";
}

std::string help_of(const Command& command) {
  const BoundCommand bound = command.bind();
  std::vector<std::pair<std::string, std::string>> arguments, options;
  for (const CommandArgument& argument : bound.line->arguments()) {
    arguments.emplace_back(argument.placeholder, argument.meaning);
  }
  for (const CommandOption& option : bound.line->options()) {
    options.emplace_back(words_of(option), option.meaning);
  }
  return fmt::format("staddle {}: {}\n\n{}\nWhat it answers\n{}\nArguments\n{}\nOptions\n{}\n",
                     command.name, command.summary, usage_of(command, *bound.line),
                     indented(command.answers), two_columns(arguments), two_columns(options)) +
         fmt::format("Example\n  $ {}\n{}  ...\n\n{}", command.example,
                     indented(command.example_output), exit_statuses);
}

}  // namespace staddle::cli
