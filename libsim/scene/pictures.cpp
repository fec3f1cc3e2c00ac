#include "libsim/scene/pictures.h"

#include <fmt/format.h>

#include <filesystem>

#include "libsim/matter/picture_file.h"
#include "libsim/scene/made_once.h"

namespace fillside {
namespace {

void check_picture(const FaultList& faults, std::string_view key, const Description& description,
                   const PictureOn& picture) {
  const std::string width_key = fmt::format("{}_width", key);
  if (picture.file.empty()) {
    if (picture.width)
      faults.error(width_key, fmt::format("{} is given, but there is no {}", width_key, key),
                   fmt::format("name its file with {}", key));
    return;
  }
  const PictureLoad load = fault_of_picture_path(path_beside(description, picture.file));
  if (!load.fault.empty())
    faults.error(key, fmt::format("{}: {} {}", key, in_quotes(picture.file), load.fault), load.remedy);
}

/// A picture is a matte surface of its own.
void check_nothing_else(const FaultList& faults, const PictureOn& picture) {
  if (picture.file.empty()) return;
  for (const std::string_view key : {"surface", "colour", "gloss", "specular_share", "roughness"})
    if (faults.said(key))
      faults.error(key, fmt::format("both picture and {} are given", key),
                   "leave one out: a picture brings its own colours, and is matte");
}

}  // namespace

std::string path_beside(const Description& description, const std::string& file) {
  return (std::filesystem::path(description.file).parent_path() / file).string();
}

void check_pictures(const Description& d, std::vector<Problem>& problems) {
  check_picture(FaultList(d.room, "room", problems), "wall_picture", d, d.room.wall_picture);
  const FaultList table(d.table, "table", problems);
  check_picture(table, "picture", d, d.table.picture);
  check_nothing_else(table, d.table.picture);
  for (const BoardSection& board : d.boards) {
    if (!board.used) continue;
    const FaultList faults(board, heading_text("board", tame(board.name)), problems);
    check_picture(faults, "picture", d, board.picture);
    check_nothing_else(faults, board.picture);
  }
}

std::shared_ptr<const Pattern> read_picture(const FaultList& faults, std::string_view key,
                                            const Description& description, const PictureOn& picture,
                                            std::optional<double> reflectance) {
  const std::string path = path_beside(description, picture.file);
  const PictureLoad load =
      description.made ? description.made->picture(path, reflectance) : load_picture(path, reflectance);
  if (!load.pattern)
    faults.error(key, fmt::format("{}: {} {}", key, in_quotes(picture.file), load.fault), load.remedy);
  return load.pattern;
}

std::string bytes_of_pictures(const Description& d) {
  std::string bytes;
  const auto add = [&](const PictureOn& picture) {
    if (!picture.file.empty()) bytes += picture_bytes(path_beside(d, picture.file));
  };
  add(d.room.wall_picture);
  if (d.table.used) add(d.table.picture);
  for (const BoardSection& board : d.boards)
    if (board.used) add(board.picture);
  return bytes;
}

}  // namespace fillside
