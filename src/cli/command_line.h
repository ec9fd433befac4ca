// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "staddle/base/error.h"

namespace staddle::cli {

using Words = std::vector<std::string>;

// One option that a command understands: what help says of it, and where it goes.
struct CommandOption {
  std::string name;         // "format": typed --format
  std::string letter;       // "o": typed -o; empty: none
  std::string placeholder;  // "FILE": takes a value; empty: a flag
  std::string meaning;
  Words choices;  // the only values allowed; empty: any
  std::function<void(const std::string&)> set;
  // Several words may follow, and the option may stand several times: of the words that
  // follow it takes those that look like its own.
  std::function<bool(const std::string&)> takes = nullptr;
};

// One word that is no option, by its place.
struct CommandArgument {
  std::string placeholder;  // "SCENARIO"
  std::string meaning;
  bool required = true;
  std::function<void(const std::string&)> set;
};

// The words one command understands, bound to the options struct of that command, which
// must outlive this. Every command understands --help besides.
class CommandLine {
 public:
  CommandLine();

  void argument(const std::string& placeholder, const std::string& meaning, std::string* target);
  void optional_argument(const std::string& placeholder, const std::string& meaning,
                         std::optional<std::string>* target);
  void flag(const std::string& name, const std::string& meaning, bool* target);
  // `names` is "output" or "output,o".
  void value(const std::string& names, const std::string& placeholder, const std::string& meaning,
             std::optional<std::string>* target);
  void value(const std::string& names, const std::string& placeholder, const std::string& meaning,
             std::string* target);
  // NAME=VALUE ..., any number of them.
  void pairs(const std::string& name, const std::string& placeholder, const std::string& meaning,
             std::vector<std::string>* target);
  void choice(const std::string& name, const std::string& placeholder, const std::string& meaning,
              const Words& choices, std::string* target);

  // Reads the words after the command; options may stand anywhere, and after a word "--"
  // nothing is one. What is wrong comes back; nothing is missing where help is asked for.
  Faults parse(const Words& words);
  bool help_asked() const { return help_asked_; }

  const std::vector<CommandOption>& options() const { return options_; }
  const std::vector<CommandArgument>& arguments() const { return arguments_; }

 private:
  void option(const std::string& names, const std::string& placeholder, const std::string& meaning,
              const Words& choices, std::function<void(const std::string&)> set);
  Faults take_arguments(const Words& arguments);

  std::vector<CommandOption> options_;
  std::vector<CommandArgument> arguments_;
  bool help_asked_ = false;
};

// Splits off the word that names the command: the first that is neither an option nor
// the value of one. `known` are the options of all commands.
struct SplitWords {
  std::optional<std::string> command;
  Words rest;                                 // the other words, in order
  std::optional<std::string> unknown_option;  // met before any command
};
SplitWords split_command(const Words& words, const std::vector<CommandOption>& known);

// "--format", with the nearest of these options as the hint.
Fault unknown_option(const std::string& typed, const std::vector<CommandOption>& known);

}  // namespace staddle::cli
