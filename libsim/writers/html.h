// Text and bytes as a page can carry them.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

namespace fillside {

/// The text with & < > " ' written as entities: right between tags and within quoted attributes. Control
/// characters other than line ends and tabs become spaces.
std::string html_text(std::string_view text);

/// RFC 4648, section 4, with padding.
std::string base64(std::string_view bytes);

/// "data:image/png;base64,...": a file within the page (RFC 2397).
std::string data_address(std::string_view media_type, std::string_view bytes);

/// JSON that may stand in a <script> element: no "<" is left in it, and UTF-8 that is none is replaced.
std::string json_island(const nlohmann::ordered_json& document);

/// The source expression by which a content policy lets one style or script in, from its SHA-256 as 64 hex
/// digits: 'sha256-...' (W3C, Content Security Policy Level 3, section 2.3.1).
std::string policy_hash(std::string_view sha256_hex);

}  // namespace fillside
