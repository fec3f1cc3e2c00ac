#include "libsim/writers/page.h"

#include <fmt/format.h>

#include "libsim/writers/html.h"
#include "libsim/writers/page_assets.h"
#include "libsim/writers/page_blocks.h"

namespace fillside {
namespace {

/// Nothing may be fetched, and only the styles and scripts that the build made may act.
std::string content_policy() {
  std::string styles = policy_hash(page_style().sha256_hex), scripts = "'none'";
  if (page_has_scripts()) {
    for (const PageAsset& style : {page_library_style(), page_slider_style()})
      styles.append(1, ' ').append(policy_hash(style.sha256_hex));
    scripts = policy_hash(page_script().sha256_hex);
    scripts.append(1, ' ').append(policy_hash(page_room_script().sha256_hex));
  }
  return fmt::format(
      "default-src 'none'; img-src data:; style-src {}; script-src {}; base-uri 'none'; form-action 'none'",
      styles, scripts);
}

std::string head_html(const Page& page) {
  std::string html = "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n";
  html += "<meta http-equiv=\"Content-Security-Policy\" content=\"" + content_policy() + "\">\n";
  html += "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n";
  html += "<meta name=\"color-scheme\" content=\"light dark\">\n";
  html += "<meta name=\"generator\" content=\"" + html_text(page.generator) + "\">\n";
  html += "<title>" + html_text(page.title) + "</title>\n";
  html += "<style>" + std::string(page_style().text) + "</style>\n";
  if (page_has_scripts()) html += "<style>" + std::string(page_library_style().text) + "</style>\n";
  return html + "</head>\n";
}

std::string figures_html(const Page& page) {
  if (page.figures.empty()) return "";
  std::string html = "<dl class=\"figures\">\n";
  for (const PageFigure& figure : page.figures)
    html += "<div><dt>" + html_text(figure.name) + "</dt><dd><strong>" + html_text(figure.value) +
            "</strong><span>" + html_text(figure.note) + "</span></dd></div>\n";
  return html + "</dl>\n";
}

std::string contents_html(const Page& page) {
  std::string html = "<nav aria-label=\"On this page\"><ul>\n";
  for (const PageSection& section : page.sections)
    html += "<li><a href=\"#" + html_text(section.id) + "\">" + html_text(section.heading) + "</a></li>\n";
  return html + "</ul></nav>\n";
}

std::string section_html(const PageSection& section) {
  const std::string id = html_text(section.id);
  std::string html = "<section id=\"" + id + "\" aria-labelledby=\"" + id +
                     "-heading\">\n<div class=\"aside\"><h2 id=\"" + id + "-heading\">" +
                     html_text(section.heading) + "</h2>\n";
  if (!section.lead.empty()) html += "<p>" + html_text(section.lead) + "</p>\n";
  html += "</div>\n<div class=\"body\">\n";
  for (const PageBlock& block : section.blocks)
    html += std::visit([](const auto& each) { return block_html(each); }, block);
  return html + "</div>\n</section>\n";
}

std::string notices_html() {
  if (page_notices().empty()) return "";
  return "<details><summary>Licences of the scripts in this page</summary><pre>" + html_text(page_notices()) +
         "</pre></details>\n";
}

std::string scripts_html() {
  if (!page_has_scripts()) return "";
  return "<script>" + std::string(page_script().text) + "</script>\n<script>" +
         std::string(page_room_script().text) + "</script>\n";
}

}  // namespace

bool page_has_scripts() { return !page_script().text.empty(); }

std::string page_html(const Page& page) {
  std::string html = head_html(page);
  html += "<body>\n<a class=\"skip\" href=\"#main\">To the picture</a>\n<header>\n<h1>" +
          html_text(page.title) + "</h1>\n<p>" + html_text(page.subtitle) + "</p>\n" + figures_html(page) +
          contents_html(page) + "</header>\n<main id=\"main\">\n";
  for (const PageSection& section : page.sections) html += section_html(section);
  return html + "</main>\n<footer>\n<p>" + html_text(page.generator) + "</p>\n" + notices_html() +
         "</footer>\n" + scripts_html() + "</body>\n</html>\n";
}

}  // namespace fillside
