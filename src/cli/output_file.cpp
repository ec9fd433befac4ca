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
#include <utility>

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

// The mode that the new file takes: that of the file it replaces, else what a plain new
// file would have.
mode_t mode_for(const std::string& target) {
  struct stat status {};
  if (::stat(target.c_str(), &status) == 0) return status.st_mode & 07777;
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return 0666 & ~mask;
}

}  // namespace

OutputStream::OutputStream(const std::optional<std::string>& path)
    : shown_(!path || *path == "-" ? "standard output" : *path) {
  if (!path || *path == "-") {
    descriptor_ = STDOUT_FILENO;
    return;
  }
  struct stat status {};
  if (::stat(path->c_str(), &status) != 0) {
    open_beside(*path);
  } else if (!S_ISREG(status.st_mode)) {
    descriptor_ = ::open(path->c_str(), O_WRONLY | O_CLOEXEC);
    close_ = true;
  } else if (::access(path->c_str(), W_OK) == 0) {
    // Through a symbolic link the file it leads to is replaced, not the link.
    std::error_code error;
    const std::filesystem::path leads_to = std::filesystem::canonical(*path, error);
    open_beside(error ? *path : leads_to.string());
  }
  if (descriptor_ < 0) fail();
}

OutputStream::~OutputStream() {
  if (close_ && descriptor_ >= 0) ::close(descriptor_);
  if (!temporary_.empty()) ::unlink(temporary_.c_str());
}

void OutputStream::open_beside(const std::string& target) {
  const std::filesystem::path folder = std::filesystem::path(target).parent_path();
  target_ = target;
  std::string name = (folder / ".staddle-XXXXXX").string();
  descriptor_ = ::mkstemp(name.data());
  close_ = true;
  if (descriptor_ >= 0) temporary_ = name;
}

void OutputStream::fail() {
  if (!failure_) failure_ = fmt::format("{}: cannot be written: {}", shown_, std::strerror(errno));
}

bool OutputStream::write(const std::string& text) {
  if (!failure_ && !write_all(descriptor_, text)) fail();
  return !failure_;
}

bool OutputStream::finish() {
  if (failure_) return false;
  const bool to_file = !temporary_.empty();
  if (to_file && (::fchmod(descriptor_, mode_for(target_)) != 0 || ::fsync(descriptor_) != 0)) {
    fail();
  }
  if (close_ && ::close(std::exchange(descriptor_, -1)) != 0) fail();
  if (!to_file || failure_) return !failure_;
  if (::rename(temporary_.c_str(), target_.c_str()) != 0) {
    fail();
    return false;
  }
  temporary_.clear();
  return true;
}

std::optional<std::string> write_output(const std::string& text,
                                        const std::optional<std::string>& path) {
  std::optional<SignalsHeld> held(std::in_place);
  OutputStream output(path);
  if (!output.replaces_file()) held.reset();
  if (output.write(text)) output.finish();
  return output.failure();
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
