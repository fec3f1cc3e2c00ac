// Blocks of words and numbers.
#include "libsim/writers/html.h"
#include "libsim/writers/page_blocks.h"

namespace fillside {
namespace {

std::string cell_html(const char* element, const PlainTable::Column& column, const std::string& text,
                      const char* attributes) {
  const char* right = column.align == PlainTable::Align::right ? " class=\"number\"" : "";
  return std::string("<") + element + attributes + right + ">" + html_text(text) + "</" + element + ">";
}

}  // namespace

std::string block_html(const PageText& text) {
  return (text.quiet ? "<p class=\"quiet\">" : "<p>") + html_text(text.text) + "</p>\n";
}

std::string block_html(const PageList& list) {
  std::string html = "<ul class=\"remarks\">\n";
  for (const std::string& item : list.items) html += "<li>" + html_text(item) + "</li>\n";
  return html + "</ul>\n";
}

std::string block_html(const PageFacts& facts) {
  std::string html = "<dl class=\"facts\">\n";
  for (const auto& [term, text] : facts.facts)
    html += "<dt>" + html_text(term) + "</dt><dd>" + html_text(text) + "</dd>\n";
  return html + "</dl>\n";
}

std::string block_html(const PageTable& table) {
  // A wide table scrolls by itself on a narrow screen; the keyboard must reach it to scroll.
  std::string html = "<div class=\"scroll\" role=\"region\" tabindex=\"0\" aria-label=\"" +
                     html_text(table.caption) + "\"><table>\n<caption>" + html_text(table.caption) +
                     "</caption>\n<thead><tr>";
  for (const PlainTable::Column& column : table.columns)
    html += cell_html("th", column, column.heading, " scope=\"col\"");
  html += "</tr></thead>\n<tbody>\n";
  for (const auto& row : table.rows) {
    html += "<tr>";
    for (std::size_t i = 0; i < table.columns.size(); ++i)
      html += cell_html(i == 0 ? "th" : "td", table.columns[i], i < row.size() ? row[i] : "",
                        i == 0 ? " scope=\"row\"" : "");
    html += "</tr>\n";
  }
  html += "</tbody></table></div>\n";
  return table.note.empty() ? html : html + "<p class=\"quiet\">" + html_text(table.note) + "</p>\n";
}

std::string block_html(const PageCode& code) {
  return "<figure class=\"code\" data-live=\"copy\"><figcaption>" + html_text(code.caption) +
         "</figcaption><pre tabindex=\"0\" aria-label=\"" + html_text(code.caption) + "\">" +
         html_text(code.text) + "</pre></figure>\n";
}

}  // namespace fillside
