// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/tract_options.h"

#include <algorithm>
#include <array>
#include <deque>
#include <string>
#include <vector>

#include "io/scenario_blocks.h"

namespace staddle {
namespace {

constexpr std::array<std::string_view, 5> shared_head = {"/title", "/purpose", "/owner",
                                                         "/prepared_by", "/calendar_year"};

constexpr Option own_head = {.pointer = "/format",
                             .meaning = "the format of the file and its version",
                             .allowed = kinds::text,
                             .choices = "staddle-tract/1",
                             .required = true};
constexpr Option own_stands[] = {
    {.pointer = "/stands_csv", .meaning = "CSV file of the stands", .allowed = kinds::text},
    {.pointer = "/stands",
     .meaning = "the stands, where no CSV file has them",
     .allowed = kinds::list,
     .least_items = 1},
    {.pointer = "/stands/#", .meaning = "a stand", .allowed = kinds::object},
    {.pointer = "/stands/#/name",
     .meaning = "its name, of no other stand of the tract",
     .allowed = kinds::text,
     .required = true},
    {.pointer = "/stands/#/group",
     .meaning = "the stands beside which it lies",
     .allowed = kinds::text},
};

// Whether the pointer is this block or lies in it.
bool is_of(std::string_view pointer, std::string_view block) {
  return pointer.starts_with(block) &&
         (pointer.size() == block.size() || pointer[block.size()] == '/');
}

// The options of a tract, most of them those of a scenario at another place.
class OptionMaker {
 public:
  std::vector<Option> make() {
    options_.push_back(own_head);
    for (const std::string_view pointer : shared_head) options_.push_back(scenario_option(pointer));
    for (const std::string_view block : shared_blocks) {
      for (const Option& option : scenario_options()) {
        if (is_of(option.pointer, block)) options_.push_back(option);
      }
    }
    options_.insert(options_.end(), std::begin(own_stands), std::end(own_stands));
    of_stand(scenario_option("/acres"));
    for (const Option& option : scenario_options()) {
      if (is_of(option.pointer, "/stand")) of_stand(option);
    }
    for (const std::string_view block : shared_blocks) {
      if (block == "/products") continue;
      for (const Option& option : scenario_options()) {
        if (is_of(option.pointer, block)) override_of(option);
      }
    }
    const auto plan = tract_plan_options();
    options_.insert(options_.end(), plan.begin(), plan.end());
    return std::move(options_);
  }

 private:
  Option& of_stand(const Option& option) {
    // Lives as long as the program, like the options themselves.
    static std::deque<std::string> pointers;
    Option& moved = options_.emplace_back(option);
    moved.pointer = pointers.emplace_back("/stands/#" + std::string(option.pointer));
    return moved;
  }

  // What is not named here is as the tract has it: nothing is required but inside a list
  // or a price, and no default applies but inside a list.
  void override_of(const Option& option) {
    Option& over = of_stand(option);
    const bool in_list = option.pointer.find("/#") != std::string_view::npos;
    const auto depth = std::count(option.pointer.begin(), option.pointer.end(), '/');
    if (!in_list) {
      over.default_json = "";
      over.implied = false;
    }
    if (depth <= 2) over.required = false;
  }

  std::vector<Option> options_;
};

}  // namespace

std::span<const Option> tract_options() {
  static const std::vector<Option> all = OptionMaker().make();
  return all;
}

}  // namespace staddle
