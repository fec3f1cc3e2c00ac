#include "libsim/geometry/obj_mesh.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "libsim/base/limits.h"
#include "libsim/geometry/item.h"

namespace fillside {
namespace {

using testing::HasSubstr;

/// A folder for one test, removed with it.
class ObjMesh : public testing::Test {
 protected:
  void SetUp() override {
    const auto* info = testing::UnitTest::GetInstance()->current_test_info();
    folder_ = std::filesystem::path(testing::TempDir()) / fmt::format("fillside_obj_{}", info->name());
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directories(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  std::string file(const std::string& text, const std::string& name = "model.obj") const {
    const std::string path = (folder_ / name).string();
    std::ofstream(path, std::ios::binary) << text;
    return path;
  }
  ObjLoad load(const std::string& text, double metres_per_unit = 1.0, char up = 'z') const {
    return load_obj(file(text), metres_per_unit, up);
  }
  std::vector<Problem> problems_of(const std::string& text) const {
    try {
      load(text);
    } catch (const SceneError& error) {
      return error.problems();
    }
    return {};
  }

  std::filesystem::path folder_;
};

const std::string kCubeCorners =
    "v 0 0 0\nv 1 0 0\nv 1 1 0\nv 0 1 0\n"
    "v 0 0 1\nv 1 0 1\nv 1 1 1\nv 0 1 1\n";
const std::string kCubeFaces = "f 4 3 2 1\nf 5 6 7 8\nf 1 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n";

/// As long as is wanted, without taking room on the disk.
void stretch(const std::string& path, std::size_t bytes) { std::filesystem::resize_file(path, bytes); }

TEST_F(ObjMesh, AFileOverTheLimitIsRefusedUnread) {
  const std::string path = file("v 0 0 0\n");
  stretch(path, kLargestObjBytes + 1);
  try {
    load_obj(path, 1.0, 'z');
    FAIL() << "taken";
  } catch (const SceneError& error) {
    EXPECT_EQ(error.problems().at(0).message, "is larger than 400 MB");
  }
}

TEST_F(ObjMesh, AMaterialFileOverTheLimitIsPassedOverWithAWarning) {
  stretch(file("newmtl crust\nmap_Kd crust.png\n", "model.mtl"), kLargestMaterialBytes + 1);
  const ObjLoad cube = load("mtllib model.mtl\n" + kCubeCorners + "usemtl crust\n" + kCubeFaces);
  ASSERT_EQ(cube.warnings.size(), 1U);
  EXPECT_THAT(cube.warnings[0].place.file, HasSubstr("model.mtl"));
  EXPECT_THAT(cube.warnings[0].message, HasSubstr("larger than 10 MB"));
  EXPECT_EQ(cube.groups.at(0).picture, "");
}

TEST_F(ObjMesh, ReadsQuadsAsAClosedCube) {
  const ObjLoad cube = load(kCubeCorners + kCubeFaces);
  ASSERT_EQ(cube.groups.size(), 1U);
  const Mesh& mesh = cube.groups[0].mesh;
  EXPECT_EQ(cube.groups[0].name, "");
  EXPECT_EQ(mesh.corners.size(), 8U);
  EXPECT_EQ(mesh.triangles.size(), 12U);
  EXPECT_TRUE(is_watertight(mesh));
  EXPECT_NEAR(volume_m3(mesh), 1.0, 1e-12);
  EXPECT_TRUE(cube.warnings.empty());
}

TEST_F(ObjMesh, ReadsTheSameCubeHoweverItIsWritten) {
  std::string crlf = kCubeCorners + kCubeFaces;
  for (std::size_t at = 0; (at = crlf.find('\n', at)) != crlf.npos; at += 2) crlf.replace(at, 1, "\r\n");
  const std::string backward =
      "f -5 -6 -7 -8\nf -4 -3 -2 -1\nf -8 -7 -3 -4\nf -7 -6 -2 -3\nf -6 -5 -1 -2\nf -5 -8 -4 -1\n";
  const std::string continued = "f 4 3 \\\n 2 1\nf 5 6 7 8\nf 1\\\r\n 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8";
  const std::string with_others =
      "vt 0 0\nvn 0 0 1\nf 4/1/1 3/1/1 2/1/1 1/1/1\nf 5//1 6//1 7//1 8//1\nf 1/1 2/1 6/1 5/1\n"
      "f 2/-1/-1 3/-1/-1 7/-1/-1 6/-1/-1\nf 3 4 8 7 # back\n  f\t4 1 5 8  \n";
  for (const std::string& text :
       {crlf, "\xEF\xBB\xBF" + kCubeCorners + kCubeFaces, kCubeCorners + backward, kCubeCorners + continued,
        kCubeCorners + with_others, kCubeFaces + kCubeCorners,
        "# made by hand\n\ns off\n" + kCubeCorners + kCubeFaces}) {
    const ObjLoad cube = load(text);
    ASSERT_EQ(cube.groups.size(), 1U) << text;
    EXPECT_TRUE(is_watertight(cube.groups[0].mesh)) << text;
    EXPECT_NEAR(volume_m3(cube.groups[0].mesh), 1.0, 1e-12) << text;
    EXPECT_TRUE(cube.warnings.empty()) << text;
  }
}

TEST_F(ObjMesh, ReadsVerticesWithWeightColourOrPlusSign) {
  const ObjLoad loaded = load("v +0 0 0 1\nv 1e0 0 0 0.5 0.5 0.5\nv 0 1.0 0\nf 1 2 3\n");
  EXPECT_NEAR(area_m2(loaded.groups[0].mesh), 0.5, 1e-12);
}

/// An L of area 3, a cross of area 5, and a comb; fans from their first corners would cover more.
TEST_F(ObjMesh, CutsConcavePolygonsWithinTheirOutline) {
  const std::string ell = "v 0 0 0\nv 2 0 0\nv 2 1 0\nv 1 1 0\nv 1 2 0\nv 0 2 0\nf 2 3 4 5 6 1\n";
  EXPECT_NEAR(area_m2(load(ell).groups[0].mesh), 3.0, 1e-12);
  const std::string cross =
      "v 1 0 0\nv 2 0 0\nv 2 1 0\nv 3 1 0\nv 3 2 0\nv 2 2 0\nv 2 3 0\nv 1 3 0\nv 1 2 0\nv 0 2 0\nv 0 1 0\nv "
      "1 1 0\n"
      "f 1 2 3 4 5 6 7 8 9 10 11 12\n";
  EXPECT_NEAR(area_m2(load(cross).groups[0].mesh), 5.0, 1e-12);
  std::string comb = "v 20 -1 0\nv 0 -1 0\n", face = "f 1 2";  // ten teeth, seen from below
  for (int i = 0; i < 10; ++i) {
    comb += fmt::format("v {} 0 0\nv {} 5 0\n", 2 * i, 2 * i + 1);
    face += fmt::format(" {} {}", 3 + 2 * i, 4 + 2 * i);
  }
  comb += "v 20 0 0\n";
  const ObjLoad loaded = load(comb + face + " 23\n");
  EXPECT_EQ(loaded.groups[0].mesh.triangles.size(), 21U);
  EXPECT_NEAR(area_m2(loaded.groups[0].mesh), 20.0 + 10 * 5.0, 1e-9);
}

TEST_F(ObjMesh, TakesADiscOfTwoHundredAndFiftyFiveCorners) {
  std::string text, face = "f";
  for (int i = 0; i < 255; ++i) {
    text += fmt::format("v {} {} 0\n", std::cos(2 * kPi * i / 255), std::sin(2 * kPi * i / 255));
    face += fmt::format(" {}", i + 1);
  }
  const Mesh disc = load(text + face + "\n").groups[0].mesh;
  EXPECT_EQ(disc.triangles.size(), 253U);
  EXPECT_NEAR(area_m2(disc), 0.5 * 255 * std::sin(2 * kPi / 255), 1e-6);
}

TEST_F(ObjMesh, NamesGroupsByMaterialElseByGroupAndKeepsSpacesInNames) {
  const ObjLoad loaded = load(kCubeCorners +
                              "o loaf\nf 4 3 2 1\nusemtl rye crust\nf 5 6 7 8\nf 1 2 6 5\n"
                              "g heel of it\nusemtl\nf 2 3 7 6\nusemtl rye crust\nf 3 4 8 7\nf 4 1 5 8\n");
  ASSERT_EQ(loaded.groups.size(), 3U);
  EXPECT_EQ(loaded.groups[0].name, "loaf");
  EXPECT_EQ(loaded.groups[1].name, "rye crust");
  EXPECT_EQ(loaded.groups[2].name, "heel of it");
  EXPECT_EQ(loaded.groups[1].mesh.triangles.size(), 8U);
  EXPECT_TRUE(loaded.warnings.empty());  // closed as a whole, though no group is
}

TEST_F(ObjMesh, AMissingMaterialFileIsOneWarningAndCostsNoName) {
  const ObjLoad loaded = load("mtllib gone.mtl\n" + kCubeCorners + "usemtl crust\n" + kCubeFaces);
  ASSERT_EQ(loaded.warnings.size(), 1U);
  EXPECT_THAT(to_text(loaded.warnings[0]),
              HasSubstr("model.obj:1:8: warning: material file 'gone.mtl' is missing"));
  EXPECT_EQ(loaded.groups[0].name, "crust");
}

TEST_F(ObjMesh, AMaterialFileThatIsThereIsNoWarning) {
  file("newmtl crust\n", "my crust.mtl");
  file("newmtl a\n", "a.mtl");
  EXPECT_TRUE(load("mtllib my crust.mtl\n" + kCubeCorners + kCubeFaces).warnings.empty());
  EXPECT_TRUE(load("mtllib a.mtl a.mtl\n" + kCubeCorners + kCubeFaces).warnings.empty());
  EXPECT_EQ(load("mtllib a.mtl b.mtl\n" + kCubeCorners + kCubeFaces).warnings.size(), 1U);
}

TEST_F(ObjMesh, CornersWrittenTwiceAlongASeamAreOne) {
  const ObjLoad loaded = load(kCubeCorners + "v 0 0 1\nv 1 0 1\nv 1 1 1\nv 0 1 1\n" +
                              "f 4 3 2 1\nf 9 10 11 12\nf 1 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n");
  EXPECT_TRUE(loaded.warnings.empty());
  EXPECT_EQ(loaded.groups[0].mesh.corners.size(), 8U);
}

TEST_F(ObjMesh, AnOpenModelIsLoadedWithTheNumberOfOpenEdges) {
  const ObjLoad loaded = load(kCubeCorners + "f 4 3 2 1\nf 1 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n");
  ASSERT_EQ(loaded.warnings.size(), 1U);
  EXPECT_EQ(loaded.warnings[0].severity, Severity::warning);
  EXPECT_THAT(loaded.warnings[0].message, HasSubstr("4 edges are open"));
  EXPECT_NEAR(area_m2(loaded.groups[0].mesh), 5.0, 1e-12);
}

TEST_F(ObjMesh, FacesWithoutAreaAreLeftOutAndCounted) {
  const ObjLoad loaded = load(kCubeCorners + kCubeFaces + "f 1 1 2\nf 1 2 2 1\nf 3 3 3\n");
  ASSERT_EQ(loaded.warnings.size(), 1U);
  EXPECT_EQ(loaded.warnings[0].place.line, 15);
  EXPECT_THAT(loaded.warnings[0].message, HasSubstr("3 faces without area"));
  EXPECT_EQ(loaded.groups[0].mesh.triangles.size(), 12U);
}

TEST_F(ObjMesh, AnOutlineThatCrossesItselfIsAWarning) {
  const ObjLoad loaded = load("v 0 0 0\nv 2 2 0\nv 2 0 0\nv 0 1 0\nf 1 2 3 4\n");
  ASSERT_EQ(loaded.warnings.size(), 2U);  // and it is open
  EXPECT_THAT(to_text(loaded.warnings[1]),
              HasSubstr("model.obj:5:1: warning: this face's outline crosses itself"));
}

TEST_F(ObjMesh, AClosedModelThatLooksInwardIsTurnedRound) {
  const ObjLoad loaded =
      load(kCubeCorners + "f 1 2 3 4\nf 8 7 6 5\nf 5 6 2 1\nf 6 7 3 2\nf 7 8 4 3\nf 8 5 1 4\n");
  EXPECT_NEAR(volume_m3(loaded.groups[0].mesh), 1.0, 1e-12);
  ASSERT_EQ(loaded.warnings.size(), 1U);
  EXPECT_THAT(loaded.warnings[0].message, HasSubstr("inward"));
}

TEST_F(ObjMesh, LinesAndPointsAreLeftOutWithAWarning) {
  const ObjLoad loaded = load(kCubeCorners + "l 1 2\np 1\n" + kCubeFaces);
  ASSERT_EQ(loaded.warnings.size(), 1U);
  EXPECT_EQ(loaded.warnings[0].place.line, 9);
  EXPECT_THAT(loaded.warnings[0].message, HasSubstr("2 lines, points"));
}

TEST_F(ObjMesh, StandsUprightAndScaledWithoutBeingMirrored) {
  const std::string box =
      "v 0 0 0\nv 1 0 0\nv 1 2 0\nv 0 2 0\nv 0 0 3\nv 1 0 3\nv 1 2 3\nv 0 2 3\n" + kCubeFaces;
  const auto extent = [&](char up) {
    const Mesh mesh = load(box, 0.01, up).groups[0].mesh;
    EXPECT_NEAR(volume_m3(mesh), 6e-6, 1e-12) << up;
    const Bounds bounds = bounds_of(mesh);
    EXPECT_NEAR(bounds.low.z(), 0.0, 1e-12) << up;
    return Point(bounds.high - bounds.low);
  };
  EXPECT_TRUE(extent('z').isApprox(Point(0.01, 0.02, 0.03), 1e-6));
  EXPECT_TRUE(extent('y').isApprox(Point(0.01, 0.03, 0.02), 1e-6));
  EXPECT_TRUE(extent('x').isApprox(Point(0.03, 0.02, 0.01), 1e-6));
}

TEST_F(ObjMesh, ReadsAnOwnStandInBackAsItWas) {
  ItemShape shape;
  shape.kind = "loaf";
  const Mesh loaf = make_item(shape).parts[0].mesh;
  std::string text;
  for (const Point& p : loaf.corners) text += fmt::format("v {} {} {}\n", p.x(), p.y(), p.z());
  for (const Triangle& t : loaf.triangles) text += fmt::format("f {} {} {}\n", t[0] + 1, t[1] + 1, t[2] + 1);
  const ObjLoad loaded = load(text);
  EXPECT_TRUE(loaded.warnings.empty());
  EXPECT_TRUE(is_watertight(loaded.groups[0].mesh));
  EXPECT_NEAR(volume_m3(loaded.groups[0].mesh), volume_m3(loaf), 1e-6 * volume_m3(loaf));
}

struct Broken {
  std::string text;
  int line, column;
  std::string message;
};

TEST_F(ObjMesh, RefusesBrokenFilesAtTheExactPlace) {
  const std::string tri = "v 0 0 0\nv 1 0 0\nv 0 1 0\n";
  std::string long_face = "f";
  for (int i = 0; i < 256; ++i) long_face += fmt::format(" {}", i % 3 + 1);
  const std::vector<Broken> table{
      {"v 0 0 0\nv 1 x 0\nv 0 1 0\nf 1 2 3\n", 2, 5, "'x' is not a number"},
      {"v 0 0 0\nv 1 0,5 0\nv 0 1 0\nf 1 2 3\n", 2, 5, "'0,5' is not a number"},
      {"v 0 0 0\nv 1 0 nan\nv 0 1 0\nf 1 2 3\n", 2, 7, "'nan' is not a number"},
      {"v inf 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n", 1, 3, "'inf' is out of range"},
      {"v 0 -1e39 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n", 1, 5, "'-1e39' is out of range"},
      {"v 0 1e999 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n", 1, 5, "'1e999' is out of range"},
      {"v 0 0 0\nv 1 0\nv 0 1 0\nf 1 2 3\n", 2, 1, "a vertex of 2 numbers"},
      {"v 0 0 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n", 1, 1, "a vertex of 5 numbers"},
      {"v 0 0 0\nv 1 0 0f\nv 0 1 0\nf 1 2 3\n", 2, 7, "'0f' is not a number"},
      {tri + "f 1 2 4\n", 4, 7, "there is no vertex 4"},
      {tri + "f 1 -4 2\n", 4, 5, "there is no vertex -4"},
      {tri + "f 1 0 2\n", 4, 5, "an index of 0"},
      {tri + "f 1 2 12345678901\n", 4, 7, "index 12345678901 is out of range"},
      {tri + "f 1 2 99999999999999999999\n", 4, 7, "index 99999999999999999999 is out of range"},
      {tri + "f 1 2\n", 4, 1, "a face of 2 corners"},
      {tri + "f\n", 4, 1, "a face of 0 corners"},
      {tri + "f 1 2 3.5\n", 4, 7, "'3.5' is not a corner of a face"},
      {tri + "f 1/ 2 3\n", 4, 3, "'1/' is not a corner of a face"},
      {tri + "vt 0 0\nvn 0 0 1\nf 1/1/1/1 2 3\n", 6, 3, "'1/1/1/1' is not a corner of a face"},
      {tri + "f 1/1 2 3\n", 4, 3, "there is no texture place 1"},
      {tri + "f 1//2 2 3\n", 4, 3, "there is no normal 2"},
      {tri + long_face + "\n", 4, 1, "a face of 256 corners"},
      {tri + "f 1 2 \\\n  7\n", 5, 3, "there is no vertex 7"},
      {"\xEF\xBB\xBFv 0 0 0\r\nv 1 0 q\r\nv 0 1 0\r\nf 1 2 3\r\n", 2, 7, "'q' is not a number"},
      {"vn 0 0\n" + tri + "f 1 2 3\n", 1, 1, "'vn' with 2 numbers"},
      {"vt a\n" + tri + "f 1 2 3\n", 1, 4, "'a' is not a number"},
      {"Dear reader,\n" + tri + "f 1 2 3\n", 1, 1, "'Dear' is not a word of an OBJ file"},
      {tri + "F 1 2 3\n", 4, 1, "'F' is not a word of an OBJ file"},
      {std::string("\x7F"
                   "ELF\0\1\1",
                   7) +
           "\n" + tri + "f 1 2 3\n",
       1, 1, "'?ELF"},
      {tri, 0, 0, "has no faces"},
      {"# nothing\n", 0, 0, "has no faces"},
      {"", 0, 0, "is empty"},
      {tri + "f 1 1 1\n", 0, 0, "has no face with an area"},
  };
  for (const Broken& broken : table) {
    SCOPED_TRACE(broken.text);
    const std::vector<Problem> problems = problems_of(broken.text);
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].place.file, (folder_ / "model.obj").string());
    EXPECT_EQ(problems[0].place.line, broken.line);
    EXPECT_EQ(problems[0].place.column, broken.column);
    EXPECT_EQ(problems[0].severity, Severity::error);
    EXPECT_THAT(problems[0].message, HasSubstr(broken.message));
  }
}

TEST_F(ObjMesh, ListsEveryErrorWithItsLine) {
  const std::vector<Problem> problems = problems_of("v 0 0 x\nv 1 y 0\nv 0 1 0\nf 1 2 9\nf 0 2 3\n");
  ASSERT_EQ(problems.size(), 4U);
  EXPECT_EQ(problems[2].place.line, 4);
  EXPECT_EQ(problems[2].source_line, "f 1 2 9");
}

TEST_F(ObjMesh, StopsListingWhenATextIsNoObjAtAll) {
  std::string text;
  for (int i = 0; i < 5000; ++i) text += "lorem ipsum\n";
  EXPECT_EQ(problems_of(text).size(), 50U);
}

TEST_F(ObjMesh, RefusesAFolderAndAMissingFile) {
  const auto message_of = [](const std::string& path) {
    try {
      load_obj(path, 1.0, 'z');
    } catch (const SceneError& error) {
      return error.problems().front().message;
    }
    return std::string("loaded");
  };
  EXPECT_EQ(message_of(folder_.string()), "is a folder");
  EXPECT_EQ(message_of((folder_ / "none.obj").string()), "there is no such file");
}

}  // namespace
}  // namespace fillside
