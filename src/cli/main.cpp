// SPDX-License-Identifier: GPL-3.0-or-later
#include <signal.h>

#include <csignal>
#include <exception>
#include <new>
#include <string>

#include "cli/output_file.h"
#include "cli/program.h"

namespace {

// What is wrong with an input travels as a value; an exception is a fault of the program.
int ask_to_report(const std::string& what) {
  staddle::cli::write_error_line("staddle: a fault of the program itself: " + what);
  staddle::cli::write_error_line(
      "Please report it with this message, the command line and the input file.");
  return static_cast<int>(staddle::cli::ExitCode::fault);
}

}  // namespace

int main(int argc, char** argv) {
  // A file that grows beyond the shell's limit is a write that fails, like a full disk.
  std::signal(SIGXFSZ, SIG_IGN);
  try {
    const staddle::cli::Words words(argv + (argc > 0 ? 1 : 0), argv + argc);
    return static_cast<int>(staddle::cli::run_program(words));
  } catch (const std::bad_alloc&) {
    staddle::cli::write_error_line("staddle: there is not enough memory for this");
    return static_cast<int>(staddle::cli::ExitCode::fault);
  } catch (const std::exception& error) {
    return ask_to_report(error.what());
  } catch (...) {
    return ask_to_report("unknown");
  }
}
