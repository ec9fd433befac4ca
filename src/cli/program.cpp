// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/program.h"

#include <algorithm>

#include "cli/commands.h"
#include "cli/help.h"
#include "cli/output_file.h"

namespace staddle::cli {
namespace {

ExitCode write_text(const std::string& text, const std::optional<std::string>& file) {
  const std::optional<std::string> failure = write_output(text, file);
  if (!failure) return ExitCode::done;
  write_error_line("staddle: " + *failure);
  return ExitCode::fault;
}

ExitCode refuse(const Faults& faults, const std::string& way_out) {
  for (const Fault& fault : faults) write_error_line("staddle: " + to_line(fault));
  write_error_line(way_out);
  return ExitCode::wrong_command_line;
}

Fault unknown_command(const std::string& name) {
  Words names{"help"};
  for (const Command& command : commands()) names.push_back(command.name);
  const std::string nearest = nearest_name(name, names);
  return {FaultCode::unknown_name, "", "", "unknown command \"" + name + "\"",
          nearest.empty() ? "" : "did you mean " + nearest + "?"};
}

const char* const see_overview = "\"staddle --help\" lists the commands";

ExitCode run_command(const Command& command, const Words& words) {
  const BoundCommand bound = command.bind();
  const std::string see_help = "\"staddle " + command.name + " --help\" says what it takes";
  const Faults faults = bound.line->parse(words);
  if (!faults.empty()) return refuse(faults, see_help);
  if (bound.line->help_asked()) return write_text(help_of(command), std::nullopt);
  const Outcome outcome = bound.run();
  if (outcome.code == ExitCode::wrong_command_line) return refuse(outcome.faults, see_help);
  for (const Fault& fault : outcome.faults) write_error_line(to_line(fault));
  const bool has_text = outcome.code == ExitCode::done || !outcome.text.empty();
  if (!has_text || outcome.written) return outcome.code;
  const ExitCode written = write_text(outcome.text, bound.output->file);
  return written == ExitCode::done ? outcome.code : written;
}

ExitCode run_help(const Words& words) {
  Words names;
  std::copy_if(words.begin(), words.end(), std::back_inserter(names),
               [](const std::string& word) { return !word.starts_with("-"); });
  if (names.empty()) return write_text(overview(), std::nullopt);
  const Command* command = find_command(names.front());
  if (command == nullptr) return refuse({unknown_command(names.front())}, see_overview);
  return write_text(help_of(*command), std::nullopt);
}

// The options of every command, and those that need none.
std::vector<CommandOption> all_options() {
  std::vector<CommandOption> options{{"version", "", "", "", {}, nullptr}};
  for (const Command& command : commands()) {
    const BoundCommand bound = command.bind();
    options.insert(options.end(), bound.line->options().begin(), bound.line->options().end());
  }
  return options;
}

bool contains(const Words& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

ExitCode run_program(const Words& words) {
  const std::vector<CommandOption> known = all_options();
  const SplitWords split = split_command(words, known);
  if (split.unknown_option)
    return refuse({unknown_option(*split.unknown_option, known)}, see_overview);
  if (!split.command) {
    if (contains(split.rest, "--version")) {
      return write_text("staddle " STADDLE_VERSION "\n", std::nullopt);
    }
    if (contains(split.rest, "--help") || contains(split.rest, "-h")) {
      return write_text(overview(), std::nullopt);
    }
    return refuse({{FaultCode::missing_key, "", "", "a command is missing", ""}}, see_overview);
  }
  if (*split.command == "help") return run_help(split.rest);
  const Command* command = find_command(*split.command);
  if (command == nullptr) return refuse({unknown_command(*split.command)}, see_overview);
  return run_command(*command, split.rest);
}

}  // namespace staddle::cli
