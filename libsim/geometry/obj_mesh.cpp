#include "libsim/geometry/obj_mesh.h"

#include <fmt/format.h>
#include <tiny_obj_loader.h>

#include <algorithm>
#include <cassert>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

#include "libsim/geometry/obj_faces.h"
#include "libsim/geometry/obj_scan.h"
#include "libsim/geometry/seams.h"

namespace fillside {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const std::string& path, std::string message, std::string remedy) {
  throw SceneError({{{path, 0, 0}, std::move(message), std::move(remedy)}});
}

std::string text_of(const std::string& path) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (!fs::exists(status)) refuse(path, "there is no such file", "paths are relative to the scene's folder");
  if (fs::is_directory(status)) refuse(path, "is a folder", "name an OBJ file in it");
  if (!fs::is_regular_file(status)) refuse(path, "is not a plain file", "name an OBJ file");
  const std::uintmax_t bytes = fs::file_size(path, error);
  if (error) refuse(path, "cannot be read", error.message());
  if (bytes == 0) refuse(path, "is empty", "export the model again");
  if (bytes > kLargestObjBytes)
    refuse(path, fmt::format("is larger than {} MB", kLargestObjBytes / 1'000'000), "reduce the model first");
  std::ifstream stream(path, std::ios::binary);
  std::string text(static_cast<std::size_t>(bytes), '\0');
  if (!stream.read(text.data(), static_cast<std::streamsize>(bytes)))
    refuse(path, "cannot be read", "check its permissions");
  return text;
}

/// Gives the numbered names of a scan as materials, so that a missing .mtl costs no group its name.
class NumberedNames : public tinyobj::MaterialReader {
 public:
  explicit NumberedNames(std::size_t count) : count_(count) {}
  bool operator()(const std::string&, std::vector<tinyobj::material_t>*, std::map<std::string, int>* numbers,
                  std::string*, std::string*) override {
    for (std::size_t k = 0; k < count_; ++k) (*numbers)[fmt::format("n{}", k)] = static_cast<int>(k);
    return true;
  }

 private:
  std::size_t count_;
};

struct Parsed {
  tinyobj::attrib_t corners;
  std::vector<tinyobj::shape_t> shapes;
};

Parsed parsed(const std::string& path, ObjScan& scan) {
  Parsed result;
  std::vector<tinyobj::material_t> materials;
  std::string warnings, errors;
  NumberedNames names(scan.names.size());
  std::istringstream stream("mtllib names\n" + std::move(scan.plain));
  scan.plain.clear();
  constexpr bool kTriangulate = false;  // its own way fails on concave faces
  const bool good = tinyobj::LoadObj(&result.corners, &result.shapes, &materials, &warnings, &errors, &stream,
                                     &names, kTriangulate, false);
  if (!good) refuse(path, "cannot be read: " + errors, "export the model again");
  return result;
}

/// A file's name as a message may show it: no control characters, and not without end.
std::string printable(std::string name) {
  constexpr std::size_t kLongest = 200;
  if (name.size() > kLongest) name = name.substr(0, kLongest) + "...";
  std::ranges::replace_if(
      name, [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }, '?');
  return name;
}

/// Material files that are there, beside the model; a warning for each line that names one that is not.
std::vector<fs::path> material_files(const std::string& path, const ObjScan& scan,
                                     std::vector<Problem>& warnings) {
  std::vector<fs::path> found;
  const auto is_there = [&](const std::string& name) {
    std::error_code error;
    const fs::path file = fs::path(path).parent_path() / name;
    const bool there = !name.empty() && fs::is_regular_file(file, error);
    if (there) found.push_back(file);
    return there;
  };
  for (const Problem& file : scan.material_files) {
    if (is_there(file.message)) continue;
    std::istringstream words(file.message);  // several names in a line are allowed too
    bool all_there = !file.message.empty();
    for (std::string word; words >> word;) all_there = is_there(word) && all_there;
    if (all_there) continue;
    Problem warning = file;
    warning.message = fmt::format("material file '{}' is missing", printable(file.message));
    warning.remedy = "nothing is lost but pictures: only names and map_Kd of materials are used";
    warnings.push_back(std::move(warning));
  }
  return found;
}

Problem not_looked_into(const fs::path& material_file) {
  Problem warning;
  warning.place.file = printable(material_file.string());
  warning.message =
      fmt::format("cannot be looked into, or is larger than {} MB", kLargestMaterialBytes / 1'000'000);
  warning.remedy = "the model goes without the pictures it names";
  warning.severity = Severity::warning;
  return warning;
}

/// The picture file (map_Kd) of each material that has one; a warning for each file that was passed over.
std::map<std::string, std::string> pictures_in(const std::vector<fs::path>& files,
                                               std::vector<Problem>& passed_over) {
  std::map<std::string, std::string> pictures;
  for (const fs::path& file : files) {
    std::error_code error;
    if (fs::file_size(file, error) > kLargestMaterialBytes || error) {
      passed_over.push_back(not_looked_into(file));
      continue;
    }
    std::ifstream stream(file, std::ios::binary);
    std::map<std::string, int> numbers;
    std::vector<tinyobj::material_t> materials;
    std::string warnings, errors;
    tinyobj::LoadMtl(&numbers, &materials, &stream, &warnings, &errors);
    for (const tinyobj::material_t& material : materials) {
      std::string name = material.diffuse_texname;
      std::ranges::replace(name, '\\', '/');
      if (!name.empty()) pictures[material.name] = (file.parent_path() / name).string();
    }
  }
  return pictures;
}

/// tinyobjloader hands a group's name over as "n<K>", ours by number; a material's name goes first.
std::string name_of(const tinyobj::shape_t& shape, int material, const ObjScan& scan) {
  if (material >= 0 && !scan.names[static_cast<std::size_t>(material)].empty())
    return scan.names[static_cast<std::size_t>(material)];
  return shape.name.size() > 1 ? scan.names[std::stoul(shape.name.substr(1))] : std::string();
}

void add_shape(const tinyobj::shape_t& shape, const tinyobj::attrib_t& of, const ObjScan& scan,
               ObjFaces& faces) {
  std::vector<std::uint32_t> corners;
  std::vector<Eigen::Vector2d> on_picture;
  auto index = shape.mesh.indices.begin();
  int material = -2;  // none yet
  std::size_t group = 0;
  for (std::size_t face = 0; face < shape.mesh.num_face_vertices.size(); ++face) {
    if (shape.mesh.material_ids[face] != material) {
      material = shape.mesh.material_ids[face];
      group = faces.group_named(name_of(shape, material, scan));
    }
    corners.clear();
    on_picture.clear();
    for (int i = 0; i < shape.mesh.num_face_vertices[face]; ++i, ++index) {
      corners.push_back(static_cast<std::uint32_t>(index->vertex_index));
      if (index->texcoord_index < 0) continue;
      const auto place = 2 * static_cast<std::size_t>(index->texcoord_index);
      on_picture.emplace_back(of.texcoords[place], of.texcoords[place + 1]);
    }
    if (on_picture.size() < corners.size()) on_picture.clear();
    faces.add(group, corners, on_picture, scan.face_lines[faces.count()]);
  }
}

ObjFaces faces_of(const Parsed& obj, const ObjScan& scan) {
  std::vector<Point> corners;
  for (std::size_t i = 0; i + 2 < obj.corners.vertices.size(); i += 3)
    corners.emplace_back(obj.corners.vertices[i], obj.corners.vertices[i + 1], obj.corners.vertices[i + 2]);
  ObjFaces faces(std::move(corners));
  for (const tinyobj::shape_t& shape : obj.shapes) add_shape(shape, obj.corners, scan, faces);
  return faces;
}

/// Quarter turns, so that handedness stays.
Placement upright(char up_axis, double metres_per_unit) {
  Eigen::Matrix3d turn = Eigen::Matrix3d::Identity();
  if (up_axis == 'y') turn << 1, 0, 0, 0, 0, -1, 0, 1, 0;
  if (up_axis == 'x') turn << 0, 0, -1, 0, 1, 0, 1, 0, 0;
  Placement placement = Placement::Identity();
  placement.linear() = metres_per_unit * turn;
  return placement;
}

/// Warns of an open model; turns a closed one that looks inward.
void check_shell(const std::string& path, const Mesh& whole, ObjLoad& load) {
  const std::size_t open = open_edge_count(whole.triangles);
  const auto warn = [&](std::string message, std::string remedy) {
    load.warnings.push_back({{path, 0, 0}, std::move(message), std::move(remedy), Severity::warning});
  };
  if (open > 0)
    return warn(fmt::format("the model is not closed: {} edges are open", open),
                "light can leak in where it is");
  if (volume_m3(whole) >= 0.0) return;
  warn("all faces look inward and are turned round", "turn them outward in the model, or let it be");
  for (ObjGroup& group : load.groups) {
    for (Triangle& t : group.mesh.triangles) std::swap(t[1], t[2]);
    for (PicturePlaces& places : group.places) std::swap(places[1], places[2]);
  }
}

}  // namespace

ObjLoad load_obj(const std::string& path, double metres_per_unit, char up_axis) {
  assert(metres_per_unit > 0.0 && (up_axis == 'x' || up_axis == 'y' || up_axis == 'z'));
  ObjScan scan = scan_obj(text_of(path), path, kMostTriangles);
  if (any_error(scan.problems)) throw SceneError(std::move(scan.problems));
  if (scan.face_lines.empty()) refuse(path, "has no faces", "export the model as polygons");

  ObjLoad load;
  load.warnings = std::move(scan.problems);
  const auto pictures = pictures_in(material_files(path, scan, load.warnings), load.warnings);
  const Parsed obj = parsed(path, scan);
  const ObjFaces faces = faces_of(obj, scan);
  load.groups = faces.groups();
  if (load.groups.empty()) refuse(path, "has no face with an area", "export the model again");
  faces.add_warnings(path, load.warnings);
  check_shell(path, faces.whole(), load);
  const Placement placement = upright(up_axis, metres_per_unit);
  for (ObjGroup& group : load.groups) {
    group.mesh = moved(std::move(group.mesh), placement);
    if (const auto found = pictures.find(group.name); found != pictures.end()) group.picture = found->second;
  }
  load.warnings = in_order(std::move(load.warnings));
  return load;
}

}  // namespace fillside
