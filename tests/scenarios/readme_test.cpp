// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <regex>
#include <sstream>

#include "io/option_check.h"
#include "staddle/signs/cautions.h"
#include "support/files.h"
#include "support/program.h"
#include "support/text.h"

// README.md shows real output, a real file and the real keys, or these tests fail. After a
// change that is meant, STADDLE_REFRESH=1 (see golden_test.cpp) writes them anew.
//   ```console blocks begin with "$ build/staddle ..." and hold what it prints; "[...]" at
//   the end means that it prints more, and a refresh keeps the number of lines shown.
//   <!-- file: PATH --> stands before a fenced block that holds that file.
//   <!-- keys --> stands before the table of keys of a scenario.
namespace staddle {
namespace {

using Lines = std::vector<std::string>;
using support::lines_of;

constexpr const char* more = "[...]";
constexpr const char* prompt = "$ build/staddle ";

std::string text_of(const Lines& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return text;
}

// README.md, and what stands in its fenced blocks.
class Readme {
 public:
  Readme() : lines_(lines_of(support::read_file(path()))) {}

  // The lines between the fence at `open` and its end.
  Lines block(std::size_t open) const {
    return {lines_.begin() + static_cast<std::ptrdiff_t>(open) + 1,
            std::find(lines_.begin() + static_cast<std::ptrdiff_t>(open) + 1, lines_.end(), "```")};
  }
  void put(std::size_t first, std::size_t count, const Lines& lines) {
    const auto at = lines_.begin() + static_cast<std::ptrdiff_t>(first);
    lines_.insert(lines_.erase(at, at + static_cast<std::ptrdiff_t>(count)), lines.begin(),
                  lines.end());
    support::write_file(path(), text_of(lines_));
  }
  const Lines& lines() const { return lines_; }

 private:
  static std::string path() { return support::in_source_tree("README.md"); }
  Lines lines_;
};

bool refreshing() { return std::getenv("STADDLE_REFRESH") != nullptr; }

Lines words_of(const std::string& command) {
  std::istringstream stream(command.substr(std::string(prompt).size()));
  Lines words;
  for (std::string word; stream >> word;) {
    words.push_back(word.starts_with("scenarios/") ? support::in_source_tree(word) : word);
  }
  return words;
}

// The first lines of an answer, and the mark that more follow.
Lines first_lines(const std::string& output, std::size_t count) {
  Lines shown = lines_of(output);
  REQUIRE(shown.size() > count);
  shown.resize(count);
  shown.push_back(more);
  return shown;
}

TEST_CASE("every command shown in the readme prints what is shown") {
  Readme readme;
  std::size_t found = 0;
  for (std::size_t i = 0; i < readme.lines().size(); ++i) {
    if (readme.lines()[i] != "```console") continue;
    ++found;
    Lines shown = readme.block(i);
    REQUIRE_FALSE(shown.empty());
    const std::string command = shown.front();
    CAPTURE(command);
    REQUIRE(command.starts_with(prompt));
    const support::Run run = support::run_staddle(words_of(command));
    REQUIRE(run.exit_code == 0);
    shown.erase(shown.begin());
    const bool cut_short = !shown.empty() && shown.back() == more;
    const Lines printed =
        cut_short ? first_lines(run.out, shown.size() - 1) : lines_of(run.out);
    if (refreshing()) {
      readme.put(i + 2, shown.size(), printed);
      shown = printed;
    }
    CHECK(text_of(shown) == text_of(printed));
  }
  CHECK(found > 0);
}

TEST_CASE("every file shown in the readme is shown as it is") {
  Readme readme;
  std::size_t found = 0;
  for (std::size_t i = 0; i + 1 < readme.lines().size(); ++i) {
    std::smatch name;
    if (!std::regex_match(readme.lines()[i], name, std::regex("<!-- file: (.*) -->"))) continue;
    ++found;
    CAPTURE(readme.lines()[i]);
    REQUIRE(readme.lines()[i + 1].starts_with("```"));
    const Lines content = lines_of(support::read_file(support::in_source_tree(name[1])));
    if (refreshing()) readme.put(i + 2, readme.block(i + 1).size(), content);
    CHECK(text_of(readme.block(i + 1)) == text_of(content));
  }
  CHECK(found > 0);
}

// A key that stands by itself in one of the blocks that every answer reads; the others are
// told in words.
bool is_told(const Option& option) {
  const std::string_view pointer = option.pointer;
  if (pointer.find('#') != pointer.npos || pointer.find('*') != pointer.npos) return false;
  const auto in = [&](std::string_view block) { return pointer.starts_with(block); };
  if (in("/storm/perils") || in("/stand/yield_tables") || in("/stand/cruise")) return false;
  if (option.pointer == "/products" || option.pointer == "/regimes") return false;
  const bool top = std::ranges::count(pointer, '/') == 1;
  const bool core = in("/stand/") || in("/economics/") || in("/decisions/") || in("/storm/");
  const bool prices = pointer == "/economics/stumpage_usd_per_ton";
  return (top || core) && (prices || option.allowed != kinds::object);
}

std::string allowed_values(const Option& option) {
  std::string text = range_text(option);
  std::istringstream choices{std::string(option.choices)};
  for (std::string choice; std::getline(choices, choice, '|');) {
    text += (text.empty() ? "" : ", ") + choice;
  }
  return text;
}

std::string default_of(const Option& option) {
  if (!option.default_json.empty()) return "`" + std::string(option.default_json) + "`";
  if (!option.required) return "";
  // A key of an object within a block is asked for only where that object stands.
  return std::ranges::count(option.pointer, '/') > 2 ? "required with it" : "required";
}

std::string row_of(const Option& option, std::string_view key) {
  return "| `" + std::string(key) + "` | " + std::string(option.meaning) +
         " | " + allowed_values(option) + " | " + default_of(option) + " |";
}

Lines table_of_keys() {
  Lines rows = {"| key | what it means | allowed | default |", "| --- | --- | --- | --- |"};
  for (const Option& option : scenario_options()) {
    if (is_told(option)) rows.push_back(row_of(option, option.pointer.substr(1)));
  }
  return rows;
}

// Holds the rows behind a marker to those expected, or writes them anew.
void check_rows(const std::string& mark, const Lines& rows) {
  Readme readme;
  const auto marker = std::ranges::find(readme.lines(), mark);
  REQUIRE(marker != readme.lines().end());
  const auto first = static_cast<std::size_t>(marker - readme.lines().begin()) + 1;
  const auto rows_shown = [&] {
    Lines rows_there;
    for (std::size_t i = first; readme.lines()[i].starts_with('|'); ++i) {
      rows_there.push_back(readme.lines()[i]);
    }
    return rows_there;
  };
  if (refreshing()) readme.put(first, rows_shown().size(), rows);
  CHECK(text_of(rows_shown()) == text_of(rows));
}

TEST_CASE("the readme tells every key of a scenario with its default") {
  const Lines rows = table_of_keys();
  CHECK(rows.size() > 40);
  check_rows("<!-- keys -->", rows);
}

TEST_CASE("the readme tells every limit of a plan") {
  Lines rows = {"| key of the plan | what it means | allowed | default |",
                "| --- | --- | --- | --- |"};
  constexpr std::string_view block = "/plan/";
  for (const Option& option : tract_options()) {
    if (!option.pointer.starts_with(block) || option.pointer.ends_with("/#")) continue;
    rows.push_back(row_of(option, option.pointer.substr(block.size())));
  }
  CHECK(rows.size() > 15);
  check_rows("<!-- plan keys -->", rows);
}

TEST_CASE("the readme names every scenario and gives every caution") {
  const std::string readme = support::read_file(support::in_source_tree("README.md"));
  for (const std::string& name : support::files_in_source_tree("scenarios/stand", ".json")) {
    CAPTURE(name);
    CHECK(readme.find("`" + name + "`") != std::string::npos);
  }
  // The one on the results begins with "These" in an answer.
  for (const std::string& caution : standing_cautions()) {
    CAPTURE(caution);
    CHECK(readme.find(caution.substr(caution.find(' '))) != std::string::npos);
  }
}

TEST_CASE("the readme names only commands that the program has") {
  const Lines lines = lines_of(support::read_file(support::in_source_tree("README.md")));
  const std::string help = support::run_staddle({"--help"}).out;
  auto row = std::ranges::find(lines, "| command | what it answers |");
  REQUIRE(row != lines.end());
  std::size_t found = 0;
  for (row += 2; row != lines.end() && row->starts_with("| `"); ++row) {
    const std::string command = row->substr(3, row->find('`', 3) - 3);
    CAPTURE(command);
    CHECK(help.find("\n  " + command + " ") != std::string::npos);
    ++found;
  }
  CHECK(found >= 4);
}

}  // namespace
}  // namespace staddle
