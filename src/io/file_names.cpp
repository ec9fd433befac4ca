// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/file_names.h"

#include <algorithm>

namespace staddle::json {
namespace {

// The keys under which a scenario names another file.
constexpr const char* file_keys[] = {"yield_table", "prices_csv", "fit_csv"};
// Objects that name one under "file".
constexpr const char* file_holders[] = {"cruise"};

template <std::size_t Count>
bool is_one_of(const std::string& key, const char* const (&known)[Count]) {
  return std::find(std::begin(known), std::end(known), key) != std::end(known);
}

void relocate_name(Value& name, const std::function<std::string(const std::string&)>& relocate) {
  if (name.is_string()) name = relocate(name.get<std::string>());
}

}  // namespace

void relocate_files(Value& value, const std::function<std::string(const std::string&)>& relocate) {
  for (auto& item : value.items()) {
    const bool keyed = value.is_object();
    if (keyed && is_one_of(item.key(), file_keys)) relocate_name(item.value(), relocate);
    if (keyed && is_one_of(item.key(), file_holders) && item.value().is_object() &&
        item.value().contains("file")) {
      relocate_name(item.value()["file"], relocate);
    }
    if (item.value().is_structured()) relocate_files(item.value(), relocate);
  }
}

}  // namespace staddle::json
