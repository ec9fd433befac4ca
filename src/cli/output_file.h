// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

namespace staddle::cli {

// Writes the text, all of it or nothing: to a file beside the target that takes its name
// only when it is whole and safe on the disk. Onto something that is no regular file (a
// device, a pipe), and to standard output (no path, or "-"), it writes directly.
// Returns what went wrong, naming the target; nothing when all went well.
std::optional<std::string> write_output(const std::string& text,
                                        const std::optional<std::string>& path);

// The same for a text that comes in pieces. Where it is given up before finish(), a file
// keeps what it had; what went to standard output or a device stays there.
class OutputStream {
 public:
  explicit OutputStream(const std::optional<std::string>& path);
  ~OutputStream();
  OutputStream(const OutputStream&) = delete;
  OutputStream& operator=(const OutputStream&) = delete;

  // Both return whether all went well so far; failure() then says what did not.
  bool write(const std::string& text);
  bool finish();
  const std::optional<std::string>& failure() const { return failure_; }
  // Whether a temporary file holds the text until finish().
  bool replaces_file() const { return !temporary_.empty(); }

 private:
  void fail();
  void open_beside(const std::string& target);

  std::string shown_;      // the target, for messages
  std::string target_;     // takes its name at the end; empty: written directly
  std::string temporary_;  // that holds the text until then
  int descriptor_ = -1;
  bool close_ = false;
  std::optional<std::string> failure_;
};

// Writes one line to standard error, whatever it holds: control characters are shown as
// \xNN, so that a message stays one line and does nothing to the terminal.
void write_error_line(const std::string& line);

// Whether both name the same file that exists.
bool same_file(const std::string& a, const std::string& b);

}  // namespace staddle::cli
