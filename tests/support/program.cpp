// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/program.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <system_error>

#include "support/files.h"

extern char** environ;

namespace staddle::support {
namespace {

// Standard streams go through files, so that neither side can wait for the other.
class Redirections {
 public:
  Redirections() { posix_spawn_file_actions_init(&actions_); }
  ~Redirections() { posix_spawn_file_actions_destroy(&actions_); }
  Redirections(const Redirections&) = delete;
  Redirections& operator=(const Redirections&) = delete;

  void read(int stream, const std::string& path) { open(stream, path, O_RDONLY); }
  void write(int stream, const std::string& path) {
    open(stream, path, O_WRONLY | O_CREAT | O_TRUNC);
  }
  const posix_spawn_file_actions_t* get() const { return &actions_; }

 private:
  void open(int stream, const std::string& path, int flags) {
    posix_spawn_file_actions_addopen(&actions_, stream, path.c_str(), flags, 0600);
  }
  posix_spawn_file_actions_t actions_;
};

int wait_for(pid_t child) {
  int status = 0;
  while (waitpid(child, &status, 0) < 0) {
    if (errno != EINTR) throw std::system_error(errno, std::generic_category(), "waitpid");
  }
  return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
}

}  // namespace

Run run_program(const std::string& program, const std::vector<std::string>& arguments,
                const std::string& input) {
  const TemporaryDirectory directory;
  const std::string in = directory.write("in", input);
  const std::string out = directory.path("out");
  const std::string err = directory.path("err");
  Redirections redirections;
  redirections.read(STDIN_FILENO, in);
  redirections.write(STDOUT_FILENO, out);
  redirections.write(STDERR_FILENO, err);

  std::vector<std::string> words{program};
  words.insert(words.end(), arguments.begin(), arguments.end());
  std::vector<char*> argv;
  for (std::string& word : words) argv.push_back(word.data());
  argv.push_back(nullptr);

  pid_t child = 0;
  const int failure =
      posix_spawnp(&child, program.c_str(), redirections.get(), nullptr, argv.data(), environ);
  if (failure != 0) {
    throw std::system_error(failure, std::generic_category(), "cannot start " + program);
  }
  Run run;
  run.exit_code = wait_for(child);
  run.out = read_file(out);
  run.err = read_file(err);
  return run;
}

Run run_staddle(const std::vector<std::string>& arguments, const std::string& input) {
  return run_program(STADDLE_BINARY, arguments, input);
}

bool program_exists(const std::string& program) {
  const char* variable = std::getenv("PATH");
  const std::string path = variable == nullptr ? "" : variable;
  for (std::size_t begin = 0; begin < path.size();) {
    const std::size_t end = std::min(path.find(':', begin), path.size());
    const std::string candidate = path.substr(begin, end - begin) + "/" + program;
    if (access(candidate.c_str(), X_OK) == 0) return true;
    begin = end + 1;
  }
  return false;
}

}  // namespace staddle::support
