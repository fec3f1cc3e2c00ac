// What the program says of the camera, of shadows, relief and casts; and one real reading as the anchor.
#include <gmock/gmock.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using nlohmann::json;
using testing::HasSubstr;

class CameraSays : public ProgramTest {
 protected:
  CameraSays() { write("small.toml", kSmallSet); }
  json read(const std::vector<std::string>& words) const {
    const Outcome outcome = run(words + std::vector<std::string>{"--json"} + kRoughly);
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    return json::parse(outcome.out);
  }
};

TEST_F(CameraSays, every_reading_comes_with_settings_that_are_right_for_it) {
  const json exposure = read({"meter", "small.toml"}).at("exposure");
  const double ev = exposure.at("ev100");
  EXPECT_NEAR(
      ev, exposure.at("metered_ev100").get<double>() - exposure.at("close_focus_loss_stops").get<double>(),
      1e-9);
  for (const json& each : exposure.at("equivalents")) {
    const double n = each.at("true_aperture"), t = each.at("shutter_s"), iso = each.at("iso");
    // ISO 2720: EV = log2(N^2 / t) at ISO 100; marked speeds are within a hundredth of their powers of two.
    EXPECT_NEAR(std::log2(n * n / t * 100.0 / iso), ev, 1.0 / 6.0 + 0.01);
  }
}

TEST_F(CameraSays, exposure_is_told_in_words) {
  const std::string out = run(std::vector<std::string>{"meter", "small.toml", "--exposure"} + kRoughly).out;
  for (const char* said :
       {"exposure by the dome  f/5.6", "the same light", "white plate", "sharp  ", "motion  ", "frame  ",
        "overhead  ", "over the table", "covers it", "common practice"})
    EXPECT_THAT(out, HasSubstr(said));
}

TEST_F(CameraSays, an_overhead_camera_is_told_how_high_it_has_to_be) {
  const json exposure =
      read({"meter", "small.toml", "--exposure", "--set", "camera.focal_length=50mm"}).at("exposure");
  // 50 mm (1 + 600 / 36) for 60 x 40 cm; the box, 8 cm square and 6 cm high with a tenth to spare: by its
  // depth.
  EXPECT_NEAR(exposure.at("overhead")[0].at("lens_over_table_m"), 0.05 * (1.0 + 600.0 / 36.0), 1e-9);
  EXPECT_NEAR(exposure.at("overhead")[1].at("lens_over_table_m"), 0.06 + 0.05 * (1.0 + 88.0 / 24.0), 1e-3);
  EXPECT_NEAR(exposure.at("tilt").at("off_straight_down_deg"), 45.0, 1e-6);
}

TEST_F(CameraSays, shadows_relief_and_casts_are_told_when_asked_for) {
  const std::vector<std::string> asked{"meter", "small.toml", "--shadows", "--relief", "--casts"};
  const std::string out = run(asked + kRoughly).out;
  for (const char* said : {"Shadow edges", "box", "Relief", "vector:scalar", "Colour casts against daylight"})
    EXPECT_THAT(out, HasSubstr(said));
  const json document = read(asked);
  EXPECT_GT(document.at("relief").at("vector_to_scalar").at("value"), 1.0);
  EXPECT_LT(document.at("relief").at("vector_to_scalar").at("value"), 4.0);
  EXPECT_EQ(document.at("casts").at("meters").size(), document.at("meters").size());
  EXPECT_FALSE(read({"meter", "small.toml"}).contains("shadows"));
}

TEST_F(CameraSays, an_anchor_returns_its_reading_and_moves_meter_picture_and_map_alike) {
  write("anchored.toml", kSmallSet + "[anchor]\nlux = \"200 lx\"\n");
  const json plain = read({"meter", "small.toml"}), anchored = read({"meter", "anchored.toml"});
  const auto lx = [](const json& document, std::size_t meter) {
    return document.at("meters")[meter].at("total_lx").at("value").get<double>();
  };
  EXPECT_NEAR(lx(anchored, 0), 200.0, 1e-4);
  const double factor = anchored.at("anchor").at("factor");
  for (std::size_t meter = 0; meter < plain.at("meters").size(); ++meter)
    EXPECT_NEAR(lx(anchored, meter) / lx(plain, meter), factor, 1e-4 * factor);
  const json dark = read({"render", "small.toml", "--pixels", "16"}),
             light = read({"render", "anchored.toml", "--pixels", "16"});
  EXPECT_NEAR(std::log2(light.at("metered_lx").get<double>() / dark.at("metered_lx").get<double>()),
              std::log2(factor), 0.05);  // the picture's own meter is read to 0.02 stop
  EXPECT_EQ(light.at("tones").at("clipped_share"), dark.at("tones").at("clipped_share"));
  EXPECT_THAT(run(std::vector<std::string>{"meter", "anchored.toml"} + kRoughly).out,
              HasSubstr("anchored to 200 lx at \"dish up\""));
}

TEST_F(CameraSays, an_unlikely_anchor_is_called_so) {
  write("anchored.toml", kSmallSet + "[anchor]\nlux = \"100 klx\"\n");
  EXPECT_THAT(run(std::vector<std::string>{"meter", "anchored.toml"} + kRoughly).out,
              HasSubstr("That is far"));
}

TEST_F(CameraSays, zebra_marks_what_overexposure_clips) {
  const auto clipped = [&](const std::string& brighter) {
    return read({"render", "small.toml", "--pixels", "24", "--zebra", "--brighter", brighter})
        .at("tones")
        .at("clipped_share")
        .get<double>();
  };
  EXPECT_GT(clipped("4 stops"), 0.3);
  EXPECT_LT(clipped("-2 stops"), 0.1);
}

TEST_F(CameraSays, the_cast_map_tells_of_the_frame_and_what_causes_it) {
  write("red.toml", kSmallSet + "[camera]\nview = \"overhead\"\n");
  const std::vector<std::string> words{"map",     "red.toml", "cast",  "tint",
                                       "--cells", "24",       "--set", "board.fill.colour=#ff8040"};
  const json document = read(words);
  EXPECT_EQ(document.at("maps").at(0).at("unit"), "mired");
  EXPECT_EQ(document.at("maps").at(1).at("unit"), "Duv/1000");
  EXPECT_TRUE(std::filesystem::exists(at("red-cast.png")));
  const json& frame = document.at("cast_over_the_frame");
  EXPECT_GT(frame.at("together").at("mired").at("value"), 0.0);  // an orange board warms
  std::vector<std::string> causes;
  for (const json& cause : frame.at("causes")) causes.push_back(cause.at("via"));
  EXPECT_THAT(causes, testing::Contains("fill"));
  EXPECT_LT(frame.at("mired")[0], frame.at("mired")[1]);
  EXPECT_THAT(run(words + kRoughly).out, HasSubstr("Cast over the frame"));
  EXPECT_FALSE(read({"map", "red.toml", "fill", "--cells", "8"}).contains("cast_over_the_frame"));
}

TEST_F(CameraSays, the_softness_map_is_written) {
  const json document =
      read({"map", "small.toml", "softness", "--cells", "24", "-o", "maps"}).at("maps").at(0);
  EXPECT_EQ(document.at("unit"), "mm");
  EXPECT_TRUE(std::filesystem::exists(at("maps/small-softness.png")));
}

}  // namespace
}  // namespace fillside
