#include "libsim/writers/html.h"

#include <cassert>
#include <cstdint>
#include <nlohmann/json.hpp>

namespace fillside {
namespace {

/// A letter as it may stand in a page.
void append_letter(std::string& out, char c) {
  switch (c) {
    case '&':
      out += "&amp;";
      return;
    case '<':
      out += "&lt;";
      return;
    case '>':
      out += "&gt;";
      return;
    case '"':
      out += "&quot;";
      return;
    case '\'':
      out += "&#39;";
      return;
    default:
      const auto code = static_cast<unsigned char>(c);
      out += (code < 0x20 && c != '\n' && c != '\t') || code == 0x7f ? ' ' : c;
  }
}

unsigned hex_digit(char c) {
  assert((c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'));
  return static_cast<unsigned>(c <= '9' ? c - '0' : c - 'a' + 10);
}

}  // namespace

std::string html_text(std::string_view text) {
  std::string out;
  out.reserve(text.size() + text.size() / 8);
  for (const char c : text) append_letter(out, c);
  return out;
}

std::string base64(std::string_view bytes) {
  constexpr std::string_view kDigits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out;
  out.reserve((bytes.size() + 2) / 3 * 4);
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    std::uint32_t three = 0;
    for (std::size_t k = 0; k < 3; ++k)
      three = three << 8 | (i + k < bytes.size() ? static_cast<unsigned char>(bytes[i + k]) : 0u);
    for (std::size_t k = 0; k < 4; ++k)
      out += k <= bytes.size() - i ? kDigits[three >> (18 - 6 * k) & 63u] : '=';
  }
  return out;
}

std::string data_address(std::string_view media_type, std::string_view bytes) {
  return "data:" + std::string(media_type) + ";base64," + base64(bytes);
}

std::string json_island(const nlohmann::ordered_json& document) {
  const std::string text = document.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
  std::string out;
  out.reserve(text.size());
  for (const char c : text) {
    if (c == '<')
      out += "\\u003c";
    else
      out += c;
  }
  return out;
}

std::string policy_hash(std::string_view sha256_hex) {
  assert(sha256_hex.size() == 64);
  std::string bytes;
  for (std::size_t i = 0; i + 1 < sha256_hex.size(); i += 2)
    bytes += static_cast<char>(hex_digit(sha256_hex[i]) << 4 | hex_digit(sha256_hex[i + 1]));
  return "'sha256-" + base64(bytes) + "'";
}

}  // namespace fillside
