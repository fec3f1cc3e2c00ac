// What is asked for and would not fit is refused before any of it is measured.
#include "libsim/transport/measured_size.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "libsim/base/limits.h"
#include "libsim/scene/build.h"
#include "libsim/scene/load.h"
#include "libsim/transport/measurement.h"

namespace fillside {
namespace {

using testing::HasSubstr;

Scene plain_scene() {
  std::vector<Problem> warnings;
  return std::move(build(load_description_text("[[window]]\n", "plain.toml", {}, warnings)).scene);
}

std::string refusal(const Scene& scene, const MeasuredSize& size) {
  try {
    refuse_what_is_too_large(scene, size);
  } catch (const SceneError& error) {
    return error.what();
  }
  return "";
}

TEST(MeasuredSize, IsThatOfAMeasurementsRows) {
  const Scene scene = plain_scene();
  const Measurement one(scene, "a pixel", 1, 1, 1);
  const auto rows = static_cast<double>(one.source_count() * (one.via_count() + 1));
  EXPECT_EQ(measured_bytes(scene, {.columns = 10, .rows = 7, .replicates = 3, .copies = 2}),
            rows * 3 * sizeof(float) * 10 * 7 * 3 * 2);
}

TEST(MeasuredSize, WhatDoesNotFitIsRefusedWithASizeThatDoes) {
  const Scene scene = plain_scene();
  MeasuredSize size{.what = "map", .elements = "cells", .columns = 100'000, .rows = 50'000};
  const std::string said = refusal(scene, size);
  EXPECT_THAT(said, HasSubstr("map: error: 100000 x 50000 cells"));
  EXPECT_THAT(said, HasSubstr("the limit is 4 GB; ask for at most "));
  const auto at_most = said.rfind("at most ") + 8;
  size.columns = std::stoi(said.substr(at_most));
  size.rows = size.columns / 2;
  EXPECT_EQ(refusal(scene, size), "");
  EXPECT_GT(measured_bytes(scene, size), 0.99 * static_cast<double>(kMostMeasuredBytes));
}

}  // namespace
}  // namespace fillside
