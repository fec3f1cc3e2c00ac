// The fixed words of a set card, once: a card is written by filling the gaps of these sentences, and read by
// finding them again. A gap names a key of the scene: {distance} is a length in cm to the millimetre, an
// angle in degrees to a tenth, a clock position to the minute; {focal_length mm} is in mm; {x:right|left} has
// a word for each sign, and {portrait:upright|level} one for each truth.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/scene/source_tree.h"
#include "libsim/what_if/card_key.h"

namespace fillside {

struct CardSentence {
  std::string_view label, words;
  bool even_if_usual = true;  ///< false: not worth a line while every key in it is as usual
};

/// Of a section of that heading, in the order in which they are tried: each key is told once.
std::span<const CardSentence> card_sentences(std::string_view heading);

/// The keys that a sentence has gaps for.
std::vector<std::string_view> keys_in(const CardSentence& sentence);

/// The sentence with its gaps filled; nothing when a value is missing or cannot stand in it.
std::optional<std::string> told(const CardSentence& sentence, std::span<const CardKey> keys);

using SaidValue = decltype(SourceValue::what);
using SaidValues = std::map<std::string, SaidValue>;

/// The values that stand in the gaps of a line, as a scene file would have them; nothing when the line is not
/// that sentence. `kinds`: of any section of that heading.
std::optional<SaidValues> heard(const CardSentence& sentence, std::string_view line,
                                std::span<const CardKey> kinds);

}  // namespace fillside
