// Place: what may move is moved until the set reads what is wanted.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/what_if/freedom.h"
#include "libsim/what_if/trial_set.h"

namespace fillside {

/// Which of the answers to give, when there are many.
enum class Preference {
  smallest,  ///< the first choices that reach it, in their order: list boards from small to large
  farthest,  ///< with every distance as large as can be
  easiest,   ///< with the most slack: what forgives most
};

struct PlaceTask {
  Describer describe;
  std::vector<Want> wants;        ///< at least one
  std::vector<Freedom> freedoms;  ///< at least one
  Preference preference = Preference::easiest;
  Allowed allowed;
};

/// What a key was set to, and between which values every want still holds while the others stay.
struct PlacedKey {
  std::string key, text;
  std::string holds_from, holds_to;                    ///< empty for choices, and when nothing was reached
  bool at_least_bound = false, at_most_bound = false;  ///< stands at an end of what it may take
};

struct PlaceAnswer {
  bool reached = false;            ///< every want holds, read afresh
  std::vector<PlacedKey> keys;     ///< in the order of the freedoms
  Trial reading;                   ///< read afresh, by other sample numbers, at high precision
  std::vector<std::string> units;  ///< of the wants' figures
  std::string limit;               ///< when not reached: the want that misses most
  std::size_t sets_tried = 0;
  std::map<std::string, int> obstacles;  ///< what kept sets from being tried, and how many

  /// "board.fill.distance=27.3cm" for --set.
  std::vector<std::string> edits() const;
};

/// Searches with common sample numbers, first all over, then from the best place; the answer is read afresh
/// with another seed. Choices are gone through one after the other. When even the best place misses, that is
/// told with `limit`. Throws SceneError when the set as it stands cannot be, lacks a figure, or no values at
/// all give a set that can be.
PlaceAnswer find_place(const PlaceTask& task, const Effort& effort, const EffortProgress& progress = {});

/// The things whose keys are free: "fill" of "board.fill.distance".
std::vector<std::string> things_moved(const std::vector<Freedom>& freedoms);

}  // namespace fillside
