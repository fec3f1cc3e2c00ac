// The goals, group by group; each prints its rows as it has them.
#pragma once

#include "libsim/scene/scene.h"

namespace fillside::bench {

void raw_share_goals(const Scene& scene);  ///< how much of the time is Embree's own
void point_goals(const Scene& scene);      ///< meter points against the textbook walk
void map_goals(const Scene& scene);
void picture_goals(const Scene& scene);
void variant_goals();  ///< differences between two sets
void process_goals();  ///< the program from start to exit

/// Beside the goals.
void print_point_errors(const Scene& scene);
void print_scaling();
/// The product against the textbook walk with that many samples, for every kind of light and matter.
void print_agreement(unsigned long long samples);
/// A small fixed piece of work, for counting instructions.
void hot_loop();

}  // namespace fillside::bench
