// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <sstream>

#include "support/files.h"
#include "support/not_run.h"
#include "support/program.h"
#include "support/text.h"

// The pages as a browser sees them. The browser reads files of a temporary directory and has
// no network to ask.
namespace staddle::support {
namespace {

using Catch::Matchers::Contains;

constexpr const char* browser = "chromium-headless-shell";
constexpr const char* axe_package = "axe-core@4.14.1";

// Between them every kind of figure: a standing stand, storms, prices, plots, planting, a
// tract.
const std::vector<std::string> inputs{
    "scenarios/stand/juniper_creek.json",   "scenarios/stand/near_the_coast.json",
    "scenarios/vary/will_prices_hold.json", "scenarios/cruise/from_plots.json",
    "scenarios/plant/next_stand.json",      "scenarios/tract/sweetgum_fork.json"};
// Enough where the figures do not matter.
const std::vector<std::string> two_inputs{"scenarios/stand/near_the_coast.json",
                                          "scenarios/tract/three_heirs.json"};

std::string page_of(const std::string& input, const TemporaryDirectory& folder) {
  const std::string page = folder.path("page.html");
  const Run run = run_staddle({"report", in_source_tree(input), "-o", page});
  REQUIRE(run.err == "");
  REQUIRE(run.exit_code == 0);
  return page;
}

Run browse(const std::vector<std::string>& options, const std::string& page) {
  std::vector<std::string> arguments{"--no-sandbox", "--disable-gpu",
                                     "--disable-background-networking", "--enable-logging=stderr"};
  arguments.insert(arguments.end(), options.begin(), options.end());
  arguments.push_back("file://" + page);
  return run_program(browser, arguments);
}

bool browser_is_missing() {
  if (program_exists(browser)) return false;
  not_run(std::string(browser) + " is not installed");
  return true;
}

// The accessibility library, fetched once into the build directory; empty where it cannot be.
std::string axe_source() {
  const std::filesystem::path folder =
      std::filesystem::path(STADDLE_BINARY).parent_path() / "browser";
  const std::filesystem::path script = folder / "node_modules/axe-core/axe.min.js";
  if (!std::filesystem::exists(script)) {
    if (!program_exists("npm")) return "";
    run_program("npm", {"install", "--prefix", folder.string(), "--no-audit", "--no-fund",
                        "--ignore-scripts", "--no-save", axe_package});
  }
  return std::filesystem::exists(script) ? read_file(script.string()) : "";
}

// A page with the scripts that check it at its end; only they need leave to run.
std::string with_checks(std::string page, const std::string& axe) {
  const std::string policy = "default-src 'none'; ";
  const std::size_t at = page.find(policy);
  if (at != std::string::npos) {
    page.replace(at, policy.size(), "script-src 'unsafe-inline'; ");
  }
  const std::string checks = read_file(in_source_tree("tests/browser/page_check.js"));
  const std::string scripts = "<script>" + axe + "</script>\n<script>" + checks + "</script>\n";
  return page.insert(page.find("</body>"), scripts);
}

// What the checks say of a page on a screen so large.
std::string checked(const std::string& page, const std::string& axe, const std::string& size) {
  const TemporaryDirectory folder;
  const std::string file = folder.write("checked.html", with_checks(page, axe));
  return browse({"--window-size=" + size, "--virtual-time-budget=20000", "--dump-dom"}, file).out;
}

std::string faults_in(const std::string& found) {
  std::string faults;
  for (const std::string& line : lines_of(found)) {
    if (line.find("fault: ") != std::string::npos) faults += line + "\n";
  }
  return faults;
}

TEST_CASE("pages are accessible with every figure drawn and labelled on screens of any size") {
  if (browser_is_missing()) return;
  const std::string axe = axe_source();
  if (axe.empty()) {
    not_run("axe-core is not there and npm could not fetch it");
    return;
  }
  const std::string faulty =
      "<!doctype html><html><head><title>x</title></head><body><main><p style=\"color:#ccc\">pale"
      "</p><figure></figure></main></body></html>";
  CHECK_THAT(faults_in(checked(faulty, axe, "1280,900")),
             Contains("html-has-lang") && Contains("color-contrast") &&
                 Contains("a figure without an image"));
  for (const std::string& input : inputs) {
    CAPTURE(input);
    const TemporaryDirectory folder;
    const std::string page = read_file(page_of(input, folder));
    for (const char* size : {"1280,900", "390,844"}) {
      CAPTURE(size);
      const std::string found = checked(page, axe, size);
      CHECK_THAT(found, Contains("checked"));
      CHECK(faults_in(found) == "");
      CHECK_THAT(found, !Contains("figures: 0"));
    }
  }
}

// Every address that the browser's log of its network names.
std::vector<std::string> requests_in(const std::string& log) {
  std::vector<std::string> addresses;
  const std::string key = "\"url\":\"";
  for (std::size_t at = log.find(key); at != std::string::npos; at = log.find(key, at + 1)) {
    const std::size_t from = at + key.size();
    addresses.push_back(log.substr(from, log.find('"', from) - from));
  }
  return addresses;
}

TEST_CASE("a page asks nothing of anyone and reports no error") {
  if (browser_is_missing()) return;
  for (const std::string& input : two_inputs) {
    CAPTURE(input);
    const TemporaryDirectory folder;
    const std::string page = page_of(input, folder);
    const std::string log = folder.path("network.json");
    const Run run = browse({"--log-net-log=" + log, "--dump-dom"}, page);
    CHECK_THAT(run.out, Contains("<h1>"));
    CHECK_THAT(run.err, !Contains("CONSOLE"));
    for (const std::string& address : requests_in(read_file(log))) {
      CAPTURE(address);
      CHECK(address == "file://" + page);
    }
  }
}

TEST_CASE("a page prints on a few sheets of Letter paper with words that can be sought") {
  if (browser_is_missing()) return;
  if (!program_exists("pdfinfo") || !program_exists("pdftotext")) {
    not_run("pdfinfo and pdftotext are not installed");
    return;
  }
  for (const std::string& input : two_inputs) {
    CAPTURE(input);
    const TemporaryDirectory folder;
    const std::string pdf = folder.path("page.pdf");
    browse({"--no-pdf-header-footer", "--print-to-pdf=" + pdf}, page_of(input, folder));
    const std::string info = run_program("pdfinfo", {pdf}).out;
    CHECK_THAT(info, Contains("612 x 792 pts (letter)"));
    const std::size_t pages = std::stoul(info.substr(info.find("Pages:") + 6));
    CHECK(pages >= 4);
    CHECK(pages <= 30);
    // The answer stands on the first sheet, whole.
    const std::string first = run_program("pdftotext", {"-l", "1", pdf, "-"}).out;
    CHECK_THAT(first, Contains("What to do") && Contains("Next month"));
    CHECK_THAT(first, !Contains("Table 1."));
    const std::string second = run_program("pdftotext", {"-f", "2", "-l", "2", pdf, "-"}).out;
    CHECK_THAT(second, Contains("The stand as it is") || Contains("What to do, year by year"));
  }
}

}  // namespace
}  // namespace staddle::support
