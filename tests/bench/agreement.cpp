// Is the product unbiased? Every kind of light and matter against the textbook walk, as z: the difference
// over the standard error of both. Of 36 honest figures two lie beyond 2, none beyond 4.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/base/parallel.h"
#include "libsim/transport/measure.h"
#include "tests/bench/goal_table.h"
#include "tests/bench/goals.h"
#include "tests/bench/stopwatch.h"
#include "tests/closed_form/sets.h"
#include "tests/plain_walk/plain_walk.h"

namespace fillside::bench {
namespace {

using namespace fillside::tests;

/// A small grey room with a window in y = 0, and a meter place 1.3 m in.
const Point kFar{3.0, 3.0, 2.5}, kPlace{1.5, 1.3, 0.9};
const Rectangle kWindow = sheet({0.9, 0, 0.8}, {2.1, 0, 2.0}, kAway);
const Rectangle kBehind = sheet({1.2, 1.7, 0.7}, {1.8, 1.7, 1.2}, kToWindow),
                kBefore = sheet({1.1, 0.8, 0.7}, {1.9, 0.8, 1.6}, kAway);

SceneParts room(const Opening& opening, Outside outside) {
  SceneParts parts;
  parts.outside = std::move(outside);
  parts.add_emitter("window", opening);
  add_wall(parts, box_around(kFar, {opening.rectangle}), Matte{{0.55, 0.5, 0.45}});
  return parts;
}
Opening bare() {
  Opening opening;
  opening.rectangle = kWindow;
  return opening;
}
Outside even() { return even_outside(candela_per_m2(2000.0)); }

Outside clear(bool with_sun) {
  Daylight light;
  const Direction to_sun = Direction(0.15, -0.8, 0.55).normalized();
  light.sky = {kClearSky, to_sun};
  light.zenith_radiance = grey(zenith_luminance(light.sky, lux(12000)).si);
  if (with_sun) light.sun = SunDisc{to_sun, kMeanSunHalfAngle_rad, 60000.0, grey(1.0)};
  light.ground_radiance = grey(0.2 / kPi) * level_illuminance(light);
  return daylit(light);
}

SceneParts with_board(const Material& material, const Rectangle& where) {
  SceneParts parts = room(bare(), even());
  add_board(parts, where, material);
  return parts;
}

SceneParts curtained(Outside outside) {
  Opening opening = bare();
  opening.glass = {.panes = 1};
  opening.curtain = ThinCloth{grey(0.2), grey(0.3), grey(0.4)};
  return room(opening, std::move(outside));
}

SceneParts with_lamps() {
  Opening opening = bare();
  opening.cover = {1.0, 1.0, 1.0, 1.0, Matte{grey(0.0)}};  // night: the window is shut
  SceneParts parts = room(opening, even());
  const Rgb warm{900.0, 700.0, 300.0};
  parts.add_emitter("ball", LampSphere{{{0.8, 1.5, 1.3}, 0.12}, warm, Matte{grey(0.6)}});
  parts.add_emitter("disc", LampDisc{{{2.4, 1.8, 2.0}, Direction(-1, -0.5, -1).normalized(), 0.2}, warm, {}});
  parts.add_emitter("panel", LightPanel{sheet({1.2, 1.0, 2.2}, {1.6, 1.3, 2.2}, kDown), warm, {}});
  return parts;
}

struct Case {
  const char* kind;
  SceneParts parts;
};
std::vector<Case> cases() {
  const ThinCloth cloth{grey(0.15), grey(0.4), grey(0.3)};
  std::vector<Case> all;
  all.push_back({"window, even outside", room(bare(), even())});
  all.push_back({"sky, clear and uneven", room(bare(), clear(false))});
  all.push_back({"sun on the meter", room(bare(), clear(true))});
  all.push_back({"curtain before an even outside", curtained(even())});
  all.push_back({"curtain in the sun", curtained(clear(true))});
  all.push_back({"white board", with_board(Matte{grey(0.85)}, kBehind)});
  all.push_back({"black board", with_board(Matte{grey(0.04)}, kBehind)});
  all.push_back({"crumpled foil", with_board(Foil{grey(0.85), 0.9, 0.35}, kBehind)});
  all.push_back({"mirror", with_board(Foil{grey(0.85), 1.0, 0.0}, kBehind)});
  all.push_back({"cloth before the window", with_board(cloth, kBefore)});
  all.push_back({"clear pane before the window", with_board(ClearPane{}, kBefore)});
  all.push_back({"lamps: ball, disc, panel", with_lamps()});
  return all;
}

plain::Figure plain_figure(const Scene& scene, const Meter& meter, std::uint64_t samples) {
  constexpr std::size_t kShares = 64;
  const bool flat = std::holds_alternative<FlatReceptor>(meter.receiver.kind);
  std::vector<plain::Figure> shares(kShares);
  parallel_for(kShares, 0, [&](std::size_t i) {
    shares[i] = plain::measure(scene, flat ? plain::Receptor::flat : plain::Receptor::dome,
                               meter.receiver.position, meter.receiver.normal, samples / kShares, kSeed + i);
  });
  plain::Figure all;
  for (const plain::Figure& share : shares) {
    all.lx += share.lx / kShares;
    all.standard_error += std::pow(share.standard_error / kShares, 2);
  }
  all.standard_error = std::sqrt(all.standard_error);
  return all;
}

}  // namespace

void print_agreement(unsigned long long samples) {
  print_heading(fmt::format("Agreement with the textbook walk of {} million samples", samples / 1'000'000));
  print_row({"light or matter", "meter", "product, lx", "textbook, lx", "difference", "error of both", "z",
             "product's error", "textbook's time to it"});
  print_rule(9);
  double squares = 0.0, furthest = 0.0;
  int count = 0;
  for (Case& each : cases()) {
    const Scene scene(std::move(each.parts));
    for (const Meter& meter : {flat_meter(kPlace, kUp, "flat, up"), flat_meter(kPlace, kAway, "flat, away"),
                               dome_meter(kPlace, kToWindow, "dome, to the window")}) {
      const auto ours_samples =
          static_cast<std::uint32_t>(std::clamp<unsigned long long>(samples / 256, 256, 65536));
      const Stopwatch our_watch;
      const Estimate ours = measure(scene, meter, {.samples = ours_samples, .seed = kSeed}).total();
      const double ours_s = our_watch.all_processors_s();
      const Stopwatch their_watch;
      const plain::Figure theirs = plain_figure(scene, meter, samples);
      const double theirs_s = their_watch.all_processors_s();
      const double ours_error = ours.standard_error() / ours.value();
      // The textbook's error falls as one over the square root of its time, exactly.
      const double same_s = theirs_s * std::pow(theirs.standard_error / theirs.lx / ours_error, 2);
      const double error = std::hypot(ours.standard_error(), theirs.standard_error);
      const double z = (ours.value() - theirs.lx) / error;
      squares += z * z, furthest = std::max(furthest, std::abs(z)), ++count;
      print_row({each.kind, meter.name, fmt::format("{:.3f}", ours.value()), fmt::format("{:.3f}", theirs.lx),
                 fmt::format("{:+.3f} %", 100.0 * (ours.value() / theirs.lx - 1.0)),
                 fmt::format("{:.3f} %", 100.0 * error / theirs.lx), fmt::format("{:+.2f}", z),
                 fmt::format("{:.3f} % in {:.2f} s", 100.0 * ours_error, ours_s),
                 fmt::format("{:.1f} s, {:.1f} x", same_s, same_s / ours_s)});
    }
  }
  fmt::print("\n{} figures; root mean square of z {:.2f} (1 when all is well), furthest {:.2f}.\n", count,
             std::sqrt(squares / count), furthest);
}

}  // namespace fillside::bench
