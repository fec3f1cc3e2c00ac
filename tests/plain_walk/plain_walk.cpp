#include "tests/plain_walk/plain_walk.h"

#include <cmath>
#include <functional>
#include <random>

namespace fillside::plain {
namespace {

// A step off a surface; longer far out, where the ray caster's single precision would swallow it.
double off_m(const Point& at) { return std::max(1e-5, 1e-6 * at.cwiseAbs().maxCoeff()); }

class Walk {
 public:
  Walk(const Scene& scene, std::uint64_t seed) : scene_(scene), dice_(seed) {}

  struct Reading {
    Rgb straight, turned;
    int first_object;  ///< what turned it, in a set of matte things; -1: nothing
  };
  Reading reading(Receptor receptor, const Point& at, const Direction& faces);
  /// Radiance that arrives from that way. `counted`: light straight from emitters has been taken already.
  Rgb along(Point from, Direction way, bool counted);

 private:
  using Response = std::function<Rgb(const Direction& to_source)>;

  struct OnEmitter {
    Point point;
    Direction normal;
    double area_m2;
  };

  double throw_one() { return uniform_(dice_); }
  Direction around(const Direction& normal);
  Direction anywhere();
  Rgb straight_share(const Point& from, const Point& to) const;
  Emission shown(std::size_t emitter, const Point& point, const Direction& outward) const;
  Rgb emitted(std::size_t emitter, const Point& point, const Direction& outward) const;
  Rgb emitted_but_sun(std::size_t emitter, const Point& point, const Direction& outward) const;
  OnEmitter point_on(const Emitter& emitter);
  Rgb from_emitters(const Point& at, const Response& response);
  Rgb from_sun(const Point& at, const Response& response, const SunDisc& sun, std::size_t part);

  const Scene& scene_;
  std::mt19937_64 dice_;
  int first_object_ = -1;  ///< first met by `along`
  std::uniform_real_distribution<double> uniform_{0.0, 1.0};
};

Direction Walk::anywhere() {
  const double z = 2.0 * throw_one() - 1.0, angle = 2.0 * kPi * throw_one(), sine = std::sqrt(1.0 - z * z);
  return {sine * std::cos(angle), sine * std::sin(angle), z};
}

/// In proportion to the cosine: a point on the unit sphere that rests on the surface.
Direction Walk::around(const Direction& normal) { return (normal + (1.0 - 1e-9) * anywhere()).normalized(); }

/// Two panes' worth of interfaces and more: Stokes, "On the Intensity of the Light reflected from or
/// transmitted through a Pile of Plates", Proc. Royal Society 11, 1862 (citation from memory): (1 - r) / (1 +
/// (2 N - 1) r) for N plates without absorption.
double through_glass(const ClearPane& pane, double cosine) {
  if (pane.panes == 0) return 1.0;
  const double in = std::acos(std::min(1.0, cosine)), inside = std::asin(std::sin(in) / pane.index);
  double share = 0.0;
  for (const bool across : {true, false}) {
    double r = std::pow((pane.index - 1.0) / (pane.index + 1.0), 2);
    if (in > 1e-6)
      r = across ? std::pow(std::sin(in - inside) / std::sin(in + inside), 2)
                 : std::pow(std::tan(in - inside) / std::tan(in + inside), 2);
    share += 0.5 * (1.0 - r) / (1.0 + (2 * pane.panes - 1) * r);
  }
  return share;
}

Rgb passing(const Material& material, double cosine) {
  if (const auto* cloth = std::get_if<ThinCloth>(&material)) return cloth->direct;
  if (const auto* pane = std::get_if<ClearPane>(&material)) return grey(through_glass(*pane, cosine));
  return grey(0.0);
}

/// What of the light between two points passes straight; anything solid takes it all.
Rgb Walk::straight_share(const Point& from, const Point& to) const {
  const Direction way = (to - from).normalized();
  Rgb share = grey(1.0);
  const double length_m = (to - from).dot(way) - off_m(to);
  if (length_m > 0.0 && scene_.caster().blocked({from, way, length_m}, kAllOpaque)) return grey(0.0);
  if (!scene_.has_see_through()) return share;
  for (Point at = from; share.maxCoeff() > 0.0;) {
    const double left_m = (to - at).dot(way) - off_m(to);
    const auto hit = scene_.caster().first_hit({at, way, left_m}, kEverything);
    if (left_m <= 0.0 || !hit) return share;
    const Surface& surface = scene_.surfaces()[hit->surface];
    share *= surface.emitter == kNone ? passing(surface.material, std::abs(way.dot(hit->normal))) : grey(0.0);
    at = hit->position + off_m(hit->position) * way;
  }
  return share;
}

Rgb all_of(const Emission& emission) {
  Rgb sum = grey(0.0);
  for (std::size_t part = 0; part < kMostOutsideParts; ++part)
    sum += emission.straight[part] + emission.curtain[part];
  return sum;
}

Emission Walk::shown(std::size_t emitter, const Point& point, const Direction& outward) const {
  return emission_of(scene_.emitters()[emitter], scene_.outside(), point, outward);
}

Rgb Walk::emitted(std::size_t emitter, const Point& point, const Direction& outward) const {
  return all_of(shown(emitter, point, outward));
}

/// The sun is aimed at on its own: points drawn on a window would find it once in ten thousand.
Rgb Walk::emitted_but_sun(std::size_t emitter, const Point& point, const Direction& outward) const {
  Emission emission = shown(emitter, point, outward);
  for (std::size_t part = 0; part < scene_.outside().size(); ++part)
    if (std::holds_alternative<SunDisc>(scene_.outside()[part].light)) emission.straight[part] = grey(0.0);
  return all_of(emission);
}

/// A direction even in the cone about the sun, by height on its axis (Archimedes, On the Sphere and
/// Cylinder), and the window that the ray meets.
Rgb Walk::from_sun(const Point& at, const Response& response, const SunDisc& sun, std::size_t part) {
  const double rim = std::cos(sun.half_angle_rad), height = 1.0 - throw_one() * (1.0 - rim);
  const double angle = 2.0 * kPi * throw_one(), sine = std::sqrt(1.0 - height * height);
  const Direction across = sun.to_sun.unitOrthogonal(), third = sun.to_sun.cross(across);
  const Direction way =
      (height * sun.to_sun + sine * (std::cos(angle) * across + std::sin(angle) * third)).normalized();
  Rgb sum = grey(0.0);
  for (std::size_t e = 0; e < scene_.emitters().size(); ++e) {
    const auto* opening = std::get_if<Opening>(&scene_.emitters()[e].kind);
    if (!opening || way.dot(opening->rectangle.normal()) >= 0.0) continue;
    const Rectangle& window = opening->rectangle;
    const Point goal = at + way * ((window.centre - at).dot(window.normal()) / way.dot(window.normal()));
    const Eigen::Vector3d off = goal - window.centre;
    const bool inside = std::abs(off.dot(window.half_u)) <= window.half_u.squaredNorm() &&
                        std::abs(off.dot(window.half_v)) <= window.half_v.squaredNorm();
    if (inside && (goal - at).dot(way) > off_m(at))
      sum += response(way) * shown(e, goal, way).straight[part] * straight_share(at + off_m(at) * way, goal);
  }
  return sum * (2.0 * kPi * (1.0 - rim));
}

/// Anywhere on it, by area; of a disc, anywhere on the square around it, which is dark beside the disc.
Walk::OnEmitter Walk::point_on(const Emitter& emitter) {
  if (const auto* lamp = std::get_if<LampSphere>(&emitter.kind)) {
    const Direction way = anywhere();
    return {lamp->sphere.centre + lamp->sphere.radius_m * way, way, lamp->sphere.area_m2()};
  }
  const Rectangle flat = rectangle_of(emitter);
  return {flat.at(2.0 * throw_one() - 1.0, 2.0 * throw_one() - 1.0), flat.normal(), flat.area_m2()};
}

Rgb Walk::from_emitters(const Point& at, const Response& response) {
  Rgb sum = grey(0.0);
  for (std::size_t e = 0; e < scene_.emitters().size(); ++e) {
    const auto [goal, normal, area_m2] = point_on(scene_.emitters()[e]);
    const Direction way = (goal - at).normalized();
    const double leaving = -way.dot(normal);
    if (leaving <= 0.0) continue;
    const double sr = area_m2 * leaving / (goal - at).squaredNorm();
    const Rgb weight = response(way) * sr;
    if (weight.maxCoeff() > 0.0)
      sum += weight * emitted_but_sun(e, goal, way) * straight_share(at + off_m(at) * way, goal);
  }
  for (std::size_t part = 0; part < scene_.outside().size(); ++part)
    if (const auto* sun = std::get_if<SunDisc>(&scene_.outside()[part].light))
      sum += from_sun(at, response, *sun, part);
  return sum;
}

Rgb Walk::along(Point from, Direction way, bool counted) {
  Rgb sum = grey(0.0), weight = grey(1.0);
  first_object_ = -1;
  for (;;) {
    const auto hit = scene_.caster().first_hit({from + off_m(from) * way, way}, kEverything);
    if (!hit) return sum;
    const Surface& surface = scene_.surfaces()[hit->surface];
    if (first_object_ < 0) first_object_ = surface.object;
    Material material = surface.material;
    if (surface.emitter != kNone) {
      const auto e = static_cast<std::size_t>(surface.emitter);
      if (!counted) sum += weight * emitted(e, hit->position, way);
      const auto face = room_face(scene_.emitters()[e], hit->position);
      if (!face) return sum;
      material = *face;
    }
    from = hit->position;
    const Direction back = way.dot(hit->normal) < 0.0 ? hit->normal : Direction(-hit->normal);
    if (const auto* pane = std::get_if<ClearPane>(&material)) {
      // Without absorption what does not pass is mirrored.
      if (throw_one() < through_glass(*pane, -way.dot(back))) continue;
      way = (way - 2.0 * way.dot(back) * back).normalized();
      counted = false;
      continue;
    }
    const auto* foil = std::get_if<Foil>(&material);
    if (foil && foil->roughness > 0.0) {
      // The lobe is the library's; that it is drawn from, and weighed against shadow rays, is not.
      const Frame frame = frame_around(back);
      const Direction to_viewer = frame.to_local(-way);
      const auto lobe = [&](const Direction& to_source) {
        return scattering_cosine_per_sr(material, to_viewer, frame.to_local(to_source));
      };
      sum += weight * from_emitters(from, lobe);
      way = around(back);
      weight *= lobe(way) * (kPi / way.dot(back));
      counted = true;
    } else if (foil) {
      weight *= foil->reflectance;
      way = (way - 2.0 * way.dot(back) * back).normalized();
      counted = false;
    } else {
      Rgb returned = grey(0.0), through = grey(0.0), direct = grey(0.0);
      if (const auto* matte = std::get_if<Matte>(&material)) returned = matte->albedo;
      if (const auto* cloth = std::get_if<ThinCloth>(&material))
        returned = cloth->reflectance, through = cloth->diffuse, direct = cloth->direct;
      sum += weight * from_emitters(from, [&](const Direction& to_source) {
               const double cosine = to_source.dot(back);
               return Rgb((cosine > 0.0 ? returned : through) * std::abs(cosine) / kPi);
             });
      // One of the three ways, in proportion to its share.
      const double a = returned.maxCoeff(), b = through.maxCoeff(), c = direct.maxCoeff(), all = a + b + c;
      const double chance = all * throw_one();
      if (all <= 0.0) return sum;
      if (chance < a)
        weight *= returned * (all / a), way = around(back);
      else if (chance < a + b)
        weight *= through * (all / b), way = around(-back);
      else
        weight *= direct * (all / c);
      // The spread ways have their light straight from emitters; for the direct one it stands as it stood.
      if (chance < a + b) counted = true;
    }
    const double survives = std::min(0.95, weight.maxCoeff());
    if (!(throw_one() < survives)) return sum;
    weight /= survives;
  }
}

Walk::Reading Walk::reading(Receptor receptor, const Point& at, const Direction& faces) {
  const bool flat = receptor == Receptor::flat;
  const Response response = [&](const Direction& way) {
    const double cosine = way.dot(faces);
    return grey(flat ? std::max(0.0, cosine) : 0.5 * (1.0 + cosine));
  };
  const Direction way = flat ? around(faces) : anywhere();
  const Rgb weight = flat ? grey(kPi) : Rgb(4.0 * kPi * response(way));
  const Rgb straight = from_emitters(at, response);
  const Rgb turned = weight * along(at, way, true);
  return {straight, turned, first_object_};
}

/// Mean and standard error of independent samples.
class Tally {
 public:
  void add(double sample) {
    sum_ += sample;
    squares_ += sample * sample;
  }
  Figure figure(std::uint64_t samples) const {
    const auto n = static_cast<double>(samples);
    const double mean = sum_ / n;
    return {mean, std::sqrt(std::max(0.0, squares_ / n - mean * mean) / n)};
  }

 private:
  double sum_ = 0.0, squares_ = 0.0;
};

}  // namespace

Figure measure(const Scene& scene, Receptor receptor, const Point& at, const Direction& faces,
               std::uint64_t samples, std::uint64_t seed) {
  return measure_parts(scene, receptor, at, faces, 0, samples, seed).total;
}

Parts measure_parts(const Scene& scene, Receptor receptor, const Point& at, const Direction& faces,
                    std::size_t object, std::uint64_t samples, std::uint64_t seed) {
  Walk walk(scene, seed);
  Tally straight, by_object, rest, total;
  for (std::uint64_t i = 0; i < samples; ++i) {
    const Walk::Reading reading = walk.reading(receptor, at, faces);
    const double by_itself = luminance(reading.straight), turned = luminance(reading.turned);
    straight.add(by_itself);
    (reading.first_object == static_cast<int>(object) ? by_object : rest).add(turned);
    total.add(by_itself + turned);
  }
  return {straight.figure(samples), by_object.figure(samples), rest.figure(samples), total.figure(samples)};
}

Figure look(const Scene& scene, const std::function<Ray(std::uint64_t sample)>& ray, std::uint64_t samples,
            std::uint64_t seed) {
  Walk walk(scene, seed);
  Tally radiance;
  for (std::uint64_t i = 0; i < samples; ++i) {
    const Ray from_lens = ray(i);
    radiance.add(luminance(walk.along(from_lens.origin, from_lens.direction, false)));
  }
  return radiance.figure(samples);
}

}  // namespace fillside::plain
