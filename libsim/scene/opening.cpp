#include "libsim/scene/opening.h"

#include <cmath>

#include "libsim/geometry/panels.h"

namespace fillside {
namespace {

bool on_a_bar(double along_m, double side_m, int count, double width_m) {
  for (int i = 1; i <= count; ++i)
    if (std::abs(along_m - side_m * i / (count + 1)) < 0.5 * width_m) return true;
  return false;
}

bool covered(const Opening& opening, const Eigen::Vector2d& at) {
  const OpeningCover& c = opening.cover;
  return at.x() < c.left || at.x() > c.right || at.y() < c.bottom || at.y() > c.top;
}

bool barred(const Opening& opening, const Eigen::Vector2d& at) {
  const GlazingBars& bars = opening.bars;
  const double width = 2.0 * opening.rectangle.half_u.norm(), height = 2.0 * opening.rectangle.half_v.norm();
  return on_a_bar(0.5 * (at.x() + 1.0) * width, width, bars.up, bars.width_m) ||
         on_a_bar(0.5 * (at.y() + 1.0) * height, height, bars.across, bars.width_m);
}

/// Share of the whole opening that the bars leave open.
double open_between_bars(const Opening& opening) {
  const GlazingBars& bars = opening.bars;
  const double width = 2.0 * opening.rectangle.half_u.norm(), height = 2.0 * opening.rectangle.half_v.norm();
  return (1.0 - bars.up * bars.width_m / width) * (1.0 - bars.across * bars.width_m / height);
}

/// Share of light from outside that comes through dirt and glass.
double through_glass(const Opening& opening, double cosine) {
  return (1.0 - opening.dirt) * pane_shares(opening.glass, cosine).transmitted;
}

/// The sun's disc is too small for a grid and needs none.
Rgb sun_behind_glass(const Opening& opening, const SunDisc& sun) {
  const Direction outward_normal = -opening.rectangle.normal();
  const double cosine = sun.to_sun.dot(outward_normal);
  return illuminance_by(sun, outward_normal) * through_glass(opening, cosine);
}

/// Illuminance on the room side of the glass by one part of the outside. Midpoint rule over the outer
/// hemisphere in azimuth and sin^2; the horizon of a vertical wall falls on a grid line.
Rgb illuminance_behind_glass(const Opening& opening, const OutsidePart& part) {
  if (const auto* sun = std::get_if<SunDisc>(&part.light)) return sun_behind_glass(opening, *sun);
  constexpr int kRings = 256, kSpokes = 512;
  const Direction outward_normal = -opening.rectangle.normal();
  const Direction across = opening.rectangle.half_u.normalized();
  const Frame frame{across, outward_normal.cross(across), outward_normal};
  Rgb sum = grey(0.0);
  for (int ring = 0; ring < kRings; ++ring) {
    const double sine2 = (ring + 0.5) / kRings, cosine = std::sqrt(1.0 - sine2), sine = std::sqrt(sine2);
    const double passed = through_glass(opening, cosine);
    for (int spoke = 0; spoke < kSpokes; ++spoke) {
      const double angle = 2.0 * kPi * (spoke + 0.5) / kSpokes;
      const Direction outward = frame.to_world({sine * std::cos(angle), sine * std::sin(angle), cosine});
      sum += passed * radiance_of(part, outward);
    }
  }
  return sum * (kPi / (kRings * kSpokes));
}

}  // namespace

Rectangle clear_part(const Opening& opening) {
  const OpeningCover& c = opening.cover;
  const Rectangle& whole = opening.rectangle;
  return {whole.at(0.5 * (c.left + c.right), 0.5 * (c.bottom + c.top)),
          0.5 * (c.right - c.left) * whole.half_u, 0.5 * (c.top - c.bottom) * whole.half_v};
}

bool hidden_by_reveal(const Opening& opening, const Point& on_glass, const Point& seen_from) {
  if (opening.reveal_m <= 0.0) return false;
  const double before_glass_m = (seen_from - opening.rectangle.centre).dot(opening.rectangle.normal());
  if (before_glass_m <= opening.reveal_m) return false;  // in the reveal itself
  const Point in_wall = on_glass + opening.reveal_m / before_glass_m * (seen_from - on_glass);
  return opening.rectangle.coordinates_of(in_wall).cwiseAbs().maxCoeff() > 1.0;
}

Mesh mesh_of_reveal(const Opening& opening) {
  // The edges of a sheet that reaches from the glass into the room instead of behind it: they look at each
  // other.
  return edges_of_sheet(opening.rectangle, -opening.reveal_m);
}

void light_curtain(Opening& opening, const Outside& outside) {
  if (!opening.curtain) return;
  const double between = open_between_bars(opening);
  const Rgb to_and_fro =
      1.0 / (1.0 - opening.curtain->reflectance * diffuse_pane_shares(opening.glass).mirrored);
  for (std::size_t part = 0; part < outside.size(); ++part) {
    const Rgb once = illuminance_behind_glass(opening, outside[part]) * between;
    // What came back from the glass is spread, so its straight share counts as spread as well.
    const Rgb again = once * (to_and_fro - 1.0);
    const ThinCloth& cloth = *opening.curtain;
    opening.curtain_radiance[part] = (once * cloth.diffuse + again * (cloth.diffuse + cloth.direct)) / kPi;
  }
}

Emission emission_of(const Opening& opening, const Outside& outside, const Point& point,
                     const Direction& outward) {
  Emission emission;
  const Eigen::Vector2d at = opening.rectangle.coordinates_of(point);
  const double cosine = -outward.dot(opening.rectangle.normal());
  if (cosine <= 0.0 || covered(opening, at)) return emission;
  if (opening.curtain)
    for (std::size_t part = 0; part < outside.size(); ++part)
      emission.curtain[part] = opening.curtain_radiance[part];
  if (barred(opening, at)) return emission;  // the bars stand outside the curtain: it has spread their shadow
  const double through = through_glass(opening, cosine);
  const Rgb passed = opening.curtain ? Rgb(opening.curtain->direct * through) : grey(through);
  for (std::size_t part = 0; part < outside.size(); ++part)
    emission.straight[part] = passed * radiance_of(outside[part], outward);
  return emission;
}

bool is_curtain_at(const Opening& opening, const Point& point) {
  return opening.curtain && !covered(opening, opening.rectangle.coordinates_of(point));
}

std::optional<Material> room_face(const Opening& opening, const Point& point) {
  const Eigen::Vector2d at = opening.rectangle.coordinates_of(point);
  if (covered(opening, at)) return opening.cover.material;
  // What the cloth lets through to the glass and gets back is left out: a few per cent of its own
  // reflectance.
  if (opening.curtain) return Matte{opening.curtain->reflectance};
  if (barred(opening, at)) return opening.bars.material;
  if (opening.glass.panes == 0) return std::nullopt;
  return opening.glass;
}

}  // namespace fillside
