// Glare: a window or lamp mirrored in something shiny, as the camera sees it.
#pragma once

#include <array>
#include <span>
#include <string>
#include <vector>

#include "libsim/base/estimate.h"
#include "libsim/view/picture.h"

namespace fillside {

/// One window or lamp, mirrored in one part of one thing. Areas are areas of the picture.
struct Glare {
  std::string thing, part;                 ///< "soup", "filling"; the part is empty for a thing of one part
  std::string source;                      ///< the window's or lamp's name
  bool by_curtain = false;                 ///< what is mirrored of the window is mostly its curtain
  double part_of_frame = 0.0;              ///< share of the frame that the part takes
  Estimate share_of_part, share_of_frame;  ///< covered by the mirror image, 0..1
  Estimate mirrored_share;                 ///< of the light from there: Fresnel's or the metal's, the mean
  Estimate added_cd_m2;                    ///< where the image is, the mean
  Estimate otherwise_cd_m2;                ///< what the picture would show there without it
  std::array<double, 2> middle{};  ///< of the image: right and up of the frame's, in widths and heights

  /// How much brighter the mirror image makes what it covers. On metal next to nothing is there otherwise and
  /// the error bar may reach darkness: not a number then, and only least_stops() is known.
  Estimate added_stops() const { return in_stops((otherwise_cd_m2 + added_cd_m2) / otherwise_cd_m2); }
  bool is_known() const;
  /// By at least that much, at the bright end of the error bar of what is there otherwise.
  double least_stops() const;
};

/// What is brighter by less than this does not show (design: a third of a stop).
inline constexpr double kLeastVisible_stops = 1.0 / 3.0;
bool shows(const Glare& glare);

/// "soup (filling)"; "window, its curtain".
std::string thing_text(const Glare& glare);
std::string source_text(const Glare& glare);
/// Where in the frame: "right, upper part".
std::string place_text(const Glare& glare);

/// Stops that the mirrored light adds to a pixel. What is there otherwise is the picture less it, but at
/// least `least_cd_m2`, so that the grain of a picture does not pass for darkness.
double added_stops(double picture_cd_m2, double added_cd_m2, double least_cd_m2);

/// The steps of the overlay's scale: from each on, its colour.
inline constexpr std::array<double, 5> kGlareSteps_stops{1.0 / 3.0, 2.0 / 3.0, 1.0, 2.0, 3.0};
Rgb colour_of_glare(double stops);
/// Makes the picture grey and paints what glare makes brighter by a visible amount, one value a pixel.
void draw_glare(Picture& picture, std::span<const double> stops);

}  // namespace fillside
