// Stand-ins for food and crockery: rounded forms with the sizes of the real things, for planning their light.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/geometry/mesh.h"

namespace fillside {

/// What is asked for. An absent width is the kind's usual one; an absent depth, height or relief follows the
/// width in the kind's usual proportions, so that a small tart is not a thick one.
struct ItemShape {
  std::string kind;                                           ///< one of item_kinds()
  std::optional<double> width_m, depth_m, height_m, relief_m; /**< each > 0, relief >= 0; a round kind with a
                                                                  depth of its own becomes oval */
  std::optional<double> level;                                ///< how full, 0 to 1
  int seed = 1;                                               ///< fixes the bumps
};

/// The measures that a shape means, with nothing left out.
struct ItemSize {
  double width_m, depth_m, height_m;
  double relief_m;  ///< greatest height of bumps; held to a tenth of the smallest measure. Crockery, glass,
                    ///< box: 0
  double level;
};

struct ItemPart {
  std::string
      role;   ///< "body", "filling", "glass", "lid", ... : what has a surface of its own; see part_roles()
  Mesh mesh;  ///< one or several watertight pieces
  /// At each corner, 0..1: how much of the part's second surface lies there, as flour lies on a crust. Empty:
  /// none anywhere.
  std::vector<double> second = {};
};

/// Own axes: foot at z = 0, centred on x = y = 0, z up. The box around all parts is width x depth x height.
/// Parts never touch: between what rests on something else stands a gap of about 0.2 mm (usual size), too
/// thin to see, so that a ray that leaves one surface cannot start inside or exactly on the next.
struct Item {
  std::vector<ItemPart> parts;
  double stand_m = 0.0;  ///< height at which a thing put on or in it stands: its top unless it is hollow
};

/// All roles that parts of any kind have.
std::span<const std::string_view> part_roles();
/// The kinds, with single words or two: "ball", "layer cake", ...
std::span<const std::string_view> item_kinds();
/// Asserts a known kind and positive measures.
ItemSize size_of(const ItemShape& shape);
/// Same shape, same meshes, on any machine. Asserts as size_of does.
Item make_item(const ItemShape& shape);

}  // namespace fillside
