#include "libsim/what_if/card_sentence.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/scene/toml_reader.h"

namespace fillside {
namespace {

/// What lies between two gaps, or a gap.
struct Piece {
  std::string_view literal = {};                     ///< empty for a gap
  std::string_view key = {}, plus = {}, minus = {};  ///< of a gap
  bool millimetres = false;
};

Piece gap_of(std::string_view inside) {
  Piece gap;
  const auto colon = inside.find(':'), bar = inside.find('|'), space = inside.find(' ');
  if (colon != std::string_view::npos) {
    gap.plus = inside.substr(colon + 1, bar - colon - 1);
    gap.minus = inside.substr(bar + 1);
    gap.key = inside.substr(0, colon);
  } else {
    gap.millimetres = space != std::string_view::npos;
    gap.key = inside.substr(0, space);
  }
  return gap;
}

std::vector<Piece> pieces_of(std::string_view words) {
  std::vector<Piece> pieces;
  while (!words.empty()) {
    const auto open = words.find('{');
    if (open != 0) pieces.push_back({.literal = words.substr(0, open)});
    if (open == std::string_view::npos) break;
    const auto close = words.find('}');
    pieces.push_back(gap_of(words.substr(open + 1, close - open - 1)));
    words.remove_prefix(close + 1);
  }
  return pieces;
}

const CardKey* key_named(std::span<const CardKey> keys, std::string_view name) {
  const auto found = std::ranges::find(keys, name, &CardKey::key);
  return found == keys.end() ? nullptr : &*found;
}

/// A signed amount, or with a word for its sign.
std::string amount(double value, std::string_view unit, const Piece& gap) {
  const double shown = std::abs(std::round(value * 10.0)) / 10.0;
  if (!gap.plus.empty())
    return fmt::format("{:.1f} {} {}", shown, unit, value < 0.0 && shown > 0.0 ? gap.minus : gap.plus);
  return fmt::format("{}{:.1f} {}", value < 0.0 && shown > 0.0 ? "-" : "", shown, unit);
}

std::string clock_words(Clock clock) {
  const int minutes = static_cast<int>(std::lround(60.0 * clock.hours)) % 720;
  return fmt::format("{}:{:02}", minutes < 60 ? 12 : minutes / 60, minutes % 60);
}

/// Brackets are for remarks, and a line is one line.
bool can_stand(std::string_view text) {
  return !text.empty() && text.find_first_of("(){}\n\r\t\"") == std::string_view::npos &&
         text.find("  ") == std::string_view::npos && text.front() != ' ' && text.back() != ' ';
}

std::optional<std::string> filled(const CardKey& key, const Piece& gap) {
  if (const auto* value = std::get_if<Length>(&key.value))
    return gap.millimetres ? fmt::format("{:g} mm", std::round(1e4 * value->si) / 10.0)
                           : amount(100.0 * value->si, "cm", gap);
  if (const auto* value = std::get_if<Angle>(&key.value)) return amount(in_degrees(*value), "deg", gap);
  if (const auto* value = std::get_if<Clock>(&key.value)) return clock_words(*value);
  if (const auto* value = std::get_if<FNumber>(&key.value)) return to_text(*value);
  if (const auto* value = std::get_if<bool>(&key.value)) return std::string(*value ? gap.plus : gap.minus);
  if (const auto* value = std::get_if<std::string>(&key.value))
    return can_stand(*value) ? std::optional(*value) : std::nullopt;
  if (std::holds_alternative<int>(key.value) || std::holds_alternative<double>(key.value)) return key.written;
  return std::nullopt;
}

/// What stood in a gap, as a scene file has it.
std::optional<SaidValue> meant(std::string text, const Piece& gap, CardKind kind) {
  if (kind == CardKind::truth) {
    if (text != gap.plus && text != gap.minus) return std::nullopt;
    return SaidValue(text == gap.plus);
  }
  if (!gap.plus.empty()) {
    const bool minus = text.ends_with(fmt::format(" {}", gap.minus));
    const std::string_view word = minus ? gap.minus : gap.plus;
    if (!text.ends_with(fmt::format(" {}", word))) return std::nullopt;
    text = fmt::format("{}{}", minus ? "-" : "", text.substr(0, text.size() - word.size() - 1));
  }
  if (kind == CardKind::text) return SaidValue(text);
  const auto value = read_value(text);
  if (!value || !std::holds_alternative<SourceNumber>(value->what)) return std::nullopt;
  return value->what;
}

}  // namespace

std::vector<std::string_view> keys_in(const CardSentence& sentence) {
  std::vector<std::string_view> keys;
  for (const Piece& piece : pieces_of(sentence.words))
    if (!piece.key.empty()) keys.push_back(piece.key);
  return keys;
}

std::optional<std::string> told(const CardSentence& sentence, std::span<const CardKey> keys) {
  std::string text;
  for (const Piece& piece : pieces_of(sentence.words)) {
    text += piece.literal;
    if (piece.key.empty()) continue;
    const CardKey* key = key_named(keys, piece.key);
    const auto words = key ? filled(*key, piece) : std::nullopt;
    if (!words) return std::nullopt;
    text += *words;
  }
  return text;
}

std::optional<SaidValues> heard(const CardSentence& sentence, std::string_view line,
                                std::span<const CardKey> kinds) {
  SaidValues said;
  const std::vector<Piece> pieces = pieces_of(sentence.words);
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Piece& piece = pieces[i];
    if (piece.key.empty()) {
      if (!line.starts_with(piece.literal)) return std::nullopt;
      line.remove_prefix(piece.literal.size());
      continue;
    }
    // A gap ends where the words after it begin; the last one takes the rest.
    const auto end = i + 1 < pieces.size() ? line.find(pieces[i + 1].literal) : line.size();
    const CardKey* kind = key_named(kinds, piece.key);
    if (end == std::string_view::npos || end == 0 || !kind) return std::nullopt;
    const auto value = meant(std::string(line.substr(0, end)), piece, kind->kind);
    if (!value) return std::nullopt;
    said.emplace(piece.key, *value);
    line.remove_prefix(end);
  }
  return line.empty() ? std::optional(said) : std::nullopt;
}

}  // namespace fillside
