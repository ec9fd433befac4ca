// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "cli/command_line.h"
#include "cli/outcome.h"

namespace staddle::cli {

// Where and how a command writes what it found out: the same for every command.
struct OutputOptions {
  std::string format = "text";
  std::optional<std::string> file;  // absent or "-": standard output
};
// --format with these choices, and -o FILE.
void add_output_options(CommandLine& line, const Words& formats, OutputOptions* options);

// The outcome of an output that cannot be meant: a file without a name.
std::optional<Outcome> nameless_output(const OutputOptions& options);

// One parse of one command: `line` fills the options struct that `run` reads.
struct BoundCommand {
  std::unique_ptr<CommandLine> line;
  std::function<Outcome()> run;
  const OutputOptions* output = nullptr;
};

// What the program can do, one row of the table in commands.cpp.
struct Command {
  std::string name;
  std::string summary;         // half a sentence for the overview
  std::string answers;         // paragraphs: the questions it answers
  std::string example;         // a command that works in the repository's top folder
  std::string example_output;  // how what it prints begins
  std::function<BoundCommand()> bind;
};

// Makes the `bind` of a command from its options struct (with a member `output`), a
// setup that registers and a run that acts.
template <class Options>
std::function<BoundCommand()> binder(void (*setup)(CommandLine&, Options&),
                                     Outcome (*run)(const Options&)) {
  return [setup, run] {
    auto options = std::make_shared<Options>();
    BoundCommand bound;
    bound.line = std::make_unique<CommandLine>();
    setup(*bound.line, *options);
    bound.run = [options, run] {
      const std::optional<Outcome> refused = nameless_output(options->output);
      return refused ? *refused : run(*options);
    };
    bound.output = &options->output;
    return bound;
  };
}

}  // namespace staddle::cli
