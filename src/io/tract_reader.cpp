// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/tract_reader.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <tuple>

#include "io/number_text.h"
#include "io/scenario_blocks.h"
#include "io/shared_scenario.h"
#include "io/tract_options.h"
#include "io/tract_plan.h"
#include "io/tract_stands.h"

namespace staddle {
namespace {

class TractReader {
 public:
  TractReader(json::Node& tree, const FileLoader& load, FaultList& faults)
      : tree_(tree), load_(load), faults_(faults), root_(&tree, "") {}

  TractFile read() {
    TractStands stands(tree_, load_, faults_);
    FaultList found(faults_.file());
    check_values(tree_, tract_options(), found);
    for (const auto& [order, fault] : found.placed()) stands.report(order, fault);
    tract_.assumed = fill_defaults(tree_, tract_plan_options(), {});
    read_head();
    read_stands(stands);
    stands.finish();
    report_shared();
    gather_questions();
    read_plan();
    return std::move(tract_);
  }

 private:
  void read_head() {
    tract_.file = faults_.file();
    tract_.title = root_["title"].text_or_empty();
    tract_.purpose = root_["purpose"].text_or_empty();
    tract_.owner = root_["owner"].text_or_empty();
    tract_.prepared_by = root_["prepared_by"].text_or_empty();
    if (const auto year = root_["calendar_year"].whole()) {
      tract_.present_year = calendar_year(*year);
    }
  }

  // ---- stands

  void read_stands(TractStands& stands) {
    std::map<std::string, std::size_t> places;  // by name
    for (std::size_t i = 0; i < stands.size(); ++i) {
      const json::Node& entry = stands.entry(i);
      if (!entry.usable || entry.kind != kinds::object) {
        all_sound_ = false;
        continue;
      }
      read_stand(stands, i);
      const json::Node* name = entry.find("name");
      if (name == nullptr || !name->usable) continue;
      const auto [first, is_new] = places.emplace(name->text, i);
      if (is_new) continue;
      stands.report_in(i, name->order,
                       {FaultCode::repeated_key, faults_.file(), "/name",
                        quoted_text(name->text) + " is the name of an earlier stand too", ""});
    }
  }

  void read_stand(TractStands& stands, std::size_t i) {
    const json::Node& entry = stands.entry(i);
    json::Node tree = scenario_tree_of(tree_, entry);
    FaultList found(faults_.file());
    TractFileStand stand;
    if (const json::Node* group = entry.find("group")) stand.group = group->text;
    stand.scenario = read_scenario_tree(tree, load_, found);
    if (std::holds_alternative<std::vector<TabledRegime>>(stand.scenario.stand.source)) {
      found.add(entry.order, FaultCode::contradiction, "/stand/yield_tables",
                "tables of fixed regimes leave nothing to schedule",
                "give a model or one yield_table");
    }
    for (const auto& [order, fault] : found.placed()) {
      const Origin origin = origin_of(fault.place, tree_, entry);
      Fault moved = fault;
      moved.place = origin.pointer;
      if (fault.file != faults_.file()) {
        shared_faults_[{fault.file, fault.place, fault.text}].add(order, fault);
      } else if (origin.in_entry) {
        stands.report_in(i, order, moved);
      } else {
        shared_faults_[{fault.file, moved.place, fault.text}].add(order, moved);
      }
    }
    take_assumptions(stand.scenario.assumed, entry, i);
    for (const std::string& question : stand.scenario.questions) {
      askers_[question].push_back(stand.scenario.title);
    }
    ++read_;
    if (found.empty()) {
      tract_.stands.push_back(std::move(stand));
    } else {
      all_sound_ = false;
    }
  }

  void take_assumptions(const std::vector<Assumption>& assumed, const json::Node& entry,
                        std::size_t i) {
    for (Assumption assumption : assumed) {
      const Origin origin = origin_of(assumption.pointer, tree_, entry);
      const std::string block = origin.pointer.substr(0, origin.pointer.find('/', 1));
      const bool shared =
          std::find(shared_blocks.begin(), shared_blocks.end(), block) != shared_blocks.end();
      const std::tuple key{assumption.pointer, assumption.value_json, assumption.why};
      const bool told = shared && assumed_.contains(key);
      if (told || (!shared && !origin.in_entry)) continue;
      if (origin.in_entry) {
        assumption.pointer = json::pointer_to("/stands", i) + origin.pointer;
      } else {
        assumed_.insert(key);
      }
      tract_.assumed.push_back(std::move(assumption));
    }
  }

  // A price that belongs to products of some stands alone is none too many.
  void report_shared() {
    for (const auto& [what, shared] : shared_faults_) {
      const bool known_to_some = shared.fault.code == FaultCode::unknown_name &&
                                 shared.fault.place.starts_with("/economics/") &&
                                 shared.count < read_;
      if (known_to_some) continue;
      if (shared.fault.file != faults_.file()) {
        faults_.add_all(shared.order, {shared.fault});
      } else {
        faults_.add(shared.order, shared.fault.code, shared.fault.place, shared.fault.text,
                    shared.fault.hint);
      }
    }
  }

  void gather_questions() {
    for (const auto& [question, names] : askers_) {
      if (names.size() == read_ && read_ > 1) {
        tract_.questions.push_back(question);
        continue;
      }
      for (const std::string& name : names) tract_.questions.push_back(name + ": " + question);
    }
  }

  // ---- the plan

  void read_plan() {
    const Place plan = root_["plan"];
    tract_.plan = read_tract_plan(plan, faults_);
    const Place of_groups = plan["group_final_harvest_acres_max_per_period"];
    const bool has_groups = std::any_of(tract_.stands.begin(), tract_.stands.end(),
                                        [](const auto& stand) { return !stand.group.empty(); });
    if (of_groups.given() && all_sound_ && !has_groups) {
      faults_.add(of_groups.order(), FaultCode::contradiction, of_groups.pointer(),
                  "no stand names a group, so this limits nothing");
    }
    if (plan["years"].whole() && plan["period_yr"].whole()) check_plan();
  }

  // What the problem says of limits that do not fit each other.
  void check_plan() {
    for (const Fault& fault : faults_of(make_tract_problem(tract_))) {
      const bool about_products = fault.code == FaultCode::unknown_name;
      if (!fault.place.starts_with("/plan") || (about_products && !all_sound_)) continue;
      faults_.add(order_at(fault.place), fault.code, fault.place, fault.text, fault.hint);
    }
  }

  int order_at(const std::string& pointer) const {
    Place at = root_;
    std::string_view rest = std::string_view(pointer).substr(1);
    while (!rest.empty()) {
      const std::string_view step = rest.substr(0, rest.find('/'));
      rest.remove_prefix(std::min(rest.size(), step.size() + 1));
      const auto index = parse_number(step);
      at = at.is(kinds::list) && index ? at.item(static_cast<std::size_t>(*index)) : at[step];
    }
    return at.order();
  }

  struct SharedFault {
    std::size_t count = 0;  // stands that found it
    int order = 0;
    Fault fault;
    void add(int at, const Fault& found) {
      if (count++ > 0) return;
      order = at;
      fault = found;
    }
  };

  json::Node& tree_;
  const FileLoader& load_;
  FaultList& faults_;
  const Place root_;
  TractFile tract_;
  std::size_t read_ = 0;
  bool all_sound_ = true;
  std::map<std::tuple<std::string, std::string, std::string>, SharedFault> shared_faults_;
  std::set<std::tuple<std::string, std::string, std::string>> assumed_;
  std::map<std::string, std::vector<std::string>> askers_;  // names of stands, by question
};

}  // namespace

Result<TractFile> read_tract(const std::string& text, const std::string& file,
                             const FileLoader& load) {
  FaultList faults(file);
  auto tree = json::parse(text, faults);
  if (!tree) return faults.in_file_order();
  TractFile tract = TractReader(*tree, load, faults).read();
  if (!faults.empty()) return faults.in_file_order();
  return tract;
}

bool says_it_is_a_tract(const std::string& text) {
  FaultList faults("");
  const auto tree = json::parse(text, faults);
  const json::Node* format = tree ? tree->find("format") : nullptr;
  return format != nullptr && format->text.starts_with("staddle-tract/");
}

}  // namespace staddle
