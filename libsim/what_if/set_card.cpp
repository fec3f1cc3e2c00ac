#include "libsim/what_if/set_card.h"

#include <algorithm>
#include <set>

#include "libsim/scene/placed_set.h"
#include "libsim/what_if/card_remarks.h"
#include "libsim/what_if/card_sentence.h"

namespace fillside {
namespace {

class CardWriter {
 public:
  explicit CardWriter(const Description& d) : d_(measured_out(d)), set_(d_) {}

  SetCard card() const {
    return {d_.set.title, preface(), {room_and_table(), dish(), camera(), boards(), curtain()}};
  }

 private:
  template <class S>
  CardThing thing(std::string_view heading, std::string name, const S& section) const {
    CardThing thing{std::string(heading), std::move(name), {}};
    const std::vector<CardKey> keys = card_keys(section);
    std::set<std::string_view> told_keys{"name"};
    for (const CardSentence& sentence : card_sentences(heading)) {
      const auto needed = keys_in(sentence);
      if (std::ranges::any_of(needed, [&](auto key) { return told_keys.contains(key); })) continue;
      if (!thing.lines.empty() && thing.lines.back().label == sentence.label) continue;
      if (!sentence.even_if_usual && all_usual(needed, keys)) continue;
      const auto words = told(sentence, keys);
      if (!words) continue;
      told_keys.insert(needed.begin(), needed.end());
      const std::string label(sentence.label);
      thing.lines.push_back({label, *words, remark_on(set_, section, sentence.label)});
    }
    for (const CardKey& key : keys)
      if (key.written && !key.usual && !told_keys.contains(key.key))
        thing.lines.push_back({std::string(kCardAlso), std::string(key.key) + " = " + *key.written, {}});
    return thing;
  }

  static bool all_usual(const std::vector<std::string_view>& needed, const std::vector<CardKey>& keys) {
    return std::ranges::all_of(keys, [&](const CardKey& key) {
      return key.usual || std::ranges::find(needed, key.key) == needed.end();
    });
  }

  template <class S>
  void add(CardStep& step, std::string_view heading, const std::vector<S>& sections) const {
    for (const S& section : sections) step.things.push_back(thing(heading, section.name, section));
  }

  template <class S>
  void add(CardStep& step, std::string_view heading, const S& section) const {
    if (CardThing one = thing(heading, "", section); !one.lines.empty())
      step.things.push_back(std::move(one));
  }

  static std::vector<std::string> preface() {
    return {
        "Everything is measured from one place: a cross on the table top, under the middle of the dish. The "
        "camera "
        "stands at 6:00 of a clock face around it; 12:00 is behind the dish, 3:00 right, 9:00 left. "
        "Distances are "
        "level ones. What stands in brackets follows from the rest; lines with "
        "'also' say what has no measure, as the scene file spells it."};
  }

  CardStep room_and_table() const {
    CardStep step{"Table and window",
                  {},
                  {"Mark the cross first: tape under the dish's place. Then push the table until "
                   "the cross is as far from the window's wall as it should be."}};
    add(step, "set", d_.set);
    add(step, "daylight", d_.daylight);
    add(step, "room", d_.room);
    add(step, "window", d_.windows);
    add(step, "table", d_.table);
    add(step, "anchor", d_.anchor);
    return step;
  }

  CardStep dish() const {
    CardStep step{"Dish", {}, {"Things without a place of their own stand on the cross, middle on middle."}};
    for (const ItemSection& item : d_.items)
      step.things.push_back(thing(item.subject ? "food" : "prop", item.name, item));
    add(step, "mesh", d_.meshes);
    return step;
  }

  CardStep camera() const {
    CardStep step{"Camera", {}, {"Measure to the middle of the lens."}};
    add(step, "camera", d_.camera);
    return step;
  }

  CardStep boards() const {
    CardStep step{"Boards, cloths and lamps", {}, {}};
    add(step, "board", d_.boards);
    add(step, "diffuser", d_.diffusers);
    add(step, "lamp", d_.lamps);
    step.notes.push_back(step.things.empty()
                             ? "There are none."
                             : "Each faces the dish unless its card says otherwise. Clips or blocks "
                               "hold the lower edge; check the lean last.");
    return step;
  }

  static std::string said_of(const WindowSection& window) {
    return window.name == "window" ? "the window" : heading_text("window", window.name);
  }

  CardStep curtain() const {
    CardStep step{"Curtain and room", {}, {}};
    for (const WindowSection& window : d_.windows)
      if (window.used)
        step.notes.push_back(window.curtain.empty()
                                 ? "Leave " + said_of(window) + " bare."
                                 : "Draw the " + window.curtain + " over all of " + said_of(window) + ".");
    step.notes.push_back(
        "All lamps off that are not on this card, and nobody in light clothes beside the table.");
    add(step, "meter", d_.meters);
    return step;
  }

  Description d_;
  PlacedSet set_;
};

}  // namespace

SetCard set_card(const Description& description) { return CardWriter(description).card(); }

std::string card_heading(const CardThing& thing) {
  if (thing.name.empty()) return thing.heading;
  return thing.heading + " " + toml_text(thing.name);
}

}  // namespace fillside
