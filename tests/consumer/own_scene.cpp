// A scene put together from parts, without a scene file: a bright panel over a meter. Lambert's law for a
// disc or rectangle of even luminance gives what the meter must read.
#include <cmath>
#include <iostream>
#include <numbers>

#include "libsim/fillside.h"

int main() {
  using namespace fillside;
  SceneParts parts;
  LampDisc lamp;  // 20 cm across, 1 m over the meter, 1000 cd/m2
  lamp.disc = {{0.0, 0.0, 1.0}, {0.0, 0.0, -1.0}, 0.1};
  lamp.radiance = grey(1000.0);
  parts.add_emitter("lamp", lamp);
  const Scene scene(std::move(parts));

  const Meter meter{"below", {{0.0, 0.0, 0.0}, {0.0, 0.0, 1.0}, FlatReceptor{}}, true};
  const Estimate lx = measure(scene, meter, {.samples = 256}).total();
  const double known_lx = std::numbers::pi * 1000.0 * 0.01 / (1.0 + 0.01);  // pi L r^2 / (r^2 + h^2)
  std::cout << lx.value() << " +- " << lx.half_width_95() << " lx; by formula " << known_lx << '\n';
  return std::abs(lx.value() - known_lx) < 0.005 * known_lx ? 0 : 1;
}
