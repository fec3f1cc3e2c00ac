// Everything of a description that stands somewhere, placed: what the checks of places look at.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/scene/fault_list.h"
#include "libsim/scene/item_placing.h"
#include "libsim/scene/lamp_placing.h"
#include "libsim/scene/placing.h"

namespace fillside {

/// A board or a diffuser.
struct PlacedSheet {
  const Section* section;
  std::string kind, name;         ///< "board" or "diffuser"; what the results call it
  std::vector<Rectangle> fronts;  ///< one, or the two wings of a folded board
  double thickness_m = 0.0;       ///< 0: a cloth
  bool on_table = true;

  /// Fronts, and the backs of what has a thickness.
  std::vector<Rectangle> faces() const;
  std::vector<Point> corners() const;
};

struct PlacedLamp {
  const LampSection* section;
  LampShape shape;

  /// The four or so corners of a flat one; of what is round, points that reach as far as it does along walls
  /// and upward.
  std::vector<Point> corners(const RoomPlace& room) const;
};

struct PlacedSet {
  /// Things that are not used are left out. The description must outlive the set.
  explicit PlacedSet(const Description& description);

  const Description& description;
  RoomPlace room;
  ItemPlacing placing;
  std::vector<PlacedSheet> sheets;
  std::vector<PlacedLamp> lamps;
  std::optional<Mesh> table;
  double subject_top_m = 0.0;  ///< of the stand-ins; 0 without a subject

  /// Is the point over the table's footprint?
  bool over_table(const Point& point) const;
};

FaultList faults_of(const PlacedSheet& sheet, std::vector<Problem>& problems);
FaultList faults_of(const PlacedLamp& lamp, std::vector<Problem>& problems);
FaultList faults_of(const PlacedItem& item, std::vector<Problem>& problems);

std::vector<Point> corners_of(const Item& item);

/// The first of these keys that the file said; else nothing, which stands for the whole section.
std::string_view first_said(const FaultList& faults, std::initializer_list<std::string_view> keys);

}  // namespace fillside
