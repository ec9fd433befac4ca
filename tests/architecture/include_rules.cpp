// SPDX-License-Identifier: GPL-3.0-or-later
#include "architecture/include_rules.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <sstream>
#include <stdexcept>

namespace staddle::architecture {
namespace {

struct Include {
  std::string name;
  bool quoted = false;
};

// A line "#include NAME" with any spacing; NAME in quotes or angle brackets.
std::optional<Include> parse_include(const std::string& line) {
  std::size_t at = line.find_first_not_of(" \t");
  if (at == std::string::npos || line[at] != '#') return std::nullopt;
  at = line.find_first_not_of(" \t", at + 1);
  if (at == std::string::npos || line.compare(at, 7, "include") != 0) return std::nullopt;
  at = line.find_first_of("\"<", at + 7);
  if (at == std::string::npos) return std::nullopt;
  const bool quoted = line[at] == '"';
  const std::size_t end = line.find(quoted ? '"' : '>', at + 1);
  if (end == std::string::npos) return std::nullopt;
  return Include{line.substr(at + 1, end - at - 1), quoted};
}

std::vector<Include> includes_of(const SourceFile& file) {
  std::vector<Include> includes;
  std::istringstream lines(file.content);
  for (std::string line; std::getline(lines, line);) {
    if (const auto include = parse_include(line)) includes.push_back(*include);
  }
  return includes;
}

const std::string public_root = "include/staddle/";
const std::string private_root = "src/";

bool is_public(const std::string& path) { return path.starts_with(public_root); }

// "src/growth/crown.cpp" -> "growth"; "" for a file that lies in no folder.
std::string folder_of(const std::string& path) {
  const std::string& root = is_public(path) ? public_root : private_root;
  if (!path.starts_with(root)) return "";
  const std::size_t end = path.find('/', root.size());
  return end == std::string::npos ? "" : path.substr(root.size(), end - root.size());
}

// Where a quoted include points, seen from `from`.
std::string target_of(const std::string& from, const std::string& name) {
  if (name.starts_with("staddle/")) return "include/" + name;
  if (name.find('/') == std::string::npos) return from.substr(0, from.rfind('/') + 1) + name;
  return private_root + name;
}

std::optional<std::size_t> level_of(const Layers& layers, const std::string& folder) {
  for (std::size_t level = 0; level < layers.levels.size(); ++level) {
    const auto& folders = layers.levels[level];
    if (std::find(folders.begin(), folders.end(), folder) != folders.end()) return level;
  }
  return std::nullopt;
}

// Why `file` may not include the header `name` of this project; "" where it may.
std::string fault_inside(const Layers& layers, const SourceFile& file, const std::string& name) {
  const std::string own = folder_of(file.path);
  const std::string target = target_of(file.path, name);
  const std::string other = folder_of(target);
  const auto own_level = level_of(layers, own);
  const auto other_level = level_of(layers, other);
  if (!other_level) return "lies in no folder of the layers";
  if (!is_public(target) && is_public(file.path)) return "is private, the file is public";
  if (other == own) return "";
  if (*other_level >= *own_level) return own + " may not use " + other;
  const auto& forbidden = layers.forbidden;
  if (std::find(forbidden.begin(), forbidden.end(), std::pair(own, other)) != forbidden.end()) {
    return own + " may not use " + other;
  }
  return "";
}

// The row for a header of another library, however it is quoted; null for none.
const OutsideHeader* row_of(const Layers& layers, const std::string& name) {
  for (const OutsideHeader& row : layers.outside) {
    if (name.starts_with(row.beginning)) return &row;
  }
  return nullptr;
}

// The same as fault_inside for a header of another library or of the language.
std::string fault_outside(const Layers& layers, const SourceFile& file, const std::string& name) {
  const std::string own = folder_of(file.path);
  if (const OutsideHeader* row = row_of(layers, name)) {
    const bool everywhere = row->homes == std::vector<std::string>{"*"};
    const bool named = std::find(row->homes.begin(), row->homes.end(), own) != row->homes.end();
    const bool at_home = everywhere ? level_of(layers, own) != std::size_t{0} : named;
    if (!at_home) return own + " is not its home";
    if (is_public(file.path)) return "no public header may show another library";
    return "";
  }
  const bool standard = name.find_first_of("./") == std::string::npos;
  return standard ? "" : "belongs to no library that the layers know";
}

}  // namespace

Layers parse_layers(const std::string& text) {
  Layers layers;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    std::istringstream words_of_line(line);
    std::vector<std::string> words;
    for (std::string word; words_of_line >> word;) words.push_back(word);
    if (words.size() < 2) throw std::runtime_error("not a row of the layers: " + line);
    const std::vector<std::string> rest(words.begin() + 1, words.end());
    if (words[0] == "level") {
      layers.levels.push_back(rest);
    } else if (words[0] == "forbidden" && rest.size() == 2) {
      layers.forbidden.emplace_back(rest[0], rest[1]);
    } else if (words[0] == "outside" && rest.size() >= 2) {
      layers.outside.push_back({rest[0], {rest.begin() + 1, rest.end()}});
    } else {
      throw std::runtime_error("not a row of the layers: " + line);
    }
  }
  return layers;
}

std::vector<std::string> broken_rules(const Layers& layers, const SourceFile& file) {
  if (!level_of(layers, folder_of(file.path))) {
    return {file.path + ": lies in no folder of the layers"};
  }
  std::vector<std::string> broken;
  for (const Include& include : includes_of(file)) {
    const bool inside = include.quoted && row_of(layers, include.name) == nullptr;
    const std::string fault = inside ? fault_inside(layers, file, include.name)
                                     : fault_outside(layers, file, include.name);
    if (!fault.empty()) broken.push_back(file.path + ": " + include.name + " " + fault);
  }
  return broken;
}

namespace {

// Depth-first walk; a header met while it is still open closes a ring.
class RingFinder {
 public:
  explicit RingFinder(const std::vector<SourceFile>& files) {
    for (const SourceFile& file : files) {
      auto& targets = edges_[file.path];
      for (const Include& include : includes_of(file)) {
        if (include.quoted) targets.push_back(target_of(file.path, include.name));
      }
    }
  }

  std::vector<std::string> find() {
    for (const auto& [path, targets] : edges_) visit(path);
    return rings_;
  }

 private:
  void visit(const std::string& path) {
    const auto open_at = std::find(open_.begin(), open_.end(), path);
    if (open_at != open_.end()) {
      std::string ring;
      for (auto at = open_at; at != open_.end(); ++at) ring += *at + " -> ";
      rings_.push_back(ring + path);
      return;
    }
    if (!done_.insert(path).second) return;
    open_.push_back(path);
    const auto targets = edges_.find(path);
    if (targets != edges_.end()) {
      for (const std::string& target : targets->second) visit(target);
    }
    open_.pop_back();
  }

  std::map<std::string, std::vector<std::string>> edges_;
  std::set<std::string> done_;
  std::vector<std::string> open_;
  std::vector<std::string> rings_;
};

}  // namespace

std::vector<std::string> rings(const std::vector<SourceFile>& files) {
  return RingFinder(files).find();
}

}  // namespace staddle::architecture
