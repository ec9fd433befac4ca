// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "report/escape.h"
#include "report/html_style.h"
#include "report/owner_parts.h"
#include "staddle/report/owner_report.h"
#include "staddle/report/svg.h"

namespace staddle {
namespace {

using escape::markup;

std::string page_paragraph(const std::string& text) { return "<p>" + markup(text) + "</p>\n"; }

// Nothing but what stands in the file is ever fetched, and nothing in it is run.
constexpr const char* head_of_page =
    "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
    "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
    "style-src 'unsafe-inline'\">\n";

// A page being written: its figures and tables are numbered through.
class Page {
 public:
  explicit Page(const OwnerReport& report) : report_(report) {}

  std::string whole() {
    std::string text = opening();
    text += contents();
    for (const Section* section : parts_of(report_)) text += told(*section);
    text += inputs();
    return text + closing();
  }

  std::string summary() {
    std::string text = top("short") + "</header>\n" + key_figures() + "<ul>\n";
    for (const std::string& line : report_.summary) text += "<li>" + markup(line) + "</li>\n";
    return text + "</ul>\n</div>\n" + closing();
  }

 private:
  std::string top(const char* kind) const {
    std::string text = head_of_page;
    text += fmt::format("<title>{}</title>\n<style>{}</style>\n</head>\n<body>\n<main>\n",
                        markup(report_.title), page_style);
    text += fmt::format("<div class=\"{}\">\n<header>\n<h1>{}</h1>\n", kind, markup(report_.title));
    return text + "<p class=\"subject\">" + markup(report_.subject) + "</p>\n";
  }

  std::string opening() const {
    std::string text = top("answer");
    for (const std::string& line : people_of(report_)) {
      text += "<p class=\"people\">" + markup(line) + "</p>\n";
    }
    text += "</header>\n" + key_figures();
    for (const AnswerGroup& group : report_.answer) {
      text += "<h2>" + markup(group.heading) + "</h2>\n";
      for (const std::string& line : group.lines) text += page_paragraph(line);
    }
    return text + "</div>\n";
  }

  std::string key_figures() const {
    if (report_.key_figures.empty()) return "";
    std::string text = "<ul class=\"keys\">\n";
    for (const KeyFigure& key : report_.key_figures) {
      text +=
          fmt::format("<li><strong>{}</strong> {}</li>\n", markup(key.value), markup(key.meaning));
    }
    return text + "</ul>\n";
  }

  std::string contents() const {
    std::string text = "<nav aria-label=\"Contents\">\n<h2>What follows</h2>\n<ol>\n";
    std::size_t number = 0;
    for (const Section* section : parts_of(report_)) {
      text +=
          fmt::format("<li><a href=\"#part-{}\">{}</a></li>\n", ++number, markup(section->title));
    }
    if (!report_.inputs.empty()) {
      text += "<li><a href=\"#inputs\">To make this report again</a></li>\n";
    }
    return text + "</ol>\n</nav>\n";
  }

  std::string told(const Section& section) {
    std::string text = fmt::format(
        "<section aria-labelledby=\"part-{0}\">\n<h2 id=\"part-{0}\">{1}"
        "</h2>\n",
        ++sections_, markup(section.title));
    for (const std::string& words : section.paragraphs) text += page_paragraph(words);
    for (const Figure& figure : section.figures) text += told(figure);
    for (const Table& table : section.tables) {
      text += told(table, table.title.empty() ? section.title : table.title);
    }
    if (!section.items.empty()) {
      text += "<ul>\n";
      for (const std::string& item : section.items) text += "<li>" + markup(item) + "</li>\n";
      text += "</ul>\n";
    }
    return text + "</section>\n";
  }

  std::string told(const Figure& figure) {
    const std::size_t number = ++figures_;
    std::string text = fmt::format("<figure>\n<figcaption>Figure {}. {}</figcaption>\n", number,
                                   markup(figure.title));
    text += to_svg(figure, fmt::format("figure-{}", number)) + "</figure>\n";
    return text + told(figure.table, fmt::format("The numbers of figure {}", number));
  }

  std::string told(const Table& table, const std::string& title) {
    const std::string name = markup(fmt::format("Table {}. {}", ++tables_, title));
    // On paper a short table stands on one sheet.
    constexpr std::size_t few = 10;
    std::string text = fmt::format(
        "<div class=\"scroll{1}\" role=\"group\" aria-label=\"{0}\" tabindex=\"0\">\n<table>\n"
        "<caption>{0}</caption>\n<thead>\n<tr>",
        name, table.rows.size() <= few ? " few" : "");
    for (const Column& column : table.columns) text += heading(column);
    text += "</tr>\n</thead>\n<tbody>\n";
    for (const std::vector<Cell>& row : table.rows) {
      text += "<tr>";
      for (std::size_t i = 0; i < row.size(); ++i) {
        // The first cell names its row.
        const bool names_row = i == 0 && !row[i].text.empty();
        const char* kind = table.columns[i].words ? " class=\"words\"" : "";
        text += names_row ? fmt::format("<th scope=\"row\"{}>{}</th>", kind, markup(row[i].text))
                          : fmt::format("<td{}>{}</td>", kind, markup(row[i].text));
      }
      text += "</tr>\n";
    }
    return text + "</tbody>\n</table>\n</div>\n";
  }

  static std::string heading(const Column& column) {
    const char* kind = column.words ? " class=\"words\"" : "";
    if (column.heading.empty()) return fmt::format("<td{}></td>", kind);
    std::string text = fmt::format("<th scope=\"col\"{}>{}", kind, markup(column.heading));
    if (!column.unit.empty()) {
      text += fmt::format(" <span class=\"unit\">{}</span>", markup(column.unit));
    }
    return text + "</th>";
  }

  std::string inputs() const {
    if (report_.inputs.empty()) return "";
    std::string text =
        "<section aria-labelledby=\"inputs\">\n<h2 id=\"inputs\">To make this report again</h2>\n";
    text += page_paragraph(how_to_make_again(report_));
    for (const InputFile& file : report_.inputs) {
      text += "<h3>" + markup(file.name) + "</h3>\n<pre tabindex=\"0\">";
      for (const std::string& line : lines_of_file(file.text)) text += markup(line) + "\n";
      text += "</pre>\n";
    }
    return text + "</section>\n";
  }

  std::string closing() const {
    return "<footer>\n" + page_paragraph(report_.foot) + page_paragraph(report_.made_by) +
           "</footer>\n</main>\n</body>\n</html>\n";
  }

  const OwnerReport& report_;
  std::size_t sections_ = 0, figures_ = 0, tables_ = 0;
};

}  // namespace

std::string to_html(const OwnerReport& report) { return Page(report).whole(); }
std::string summary_html(const OwnerReport& report) { return Page(report).summary(); }

}  // namespace staddle
