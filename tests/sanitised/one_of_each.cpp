// One of each kind of work, on several threads, for builds in which the compiler watches every access: memory
// that is not ours, numbers that have no value, two threads at one place. The figures are judged elsewhere;
// here nothing may be reported, and the same work on one thread must give the same light.
#include <cmath>
#include <iostream>

#include "libsim/fillside.h"

namespace {

using namespace fillside;

constexpr const char* kSet = R"toml(
[daylight]
sky = "clear"
sun_altitude = "30 deg"
sun_off_window = "10 deg"
[[window]]
clock = 9
distance = "80 cm"
curtain = "sheer"
[table]
reflectance = 0.4
[[food]]
kind = "bowl"
liquid = "iced tea"
[[prop]]
kind = "fork"
clock = 4
distance = "20 cm"
[[board]]
sheet = "A4"
clock = 3
distance = "30 cm"
surface = "kitchen foil"
[[lamp]]
shape = "sphere"
lumens = "800 lm"
on = true
clock = 1
distance = "70 cm"
diameter = "12 cm"
)toml";

struct Light {
  double shadow_lx, map_lx, picture_cd;
  bool operator==(const Light&) const = default;
};

Light measured(const Description& set, const Scene& scene, int threads) {
  Effort effort;
  effort.precision = stops(1.0);
  effort.threads = threads;
  const SetReading reading = read_set(set, scene, effort);
  const auto plane = map_plane(set, "table", toward_window(scene, 0), 6);
  const MapReading map = read_map(scene, *plane, effort);
  Camera camera = camera_of(set, scene);
  camera.columns = 16, camera.rows = 12;
  const PictureReading picture = take_picture(scene, camera, effort);
  return {reading.readings.back().total_lx.value(), map.measurement.total(0).value(),
          picture.measurement.total(0).value()};
}

}  // namespace

// With any word: the light by the books as well, which takes a minute or two.
int main(int count, char**) {
  if (count > 1)
    for (const LightCheck& check : light_checks({.seed = 1, .threads = 4}))
      if (!holds(check)) return std::cerr << "does not hold: " << check.what << '\n', 1;
  std::vector<Problem> warnings;
  const Description set = load_description_text(kSet, "one of each", {}, warnings);
  const Built built = build(set);
  if (!(measured(set, built.scene, 4) == measured(set, built.scene, 1)))
    return std::cerr << "threads differ\n", 1;
  std::cout << "one of each: nothing to report\n";
}
