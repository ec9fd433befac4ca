// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/output_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <signal.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <system_error>

namespace staddle::cli {
namespace {

// While a temporary file exists the signals that end the program wait, so that none is
// ever left behind.
class SignalsHeld {
 public:
  SignalsHeld() {
    sigset_t held;
    sigemptyset(&held);
    for (const int signal : {SIGINT, SIGTERM, SIGHUP}) sigaddset(&held, signal);
    sigprocmask(SIG_BLOCK, &held, &before_);
  }
  ~SignalsHeld() { sigprocmask(SIG_SETMASK, &before_, nullptr); }
  SignalsHeld(const SignalsHeld&) = delete;
  SignalsHeld& operator=(const SignalsHeld&) = delete;

 private:
  sigset_t before_{};
};

bool write_all(int descriptor, const std::string& text) {
  std::size_t written = 0;
  while (written < text.size()) {
    const ssize_t step = ::write(descriptor, text.data() + written, text.size() - written);
    if (step < 0 && errno == EINTR) continue;
    if (step < 0) return false;
    written += static_cast<std::size_t>(step);
  }
  return true;
}

std::optional<std::string> failure(const std::string& target) {
  return fmt::format("{}: cannot be written: {}", target, std::strerror(errno));
}

std::optional<std::string> write_directly(const std::string& text, const std::string& path) {
  const int descriptor = ::open(path.c_str(), O_WRONLY | O_CLOEXEC);
  if (descriptor < 0) return failure(path);
  const bool written = write_all(descriptor, text);
  const int reason = errno;
  const bool closed = ::close(descriptor) == 0;
  if (written && closed) return std::nullopt;
  if (!written) errno = reason;
  return failure(path);
}

// The mode that the new file takes: that of the file it replaces, else what a plain new
// file would have.
mode_t mode_for(const std::string& target) {
  struct stat status {};
  if (::stat(target.c_str(), &status) == 0) return status.st_mode & 07777;
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return 0666 & ~mask;
}

std::optional<std::string> replace(const std::string& text, const std::string& target) {
  const std::filesystem::path folder = std::filesystem::path(target).parent_path();
  std::string temporary = (folder / ".staddle-XXXXXX").string();
  const SignalsHeld held;
  const int descriptor = ::mkstemp(temporary.data());
  if (descriptor < 0) return failure(target);
  bool whole = write_all(descriptor, text) && ::fchmod(descriptor, mode_for(target)) == 0 &&
               ::fsync(descriptor) == 0;
  int reason = errno;
  if (::close(descriptor) != 0 && whole) {
    whole = false;
    reason = errno;
  }
  if (whole && ::rename(temporary.c_str(), target.c_str()) == 0) return std::nullopt;
  if (whole) reason = errno;
  ::unlink(temporary.c_str());
  errno = reason;
  return failure(target);
}

}  // namespace

std::optional<std::string> write_output(const std::string& text,
                                        const std::optional<std::string>& path) {
  if (!path || *path == "-") {
    if (write_all(STDOUT_FILENO, text)) return std::nullopt;
    return failure("standard output");
  }
  struct stat status {};
  if (::stat(path->c_str(), &status) != 0) return replace(text, *path);
  if (!S_ISREG(status.st_mode)) return write_directly(text, *path);
  if (::access(path->c_str(), W_OK) != 0) return failure(*path);
  // Through a symbolic link the file it leads to is replaced, not the link.
  std::error_code error;
  const std::filesystem::path target = std::filesystem::canonical(*path, error);
  return replace(text, error ? *path : target.string());
}

void write_error_line(const std::string& line) {
  std::string shown;
  for (const char c : line) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte == 0x7F) {
      shown += fmt::format("\\x{:02x}", byte);
    } else {
      shown += c;
    }
  }
  shown += '\n';
  // Where even standard error is gone, nobody can be told.
  if (!write_all(STDERR_FILENO, shown)) return;
}

bool same_file(const std::string& a, const std::string& b) {
  std::error_code error;
  return std::filesystem::equivalent(a, b, error) && !error;
}

}  // namespace staddle::cli
