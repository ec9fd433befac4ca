// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string_view>

namespace staddle {

// A file of models/ that the program carries inside itself.
struct EmbeddedFile {
  std::string_view name;     // relative to models/: "equations/NAME.json"
  std::string_view content;  // byte for byte
};

// All of them, sorted by name. The bytes live as long as the program.
std::span<const EmbeddedFile> embedded_files();

}  // namespace staddle
