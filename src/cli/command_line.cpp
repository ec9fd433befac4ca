// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_line.h"

#include <algorithm>
#include <boost/program_options/errors.hpp>
#include <boost/program_options/options_description.hpp>
#include <boost/program_options/parsers.hpp>
#include <boost/program_options/value_semantic.hpp>
#include <set>

namespace staddle::cli {
namespace {

namespace po = boost::program_options;

Fault fault(FaultCode code, const std::string& text, const std::string& hint = "") {
  return {code, "", "", text, hint};
}

const CommandOption* find_long(const std::string& name, const std::vector<CommandOption>& known) {
  const auto at = std::find_if(known.begin(), known.end(),
                               [&](const CommandOption& option) { return option.name == name; });
  return at == known.end() ? nullptr : &*at;
}

const CommandOption* find_short(const std::string& letter,
                                const std::vector<CommandOption>& known) {
  const auto at = std::find_if(known.begin(), known.end(), [&](const CommandOption& option) {
    return option.letter == letter;
  });
  return at == known.end() ? nullptr : &*at;
}

// The option that a word like "--format=json" or "-oFILE" names, and whether the value
// that it takes stands in the next word.
struct NamedOption {
  const CommandOption* option = nullptr;
  bool value_follows = false;
};

NamedOption named_option(const std::string& word, const std::vector<CommandOption>& known) {
  if (word.starts_with("--")) {
    const std::size_t equals = word.find('=');
    const CommandOption* option = find_long(word.substr(2, equals - 2), known);
    const bool takes_value = option != nullptr && !option->placeholder.empty();
    return {option, takes_value && equals == std::string::npos};
  }
  const CommandOption* option = find_short(word.substr(1, 1), known);
  const bool takes_value = option != nullptr && !option->placeholder.empty();
  return {option, takes_value && word.size() == 2};
}

bool looks_like_option(const std::string& word) { return word.size() > 1 && word[0] == '-'; }

// What an abbreviation stands for; "" where it could be several or none.
std::string only_name_beginning_with(const std::string& beginning, const Words& names) {
  std::set<std::string> found;
  for (const std::string& name : names) {
    if (!beginning.empty() && name.starts_with(beginning)) found.insert(name);
  }
  return found.size() == 1 ? *found.begin() : "";
}

po::options_description describe(const std::vector<CommandOption>& options) {
  po::options_description description;
  for (const CommandOption& option : options) {
    const std::string names =
        option.letter.empty() ? option.name : option.name + "," + option.letter;
    if (option.placeholder.empty()) {
      description.add_options()(names.c_str(), "");
    } else if (option.takes) {
      description.add_options()(names.c_str(), po::value<Words>()->multitoken());
    } else {
      description.add_options()(names.c_str(), po::value<std::string>());
    }
  }
  return description;
}

// Takes the options as they were parsed; words that are no options go to `arguments`.
Faults take_options(const std::vector<po::option>& parsed, const std::vector<CommandOption>& known,
                    Words& arguments) {
  Faults faults;
  std::set<std::string> seen;
  for (const po::option& item : parsed) {
    if (item.string_key.empty()) {
      arguments.insert(arguments.end(), item.value.begin(), item.value.end());
      continue;
    }
    // With long and short names alike Boost reports the long one, or "-o" as typed.
    const std::string& key = item.string_key;
    const CommandOption* option =
        key.starts_with("-") ? find_short(key.substr(1), known) : find_long(key, known);
    if (option == nullptr) {
      faults.push_back(unknown_option(key, known));
      continue;
    }
    if (option->takes) {
      for (const std::string& word : item.value) {
        if (option->takes(word)) {
          option->set(word);
        } else {
          arguments.push_back(word);
        }
      }
      continue;
    }
    if (!seen.insert(option->name).second) {
      faults.push_back(
          fault(FaultCode::repeated_key, "option --" + option->name + " stands twice"));
      continue;
    }
    const std::string value = item.value.empty() ? "" : item.value.front();
    const Words& choices = option->choices;
    if (!choices.empty() && std::find(choices.begin(), choices.end(), value) == choices.end()) {
      std::string allowed;
      for (const std::string& choice : choices) allowed += (allowed.empty() ? "" : ", ") + choice;
      const std::string nearest = nearest_name(value, choices);
      faults.push_back(
          fault(FaultCode::out_of_range,
                "option --" + option->name + ": \"" + value + "\" is not one of: " + allowed,
                nearest.empty() ? "" : "did you mean " + nearest + "?"));
      continue;
    }
    option->set(value);
  }
  return faults;
}

}  // namespace

Fault unknown_option(const std::string& typed, const std::vector<CommandOption>& known) {
  const std::string word = typed.substr(0, typed.find('='));
  const std::string bare = word.substr(std::min(word.find_first_not_of('-'), word.size()));
  Words names;
  for (const CommandOption& option : known) names.push_back(option.name);
  std::string nearest = nearest_name(bare, names);
  if (nearest.empty()) nearest = only_name_beginning_with(bare, names);
  return fault(FaultCode::unknown_key, "unknown option " + word,
               nearest.empty() ? "" : "did you mean --" + nearest + "?");
}

SplitWords split_command(const Words& words, const std::vector<CommandOption>& known) {
  SplitWords split;
  bool options_ended = false;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string& word = words[i];
    if (!options_ended && word == "--") {
      options_ended = true;
    } else if (options_ended || !looks_like_option(word)) {
      split.command = word;
      split.rest = words;
      split.rest.erase(split.rest.begin() + static_cast<std::ptrdiff_t>(i));
      return split;
    } else {
      const NamedOption named = named_option(word, known);
      if (named.option == nullptr) {
        split.unknown_option = word;
        return split;
      }
      if (named.value_follows) ++i;
    }
  }
  split.rest = words;
  return split;
}

CommandLine::CommandLine() {
  option("help,h", "", "show this help", {}, [this](const std::string&) { help_asked_ = true; });
}

void CommandLine::option(const std::string& names, const std::string& placeholder,
                         const std::string& meaning, const Words& choices,
                         std::function<void(const std::string&)> set) {
  const std::size_t comma = names.find(',');
  const std::string letter = comma == std::string::npos ? "" : names.substr(comma + 1);
  options_.push_back(
      {names.substr(0, comma), letter, placeholder, meaning, choices, std::move(set)});
}

void CommandLine::argument(const std::string& placeholder, const std::string& meaning,
                           std::string* target) {
  arguments_.push_back(
      {placeholder, meaning, true, [target](const std::string& word) { *target = word; }});
}

void CommandLine::optional_argument(const std::string& placeholder, const std::string& meaning,
                                    std::optional<std::string>* target) {
  arguments_.push_back(
      {placeholder, meaning, false, [target](const std::string& word) { *target = word; }});
}

void CommandLine::flag(const std::string& name, const std::string& meaning, bool* target) {
  option(name, "", meaning, {}, [target](const std::string&) { *target = true; });
}

void CommandLine::value(const std::string& names, const std::string& placeholder,
                        const std::string& meaning, std::optional<std::string>* target) {
  option(names, placeholder, meaning, {}, [target](const std::string& word) { *target = word; });
}

void CommandLine::value(const std::string& names, const std::string& placeholder,
                        const std::string& meaning, std::string* target) {
  option(names, placeholder, meaning, {}, [target](const std::string& word) { *target = word; });
}

void CommandLine::pairs(const std::string& name, const std::string& placeholder,
                        const std::string& meaning, std::vector<std::string>* target) {
  option(name, placeholder, meaning, {},
         [target](const std::string& word) { target->push_back(word); });
  options_.back().takes = [](const std::string& word) {
    return word.find('=') != std::string::npos;
  };
}

void CommandLine::choice(const std::string& name, const std::string& placeholder,
                         const std::string& meaning, const Words& choices, std::string* target) {
  option(name, placeholder, meaning, choices,
         [target](const std::string& word) { *target = word; });
}

Faults CommandLine::take_arguments(const Words& words) {
  Faults faults;
  for (std::size_t i = 0; i < std::max(words.size(), arguments_.size()); ++i) {
    if (i >= arguments_.size()) {
      faults.push_back(fault(FaultCode::unknown_name, "one word too many: \"" + words[i] + "\""));
    } else if (i < words.size()) {
      arguments_[i].set(words[i]);
    } else if (arguments_[i].required) {
      faults.push_back(fault(FaultCode::missing_key, arguments_[i].placeholder + " is missing"));
    }
  }
  return faults;
}

Faults CommandLine::parse(const Words& words) {
  // Boost drops "--" and with it the promise that what follows is no option when its
  // output is parsed again, so the split happens here.
  const auto dashes = std::find(words.begin(), words.end(), "--");
  Words arguments;
  Faults faults;
  try {
    const int style = po::command_line_style::unix_style & ~po::command_line_style::allow_guessing;
    const po::options_description description = describe(options_);
    const po::parsed_options parsed = po::command_line_parser(Words(words.begin(), dashes))
                                          .options(description)
                                          .style(style)
                                          .run();
    faults = take_options(parsed.options, options_, arguments);
  } catch (const po::unknown_option& error) {
    faults.push_back(unknown_option(error.get_option_name(), options_));
  } catch (const po::error& error) {
    faults.push_back(fault(FaultCode::wrong_type, error.what()));
  }
  if (help_asked_) return {};
  if (!faults.empty()) return faults;
  if (dashes != words.end()) arguments.insert(arguments.end(), dashes + 1, words.end());
  return take_arguments(arguments);
}

}  // namespace staddle::cli
