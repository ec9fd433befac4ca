// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/calendar.h"

#include <fmt/format.h>

#include <cstdint>

#include "report/season.h"
#include "report/utf8.h"

namespace staddle {
namespace {

constexpr std::size_t longest_line = 75;  // octets without the break (RFC 5545, 3.1)

// A value of type TEXT (3.3.11): breaks of lines are written \n, other control characters
// have no place in it.
std::string escaped(const std::string& text) {
  std::string result;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const auto byte = static_cast<unsigned char>(c);
    if (c == '\\' || c == ';' || c == ',') {
      result += '\\';
      result += c;
    } else if (c == '\n' || c == '\r') {
      if (c == '\r' && i + 1 < text.size() && text[i + 1] == '\n') ++i;
      result += "\\n";
    } else if (byte < 0x20 || byte == 0x7F) {
      result += ' ';
    } else {
      result += c;
    }
  }
  return result;
}

// One line of content, folded between letters: what goes on begins with a blank.
void add_line(std::string& calendar, const std::string& line) {
  std::size_t octets = 0;
  for (std::size_t at = 0; at < line.size();) {
    const std::string_view letter = utf8::letter_at(line, at);
    if (octets + letter.size() > longest_line) {
      calendar += "\r\n ";
      octets = 1;
    }
    calendar += letter;
    octets += letter.size();
    at += letter.size();
  }
  calendar += "\r\n";
}

std::string date(CalendarDay day) {
  return fmt::format("{:04}{:02}{:02}", static_cast<int>(day.year()),
                     static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()));
}

// FNV-1a: the same title gives the same letters on every machine.
std::string digest(const std::string& text) {
  std::uint64_t hash = 0xCBF29CE484222325ULL;
  for (const char c : text) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001B3ULL;
  }
  return fmt::format("{:016x}", hash);
}

std::string description(const Operation& job) {
  std::string text = job.details;
  for (const std::string& more :
       {job.caution.empty() ? "" : "Caution: " + job.caution, "Season: " + job.basis + "."}) {
    if (more.empty()) continue;
    if (!text.empty()) text += "\n\n";
    text += more;
  }
  return text;
}

}  // namespace

std::string to_calendar(const std::string& title, CalendarYear made_in,
                        const std::vector<Operation>& work) {
  std::string calendar;
  for (const std::string& line :
       {std::string("BEGIN:VCALENDAR"), std::string("VERSION:2.0"),
        std::string("PRODID:-//staddle//staddle//EN"), std::string("CALSCALE:GREGORIAN"),
        "X-WR-CALNAME:" + escaped(title)}) {
    add_line(calendar, line);
  }
  const std::string place = digest(title);
  const std::string stamp = fmt::format("{:04}0101T000000Z", made_in.whole());
  for (const Operation& job : work) {
    for (const std::string& line :
         {std::string("BEGIN:VEVENT"), fmt::format("UID:{}-{}@staddle.invalid", job.key, place),
          "DTSTAMP:" + stamp, "DTSTART;VALUE=DATE:" + date(job.first),
          // The end is the first day on which the event is over.
          "DTEND;VALUE=DATE:" + date(season::plus_days(job.last, 1)),
          "SUMMARY:" + escaped(title + ": " + job.what), "DESCRIPTION:" + escaped(description(job)),
          std::string("CATEGORIES:Forestry"), std::string("TRANSP:TRANSPARENT"),
          std::string("END:VEVENT")}) {
      add_line(calendar, line);
    }
  }
  add_line(calendar, "END:VCALENDAR");
  return calendar;
}

Faults faults_of_calendar(std::optional<CalendarYear> present_year) {
  if (present_year) return {};
  return {{FaultCode::missing_key, "", "/calendar_year",
           "a calendar of the work needs the year of the present",
           "give it, as in \"calendar_year\": 2027"}};
}

Result<std::string> stand_calendar(const Scenario& scenario, const Advice& advice) {
  Faults faults = faults_of_calendar(scenario.present_year);
  if (!faults.empty()) return faults;
  return to_calendar(scenario.title, *scenario.present_year, operations(scenario, advice));
}

Result<std::string> tract_calendar(const TractFile& tract, const TractSolution& solution) {
  Faults faults = faults_of_calendar(tract.present_year);
  if (!faults.empty()) return faults;
  return to_calendar(tract.title, *tract.present_year, operations(tract, solution));
}

}  // namespace staddle
