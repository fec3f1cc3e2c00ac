// Pictures on surfaces, against what one can say beforehand: with walls, ceiling and floor black and nothing
// on the table, the light on the table is the window's alone, whatever the table looks like; and what the
// table sends back is Lambert's reflectance times that light.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "libsim/scene/build.h"
#include "libsim/scene/canonical.h"
#include "libsim/scene/load.h"
#include "libsim/sensor/instruments.h"
#include "libsim/transport/measure.h"
#include "libsim/writers/png.h"

namespace fillside {
namespace {

constexpr std::uint8_t kDark = 90, kLight = 188;

/// Two by two squares of 16 pixels; the lower left one is dark.
std::string checker() {
  Picture picture = blank_picture(32, 32);
  for (int y = 0; y < 32; ++y)
    for (int x = 0; x < 32; ++x)
      for (std::size_t channel = 0; channel < 3; ++channel)
        picture.samples[picture.first_sample(x, y) + channel] =
            (x / 16 + (31 - y) / 16) % 2 == 0 ? kDark : kLight;
  return png_bytes(picture);
}

class PictureOnTable : public testing::Test {
 protected:
  PictureOnTable() {
    const auto* info = testing::UnitTest::GetInstance()->current_test_info();
    folder_ = std::filesystem::path(testing::TempDir()) / (std::string("fillside_on_table_") + info->name());
    std::filesystem::create_directories(folder_);
    write("checker.png", checker());
  }
  ~PictureOnTable() override { std::filesystem::remove_all(folder_); }
  void write(const std::string& name, const std::string& bytes) const {
    std::ofstream((folder_ / name).string(), std::ios::binary) << bytes;
  }
  Description described(const std::string& table, const std::string& more = {}) const {
    const std::string text = R"(
[room]
walls = 0
ceiling = 0
floor = 0
[[window]]
clock = 9
distance = "80 cm"
glass = "none"
[camera]
view = "overhead"
distance = "1.05 m"
focal_length = "50 mm"
pinhole = true
[table]
width = "80 cm"
depth = "80 cm"
)" + table + more;
    std::vector<Problem> warnings;
    return load_description_text(text, (folder_ / "table.toml").string(), {}, warnings);
  }
  Scene built(const std::string& table, const std::string& more = {}) const {
    return std::move(build(described(table, more)).scene);
  }
  std::filesystem::path folder_;
};

const std::string kCheckered = "picture = \"checker.png\"\npicture_width = \"8 cm\"\n";
const std::string kHalf = "reflectance = 0.5\n";

TEST_F(PictureOnTable, a_checker_is_seen_at_its_pixels) {
  // 36 mm of sensor and a 50 mm lens at 1.05 m see 36 x (1050 - 50) / 50 = 720 mm by 480 mm (thin lens):
  // 180 by 120 pixels of 4 mm. The squares are 40 mm, counted from the table's corner at (-400, -400) mm.
  const Scene plain = built(kHalf), checkered = built(kCheckered);
  Camera camera = camera_of(described(kHalf), plain);
  camera.columns = 180, camera.rows = 120;
  const Budget budget{.samples = 1, .replicates = 2, .seed = 3};
  const Measurement even = measure(plain, camera, budget), seen = measure(checkered, camera, budget);
  const double dark = srgb_decoded(kDark / 255.0) / 0.5, light = srgb_decoded(kLight / 255.0) / 0.5;
  std::size_t checked = 0;
  for (int row = 0; row < 120; ++row)
    for (int column = 0; column < 180; ++column) {
      const double x_mm = -360.0 + 4.0 * (column + 0.5), y_mm = 240.0 - 4.0 * (row + 0.5);
      const double in_x = std::fmod(x_mm + 400.0, 40.0), in_y = std::fmod(y_mm + 400.0, 40.0);
      // Where a pixel's ray, up to 2 mm off its middle, meets no blend of two of the picture's pixels.
      if (std::min({in_x, in_y, 40.0 - in_x, 40.0 - in_y}) < 4.0) continue;
      const int squares = static_cast<int>((x_mm + 400.0) / 40.0) + static_cast<int>((y_mm + 400.0) / 40.0);
      const auto pixel = static_cast<std::size_t>(row * 180 + column);
      const double ratio = seen.total(pixel).value() / even.total(pixel).value();
      ASSERT_NEAR(ratio, squares % 2 == 0 ? dark : light, 1e-4) << column << ", " << row;
      ++checked;
    }
  EXPECT_GT(checked, 10000U);
}

Meter looking_down() {
  Meter meter{.name = "down", .receiver = {}, .subject_there = true};
  meter.receiver.position = {0.0, 0.0, 0.25};
  meter.receiver.normal = {0.0, 0.0, -1.0};
  return meter;
}

TEST_F(PictureOnTable, a_meter_over_it_reads_its_mean_reflectance) {
  const double mean = 0.5 * (srgb_decoded(kDark / 255.0) + srgb_decoded(kLight / 255.0));
  const Scene checkered = built(kCheckered), even = built("reflectance = " + std::to_string(mean) + "\n");
  const Budget budget{.samples = 4096, .seed = 5};
  const Estimate over_picture = measure(checkered, looking_down(), budget).total(0),
                 over_even = measure(even, looking_down(), budget).total(0);
  const double error = std::hypot(over_picture.standard_error(), over_even.standard_error());
  EXPECT_LT(error, 0.01 * over_even.value());
  EXPECT_NEAR(over_picture.value(), over_even.value(), 4.0 * error);
}

TEST_F(PictureOnTable, the_kept_light_of_its_cells_is_that_of_its_mean) {
  const Scene checkered = built(kCheckered);
  const KeptLight kept(checkered, kEverything, {.samples = 64, .replicates = 8, .seed = 2});
  const Estimate cached =
      measure(checkered, looking_down(), {.samples = 2048, .replicates = 8, .seed = 7, .kept = &kept})
          .total(0);
  const Estimate walked =
      measure(checkered, looking_down(), {.samples = 2048, .replicates = 8, .seed = 8}).total(0);
  const double error = std::hypot(cached.standard_error(), walked.standard_error());
  EXPECT_LT(error, 0.02 * walked.value());
  EXPECT_NEAR(cached.value(), walked.value(), 4.0 * error);
}

TEST_F(PictureOnTable, the_picture_of_a_model_follows_its_corners) {
  // A level quad, 40 cm wide, with the picture turned by a quarter: u runs away from the camera.
  write("quad.mtl", "newmtl print\nKd 1 1 1\nmap_Kd checker.png\n");
  write("quad.obj",
        "mtllib quad.mtl\nv -0.2 -0.2 0.1\nv 0.2 -0.2 0.1\nv 0.2 0.2 0.1\nv -0.2 0.2 0.1\n"
        "vt 0 1\nvt 0 0\nvt 1 0\nvt 1 1\nusemtl print\nf 1/1 2/2 3/3 4/4\n");
  write("half.obj", "v -0.2 -0.2 0.1\nv 0.2 -0.2 0.1\nv 0.2 0.2 0.1\nv -0.2 0.2 0.1\nf 1 2 3 4\n");
  const std::string no_table = "used = false\n";
  const std::string mesh = "[[mesh]]\nup = \"z\"\nname = \"quad\"\nfile = ";
  const Scene printed = built(no_table, mesh + "\"quad.obj\"\n"),
              even = built(no_table, mesh + "\"half.obj\"\nreflectance = 0.5\n");
  const double dark = srgb_decoded(kDark / 255.0), light = srgb_decoded(kLight / 255.0);
  const auto seen = [&](const Scene& scene, double x, double y) {
    const auto hit = scene.caster().first_hit({{x, y, 1.0}, {0.0, 0.0, -1.0}}, kEverything);
    const Surface& surface = scene.surfaces()[hit->surface];
    const Material there =
        material_at(surface, {hit->position, hit->triangle, hit->along_second, hit->along_third});
    return albedo(there, Direction::UnitZ())[1];
  };
  EXPECT_NEAR(seen(even, -0.1, -0.1), 0.5, 1e-6);
  // Corner (-0.2, -0.2) has u = 0, v = 1; along x v falls, along y u grows. Dark: u and v in the same half.
  EXPECT_NEAR(seen(printed, -0.12, -0.11), light, 1e-6);
  EXPECT_NEAR(seen(printed, 0.12, -0.11), dark, 1e-6);
  EXPECT_NEAR(seen(printed, -0.12, 0.11), dark, 1e-6);
  EXPECT_NEAR(seen(printed, 0.12, 0.11), light, 1e-6);
}

TEST_F(PictureOnTable, a_surface_that_the_scene_gives_goes_before_the_models_picture) {
  write("quad.mtl", "newmtl print\nmap_Kd none.png\n");
  write("quad.obj",
        "mtllib quad.mtl\nv 0 0 0\nv 1 0 0\nv 1 1 0\nvt 0 0\nvt 1 0\nvt 1 1\nusemtl print\nf 1/1 2/2 3/3\n");
  const std::string mesh = "[[mesh]]\nscale = 0.1\nfile = \"quad.obj\"\n";
  EXPECT_THROW(built(kHalf, mesh), SceneError);
  EXPECT_NO_THROW(built(kHalf, mesh + "surface = \"linen\"\n"));
  EXPECT_NO_THROW(built(kHalf, mesh + "groups = { print = \"linen\" }\n"));
}

TEST_F(PictureOnTable, a_broken_picture_is_a_problem_with_its_place) {
  write("checker.png", checker().substr(0, 60));
  try {
    built(kCheckered);
    FAIL() << "half a PNG was taken";
  } catch (const SceneError& error) {
    ASSERT_EQ(error.problems().size(), 1U);
    const Problem& problem = error.problems().front();
    EXPECT_EQ(problem.place.line, 18);
    EXPECT_EQ(problem.source_line, "picture = \"checker.png\"");
    EXPECT_NE(problem.message.find("table: picture: \"checker.png\" is a broken PNG file"), std::string::npos)
        << problem.message;
  }
}

TEST_F(PictureOnTable, its_bytes_count_in_the_scenes_hash) {
  const std::string before = scene_hash(described(kCheckered));
  EXPECT_EQ(scene_hash(described(kCheckered)), before);
  write("checker.png", png_bytes(blank_picture(2, 2, 100)));
  EXPECT_NE(scene_hash(described(kCheckered)), before);
}

TEST_F(PictureOnTable, is_written_back_as_it_was_read) {
  const std::string text = canonical_scene(described(kCheckered), false);
  EXPECT_NE(text.find("picture = \"checker.png\"\npicture_width = \"8 cm\"\n"), std::string::npos) << text;
}

TEST_F(PictureOnTable, walls_and_boards_take_pictures_too) {
  const Scene scene = built(kHalf,
                            "[[board]]\nname = \"backdrop\"\nsheet = \"A2\"\nclock = 12\ndistance = \"30 "
                            "cm\"\npicture = \"checker.png\"\npicture_width = \"10 cm\"\n");
  std::size_t printed = 0;
  for (const Surface& surface : scene.surfaces()) printed += surface.print ? 1 : 0;
  EXPECT_EQ(printed, 1U);  // the front; back and edges are bare board
  std::vector<Problem> warnings;
  const Scene papered =
      std::move(build(load_description_text("[room]\nwalls = 0.5\nwall_picture = "
                                            "\"checker.png\"\nwall_picture_width = \"1 m\"\n[[window]]\n",
                                            (folder_ / "walls.toml").string(), {}, warnings))
                    .scene);
  printed = 0;
  for (const Surface& surface : papered.surfaces())
    if (surface.print) {
      EXPECT_NEAR(luminance(surface.print->pattern->mean()), 0.5, 1e-9);
      ++printed;
    }
  EXPECT_EQ(printed, 4U);
}

}  // namespace
}  // namespace fillside
