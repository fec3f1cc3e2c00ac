// A section of a scene as a flat list of keys with their values: what a set card's sentences are filled from.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "libsim/scene/sections.h"
#include "libsim/scene/value_writer.h"

namespace fillside {

/// What a sentence can hold; empty: absent, or of a kind that only the scene's own spelling can tell.
using CardValue = std::variant<std::monostate, bool, int, double, std::string, Clock, Length, Angle, FNumber>;

/// What is told of a key, whether it has a value or not.
enum class CardKind { text, number, truth };

struct CardKey {
  std::string_view key;
  CardKind kind = CardKind::text;
  CardValue value;
  std::optional<std::string> written;  ///< as the scene file spells it; nothing when left out
  bool usual = false;                  ///< as a scene has it that does not say
};

template <class T>
CardValue card_value(const T& value) {
  if constexpr (std::is_constructible_v<CardValue, std::in_place_type_t<T>, T>) return value;
  return {};
}
template <class T>
CardValue card_value(const std::optional<T>& value) {
  return value ? card_value(*value) : CardValue{};
}

template <class T>
constexpr CardKind card_kind(const T&) {
  if constexpr (std::is_same_v<T, bool>) return CardKind::truth;
  return std::is_arithmetic_v<T> ? CardKind::number : CardKind::text;
}
template <class T>
constexpr CardKind card_kind(const std::optional<T>&) {
  return card_kind(T{});
}

/// In the order of the field table.
template <class S>
std::vector<CardKey> card_keys(S section) {
  S plain;
  if constexpr (std::is_same_v<S, ItemSection>) plain.subject = section.subject;
  std::vector<CardKey> keys;
  fields(
      [&](const Field& field, const auto& member) {
        keys.push_back({field.key, card_kind(member), card_value(member), written_if_there(member), false});
      },
      section);
  std::size_t at = 0;
  fields(
      [&](const Field&, const auto& member) {
        keys[at].usual = keys[at].written == written_if_there(member);
        ++at;
      },
      plain);
  return keys;
}

}  // namespace fillside
