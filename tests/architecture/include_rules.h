// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace staddle::architecture {

// The rows of src/cmake/layers.cmake.
struct OutsideHeader {
  std::string beginning;           // of the name between < and >
  std::vector<std::string> homes;  // "*": every folder above the lowest level
};
struct Layers {
  std::vector<std::vector<std::string>> levels;  // lowest first
  std::vector<std::pair<std::string, std::string>> forbidden;
  std::vector<OutsideHeader> outside;
};

// One per line: "level a b", "forbidden a b", "outside glpk.h lp".
Layers parse_layers(const std::string& text);

struct SourceFile {
  std::string path;  // "src/growth/crown.cpp", "include/staddle/growth/crown.h"
  std::string content;
};

// Every #include that the layers do not allow, as "PATH: WHY".
std::vector<std::string> broken_rules(const Layers& layers, const SourceFile& file);

// Every ring of headers that include one another, as "A -> B -> A".
std::vector<std::string> rings(const std::vector<SourceFile>& files);

}  // namespace staddle::architecture
