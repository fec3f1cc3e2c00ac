// How much of its light the lobe of rough metal loses: what would meet a second facet. From a table, computed
// once.
#pragma once

namespace fillside {

/// 1 - E: the share of a perfect lobe's light that is lost, seen at that cosine (0 to 1) and roughness alpha
/// (0 to 1; beyond, as at 1). 0 for a mirror. Off by at most 0.002 from alpha 0.05 on, by 0.009 between 0.01
/// and 0.05 (and that only at grazing angles, cosines of about alpha; below 0.01, by 0.04 there).
double lobe_loss(double alpha, double cosine);

/// 1 - E_avg: its mean over the cosine-weighted hemisphere, 2 x integral of lobe_loss x cosine d(cosine),
/// exactly that of the interpolated lobe_loss, so that a lobe put together from both adds up to 1 as well as
/// lobe_loss is true.
double mean_lobe_loss(double alpha);

}  // namespace fillside
