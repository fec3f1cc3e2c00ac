// Two windows and a glazed door in three walls, from the words of a scene to their rows.
#include <gtest/gtest.h>

#include "libsim/scene/build.h"
#include "libsim/scene/load.h"
#include "tests/closed_form/agreement.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {
namespace {

const std::string kRoom =
    "[room]\nwalls = 0.0\nceiling = 0.0\nfloor = 0.0\n[table]\nsurface = \"black velvet\"\nreflectance = "
    "0.0\n"
    "[[window]]\nname = \"left\"\nclock = 9\nreveal = \"15 cm\"\n"
    "[[window]]\nname = \"back\"\nclock = 12\nsize = \"wide\"\ncurtain = \"sheer\"\n"
    "[[window]]\nname = \"door\"\nclock = 3\nsize = \"patio door\"\nbars_across = 2\nbars_up = 1\ndirt = "
    "0.1\n";

Description three_windows() {
  std::vector<Problem> warnings;
  return load_description_text(kRoom, "three windows", {}, warnings);
}

Estimate of_window(const Measurement& m, const std::string& name) {
  return m.sum(
      0, [&](std::size_t source, std::size_t) { return m.names().sources[source].name.starts_with(name); });
}

TEST(SeveralWindows, have_rows_that_add_up) {
  const Scene scene = build(three_windows()).scene;
  const Measurement all = measure(scene, flat_meter({0, 0, 0.1}, kUp), kSome);
  double sum = 0.0;
  for (const std::string name : {"left", "back", "door"}) {
    EXPECT_GT(of_window(all, name).value(), 10.0) << name;
    sum += of_window(all, name).value();
  }
  EXPECT_NEAR(sum, all.total().value(), 1e-6 * sum);
}

TEST(SeveralWindows, each_give_alone_what_their_rows_say) {
  const Description together = three_windows();
  const Sensor sensor = flat_meter({0, 0, 0.1}, Direction(0, 0.6, 0.8));
  const Measurement all = measure(build(together).scene, sensor, kSome);
  for (const std::string name : {"left", "back", "door"}) {
    Description alone = together;
    for (WindowSection& window : alone.windows) window.used = window.name == name;
    const Measurement one = measure(build(alone).scene, sensor, kSome);
    // Other windows' glass mirrors a little: only what comes straight or by the own curtain must be the same.
    const auto own = [&](const Measurement& m) {
      return m.sum(0, [&](std::size_t source, std::size_t via) {
        const std::string way = m.names().via_name(via);
        return m.names().sources[source].name.starts_with(name) &&
               (way == "straight" || way == name + " curtain");
      });
    };
    EXPECT_TRUE(agrees(own(one), own(all).value(), 0.001)) << name;
    EXPECT_GT(own(one).value(), 0.9 * one.total().value()) << name;
  }
}

}  // namespace
}  // namespace fillside::tests
