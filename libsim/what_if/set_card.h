// A set card: what a second person needs to build a set from nothing, in the order in which one builds. Its
// measures are told in fixed words (card_sentence.h), so that the card can be read back (card_reader.h): what
// stands in them, to the millimetre, the tenth of a degree and the minute of the clock, is what was measured
// out. What stands in brackets follows from the rest and is not read.
#pragma once

#include <string>
#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

struct CardLine {
  std::string label, words, remark;  ///< either of the last two may be empty
};

/// A window, the table, a board, ... `heading` and `name` as in the scene; what no sentence tells stands
/// last, as the scene file spells it, labelled kCardAlso.
struct CardThing {
  std::string heading, name;
  std::vector<CardLine> lines;
};
inline constexpr std::string_view kCardAlso = "also";

struct CardStep {
  std::string title;
  std::vector<CardThing> things;
  std::vector<std::string> notes;                    ///< what to do, and cautions; each a paragraph
  std::vector<std::vector<std::string>> table = {};  ///< its first row are the headings
  std::vector<std::string> last_notes = {};          ///< after the table
};

struct SetCard {
  std::string title;
  std::vector<std::string> preface;
  std::vector<CardStep> steps;
};

/// Things that are not used, maps' planes and claims are left out; what the scene leaves to defaults is
/// measured out. The description must have passed check().
SetCard set_card(const Description& description);

/// The description as the card tells it, before rounding: used things only, sizes in place of stock names.
Description measured_out(const Description& description);

/// The card as text, lines of at most 100 characters but for what cannot be broken.
std::string card_text(const SetCard& card);

/// `board "fill"`: the line that a thing's measures stand under.
std::string card_heading(const CardThing& thing);

}  // namespace fillside
