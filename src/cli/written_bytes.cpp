// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/written_bytes.h"

#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <system_error>

namespace staddle::cli {
namespace {

Faults failed(const std::string& what) {
  return {{FaultCode::unreadable, "", "", "a temporary file cannot be written: " + what, ""}};
}

// Removed when the guard goes.
class TemporaryFile {
 public:
  TemporaryFile() {
    std::error_code error;
    const std::filesystem::path folder = std::filesystem::temp_directory_path(error);
    path_ = ((error ? std::filesystem::path(".") : folder) / "staddle-XXXXXX").string();
    const int descriptor = ::mkstemp(path_.data());
    if (descriptor < 0) {
      failure_ = std::strerror(errno);
      return;
    }
    ::close(descriptor);
  }
  ~TemporaryFile() {
    if (failure_.empty()) ::unlink(path_.c_str());
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;

  const std::string& path() const { return path_; }
  const std::string& failure() const { return failure_; }

 private:
  std::string path_, failure_;
};

}  // namespace

Result<std::string> written_bytes(
    const std::function<std::optional<std::string>(const std::string& path)>& writer) {
  const TemporaryFile file;
  if (!file.failure().empty()) return failed(file.failure());
  if (const auto failure = writer(file.path())) return failed(*failure);
  std::ifstream stream(file.path(), std::ios::binary);
  std::string bytes((std::istreambuf_iterator<char>(stream)), std::istreambuf_iterator<char>());
  if (!stream || bytes.empty()) return failed("it cannot be read again");
  return bytes;
}

}  // namespace staddle::cli
