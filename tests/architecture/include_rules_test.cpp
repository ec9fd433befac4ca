// SPDX-License-Identifier: GPL-3.0-or-later
#include "architecture/include_rules.h"

#include <catch2/catch.hpp>
#include <set>

#include "support/files.h"

namespace staddle::architecture {
namespace {

Layers project_layers() { return parse_layers(support::read_file(STADDLE_LAYERS)); }

std::vector<SourceFile> project_files() {
  std::vector<SourceFile> files;
  for (const std::string root : {"include", "src"}) {
    for (const std::string ending : {".h", ".cpp"}) {
      for (const std::string& name : support::files_in_source_tree(root, ending)) {
        const std::string path = root + "/" + name;
        files.push_back({path, support::read_file(support::in_source_tree(path))});
      }
    }
  }
  return files;
}

std::size_t faults(const std::string& path, const std::string& line) {
  return broken_rules(project_layers(), {path, "// A comment.\n" + line + "\nint x;\n"}).size();
}

TEST_CASE("every include of the project keeps to the layers") {
  const std::vector<SourceFile> files = project_files();
  REQUIRE(files.size() > 10);
  for (const SourceFile& file : files) {
    for (const std::string& fault : broken_rules(project_layers(), file)) FAIL_CHECK(fault);
  }
}

TEST_CASE("no headers of the project include one another in a ring") {
  for (const std::string& ring : rings(project_files())) FAIL_CHECK(ring);
}

TEST_CASE("each folder of the layers stands in one level") {
  std::set<std::string> seen;
  for (const auto& level : project_layers().levels) {
    for (const std::string& folder : level) {
      CAPTURE(folder);
      CHECK(seen.insert(folder).second);
    }
  }
  CHECK(seen.size() > 20);
}

TEST_CASE("a folder may use those below and not those above or beside it") {
  CHECK(faults("src/regime/a.cpp", "#include \"staddle/growth/crown.h\"") == 0);
  CHECK(faults("src/regime/a.cpp", "#include \"staddle/regime/costs.h\"") == 0);
  CHECK(faults("src/growth/a.cpp", "#include \"staddle/regime/costs.h\"") == 1);
  CHECK(faults("src/growth/a.cpp", "#include \"staddle/finance/rate.h\"") == 1);
  CHECK(faults("include/staddle/growth/a.h", "#  include \"staddle/io/a.h\" // far up") == 1);
  CHECK(faults("src/units/a.cpp", "#include \"staddle/dp/grid.h\"") == 0);
  CHECK(faults("src/dp/a.cpp", "#include \"staddle/units/age.h\"") == 1);
}

TEST_CASE("finance knows nothing of trees") {
  CHECK(faults("src/finance/a.cpp", "#include \"staddle/stand/stand_state.h\"") == 1);
  CHECK(faults("src/finance/a.cpp", "#include \"staddle/units/age.h\"") == 0);
}

TEST_CASE("a private header is for sources at or above its folder and for no public header") {
  CHECK(faults("src/io/a.cpp", "#include \"io/embedded_files.h\"") == 0);
  CHECK(faults("src/io/a.cpp", "#include \"embedded_files.h\"") == 0);
  CHECK(faults("src/cli/a.cpp", "#include \"io/embedded_files.h\"") == 0);
  CHECK(faults("src/regime/a.cpp", "#include \"io/embedded_files.h\"") == 1);
  CHECK(faults("include/staddle/io/a.h", "#include \"io/embedded_files.h\"") == 1);
}

TEST_CASE("another library is included at its one home and in no public header") {
  CHECK(faults("src/lp/a.cpp", "#include <glpk.h>") == 0);
  CHECK(faults("src/regime/a.cpp", "#include <glpk.h>") == 1);
  CHECK(faults("include/staddle/lp/a.h", "#include <glpk.h>") == 1);
  CHECK(faults("src/io/a.cpp", "#include <nlohmann/json.hpp>") == 0);
  CHECK(faults("src/report/a.cpp", "#include <nlohmann/json_fwd.hpp>") == 1);
  CHECK(faults("src/numeric/a.cpp", "#include <boost/math/tools/roots.hpp>") == 0);
  CHECK(faults("src/numeric/a.cpp", "#include <boost/program_options.hpp>") == 1);
  CHECK(faults("src/cli/a.cpp", "#include <boost/program_options.hpp>") == 0);
  CHECK(faults("src/report/a.cpp", "#include <fmt/core.h>") == 0);
  CHECK(faults("src/base/a.cpp", "#include <fmt/core.h>") == 1);
  CHECK(faults("src/optimise/a.cpp", "#include <hwy/highway.h>") == 0);
  CHECK(faults("src/growth/a.cpp", "#include <hwy/highway.h>") == 1);
  CHECK(faults("src/optimise/a.cpp", "#include \"hwy/highway.h\"") == 0);
  CHECK(faults("src/regime/a.cpp", "#include \"glpk.h\"") == 1);
}

TEST_CASE("a library that the layers do not know is included nowhere") {
  CHECK(faults("src/numeric/a.cpp", "#include <boost/graph/graph.hpp>") == 1);
  CHECK(faults("src/cli/a.cpp", "#include <curl.h>") == 1);
  CHECK(faults("src/cli/a.cpp", "#include <vector>") == 0);
}

TEST_CASE("only the command line reaches files and streams") {
  CHECK(faults("src/cli/a.cpp", "#include <fstream>") == 0);
  CHECK(faults("src/io/a.cpp", "#include <fstream>") == 1);
  CHECK(faults("src/report/a.cpp", "#include <iostream>") == 1);
}

TEST_CASE("a file outside the folders of the layers is found") {
  CHECK(faults("src/helpers/a.cpp", "") == 1);
  CHECK(faults("src/a.cpp", "") == 1);
  CHECK(faults("src/cli/a.cpp", "#include \"helpers/a.h\"") == 1);
}

TEST_CASE("a ring of headers is found and a diamond is not one") {
  const SourceFile a{"include/staddle/stand/a.h", "#include \"staddle/stand/b.h\"\n"};
  const SourceFile b{"include/staddle/stand/b.h", "#include \"staddle/stand/c.h\"\n"};
  const SourceFile c{"include/staddle/stand/c.h", "#include \"staddle/stand/a.h\"\n"};
  const SourceFile end{"include/staddle/stand/c.h", "#include <vector>\n"};
  const SourceFile twice{"src/stand/d.cpp",
                         "#include \"staddle/stand/a.h\"\n#include \"staddle/stand/b.h\"\n"};
  REQUIRE(rings({a, b, c}).size() == 1);
  CHECK(rings({a, b, c})[0].ends_with("-> include/staddle/stand/a.h"));
  CHECK(rings({a, b, end, twice}).empty());
}

}  // namespace
}  // namespace staddle::architecture
