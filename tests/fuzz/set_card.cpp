#include "libsim/what_if/set_card.h"

#include "libsim/what_if/card_reader.h"
#include "tests/fuzz/harnesses.h"
#include "tests/fuzz/laws.h"

namespace fillside::fuzz {
namespace {

Description read_again(const std::string& card) {
  std::vector<Problem> warnings;
  try {
    return load_card(card, "/written/card.txt", warnings);
  } catch (const SceneError& error) {
    throw BrokenLaw("a card of its own is refused:\n" + std::string(error.what()) + card);
  }
}

}  // namespace

void set_card(std::string_view input) {
  const int lines = line_count(input);
  std::vector<Problem> warnings;
  try {
    const Description set = load_card(std::string(input), "/nowhere/card.txt", warnings);
    keep_problem_laws(warnings, lines);
    keep_writing_laws(set);
    // What the card rounds is rounded once: the card of the set that it tells is the same card.
    const Description told = read_again(card_text(fillside::set_card(set)));
    const std::string card = card_text(fillside::set_card(told));
    law(card_text(fillside::set_card(read_again(card))) == card, "a card read twice differs:\n" + card);
  } catch (const SceneError& error) {
    keep_refusal_laws(error, lines);
  }
}

}  // namespace fillside::fuzz
