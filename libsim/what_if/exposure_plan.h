// What a photographer sets the camera to, for a set that has been read: exposure, steadiness, depth,
// clipping, motion, framing.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/sensor/framing.h"
#include "libsim/sensor/lens.h"
#include "libsim/view/starting_point.h"
#include "libsim/what_if/set_reading.h"

namespace fillside {

/// As a person meters, in the dish's place and toward the camera: with a dome for things in the round, with
/// the flat disc for a flat lay seen from overhead (common practice). Each counts by its own constant.
struct MeteredExposure {
  std::string meter;  ///< the reading's name
  double constant;    ///< C of its receptor
  Estimate light_lx;
  double ev100;  ///< as the meter says
};
MeteredExposure metered_exposure(const Description& description, const SetReading& set);

/// How much light the camera's close focus costs; none for a pinhole.
Stops close_focus_loss(const Camera& camera);

/// A matte white of 85 %, as porcelain and good paper have it (common practice; see the catalogue).
inline constexpr double kWhitePlate = 0.85;

/// Something bright and what is left to the sensor's limit at the settings.
struct WhiteLeft {
  std::string where;  ///< "lying flat", "turned to the key"
  Estimate stops_left;
};

/// A motion and what the settings make of it.
struct Motion {
  std::string what;
  double speed_m_per_s;
  Length blur;         ///< at the plan's settings by hand
  double blur_pixels;  ///< in a picture 6000 pixels wide
  Duration freezes;    ///< blurs half a millimetre
};
inline constexpr int kFullPicture = 6000;  // pixels across, of a 24-megapixel camera

/// What depth of field the food asks for; nothing without food.
struct DepthWanted {
  Length nearest, farthest;  ///< of the food, along the optical axis from the lens
  LensSetting covering;      ///< its aperture is true, not engraved
};

/// Where the lens has to be to look straight down on a field of the table, and how high that is over the
/// floor.
struct OverheadField {
  std::string what;  ///< "a flat lay", "all the food"
  Length width, height;
  Length over_table, over_floor;
};
/// Above this a ladder or an arm on a tall stand is needed (common practice).
inline constexpr Length kReach = metres(2.0);

struct ExposurePlan {
  MeteredExposure metered;
  Stops close_focus_loss;
  double ev100 = 0.0;  ///< what is left
  StartingPoint start;
  std::vector<Settings> equivalents;  ///< apertures_around x isos, apertures outermost
  std::vector<FNumber> apertures;
  std::vector<int> isos;
  Stops white_plate_fools;  ///< darker than right, when the camera's meter reads a white plate
  std::vector<WhiteLeft> whites;
  Length confusion;
  LensSetting lens;
  SharpZone sharp;
  Length airy;
  std::optional<DepthWanted> depth;
  std::vector<Motion> motions;
  std::array<Length, 2> frame;  ///< on the focused plane
  std::vector<FramedThing> things;
  Tilt tilt;
  std::vector<OverheadField> overhead;  ///< of a usual flat lay, and of the food with a tenth to spare
};
ExposurePlan plan_exposure(const Description& description, const Scene& scene, const SetReading& set);

}  // namespace fillside
