// What a smooth face between two clear media mirrors. Fresnel's equations for the two polarisations, as
// intensities: Born and Wolf, Principles of Optics, 7th edition, 1999, section 1.5.2, equations 21 and 36
// (section and equations from memory).
#pragma once

namespace fillside {

/// For light that arrives at |cosine| and meets a medium whose index is `ratio` times that of its own.
struct Face {
  double reflectance_s, reflectance_p;
  double cosine_beyond;  ///< of the refracted ray, by Snell's law; 0 where all is reflected
};
Face face_between(double ratio, double cosine);

/// Of unpolarised light: the mean of both; 1 beyond the critical angle.
double face_reflectance(double ratio, double cosine);

}  // namespace fillside
