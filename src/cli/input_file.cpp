// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/input_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>

namespace staddle::cli {
namespace {

// Closes what it opened; standard input stays open.
class Descriptor {
 public:
  explicit Descriptor(const std::string& path)
      : number_(path == "-" ? STDIN_FILENO : ::open(path.c_str(), O_RDONLY | O_CLOEXEC)) {}
  ~Descriptor() {
    if (number_ > STDIN_FILENO) ::close(number_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  int number() const { return number_; }

 private:
  int number_;
};

Faults unreadable(const std::string& path, const std::string& why) {
  return {{FaultCode::unreadable, shown_name(path), "", why, ""}};
}

Faults cannot_read(const std::string& path) {
  return unreadable(path, fmt::format("cannot be read: {}", std::strerror(errno)));
}

}  // namespace

std::string shown_name(const std::string& path) {
  if (path.empty()) return "a file without a name";
  return path == "-" ? "standard input" : path;
}

Result<std::string> read_input(const std::string& path) {
  const Descriptor file(path);
  if (file.number() < 0) return cannot_read(path);
  struct stat status {};
  if (::fstat(file.number(), &status) != 0) return cannot_read(path);
  if (S_ISDIR(status.st_mode)) return unreadable(path, "is a directory, not a file");
  std::string content;
  std::array<char, 1u << 16> piece{};
  for (;;) {
    const ssize_t got = ::read(file.number(), piece.data(), piece.size());
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return cannot_read(path);
    if (got == 0) return content;
    content.append(piece.data(), static_cast<std::size_t>(got));
    if (content.size() > largest_input_bytes) {
      return unreadable(path, fmt::format("is larger than {} megabytes, too large for an input",
                                          largest_input_bytes >> 20));
    }
  }
}

FileLoader loader_beside(const std::string& scenario_path) {
  const std::filesystem::path folder =
      scenario_path == "-" ? "" : std::filesystem::path(scenario_path).parent_path();
  return [folder](const std::string& name) { return read_input((folder / name).string()); };
}

Result<Scenario> load_scenario(const std::string& path) {
  const Result<std::string> text = read_input(path);
  if (!text) return text.error();
  return read_scenario(*text, shown_name(path), loader_beside(path));
}

Result<TractFile> load_tract(const std::string& path) {
  const Result<std::string> text = read_input(path);
  if (!text) return text.error();
  return read_tract(*text, shown_name(path), loader_beside(path));
}

}  // namespace staddle::cli
