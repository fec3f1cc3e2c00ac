// The glass and the lid of a jar, for jars with different things in them.
#pragma once

#include "libsim/geometry/lathe.h"

namespace fillside {

/// One closed surface, of radius r and height h.
Profile jar_glass_section(double r, double h);
/// The same with a real wall, open at the top under its lid.
Profile jar_wall_section(double r, double h, double wall);
/// A cap over the neck, clear of the glass by `gap` all round.
Profile jar_lid_section(double r, double h, double gap);

}  // namespace fillside
