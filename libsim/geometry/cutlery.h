// What spoons and forks share: a handle, seen from above and from the side.
#pragma once

namespace fillside {

/// Half the width at a share of the length, 0 at the handle's end, of a piece of length 1.
double handle_half_width(double along);
/// Height of the middle line over the table, of a piece of length 1: the neck stands up, the end lies low.
double handle_height(double along);

}  // namespace fillside
