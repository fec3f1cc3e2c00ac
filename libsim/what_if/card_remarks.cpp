#include "libsim/what_if/card_remarks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/matter/catalogue.h"

namespace fillside {
namespace {

std::string cm(double length_m) { return fmt::format("{:.1f} cm", 100.0 * length_m + 0.0); }

/// "12.8 cm right, 0.0 cm back".
std::string by_sides(const Point& p) {
  return fmt::format("{} {}, {} {}", cm(std::abs(p.x())), p.x() < -0.0005 ? "left" : "right",
                     cm(std::abs(p.y())), p.y() < -0.0005 ? "front" : "back");
}

/// "3:00, 12.8 cm".
std::string by_clock(const Point& p) {
  const double distance_m = std::hypot(p.x(), p.y());
  if (distance_m < 0.0005) return "the cross";
  const int minutes = static_cast<int>(std::lround(60.0 * clock_of({p.x(), p.y(), 0.0}).hours)) % 720;
  return fmt::format("{}:{:02}, {}", minutes < 60 ? 12 : minutes / 60, minutes % 60, cm(distance_m));
}

std::string other_way(const Spot& spot) {
  const Point foot = place_spot(spot, Point::Zero());
  return spot.x || spot.y ? by_clock(foot) : by_sides(foot);
}

/// A stock sheet of that size, and which side is level.
std::string stock_of(double width_m, double height_m) {
  for (const CataloguedSheet& stock : catalogued_sheets()) {
    const bool level =
        std::abs(stock.long_side_m - width_m) < 5e-4 && std::abs(stock.short_side_m - height_m) < 5e-4;
    const bool upright =
        std::abs(stock.short_side_m - width_m) < 5e-4 && std::abs(stock.long_side_m - height_m) < 5e-4;
    if (level) return fmt::format("{}, long side level", stock.name);
    if (upright) return fmt::format("{}, on its short side", stock.name);
  }
  return {};
}

std::string upper_edge(const Rectangle& front) {
  const Point middle = front.at(0, 1);
  return fmt::format("upper edge's middle {} above the table top, over {}", cm(middle.z()), by_clock(middle));
}

/// Of a board or cloth.
template <class S>
std::string remark_on_sheet(const S& sheet, const Rectangle& front, std::string_view label) {
  if (label == "size") return stock_of(sheet.width->si, sheet.height->si);
  if (label == "at") return other_way(sheet.spot) + "; the middle of its lower edge";
  if (label == "leans")
    return fmt::format("{}{}", std::abs(sheet.lean.si) < 1e-3 ? "upright; " : "", upper_edge(front));
  return {};
}

}  // namespace

std::string remark_on(const PlacedSet& set, const WindowSection& window, std::string_view label) {
  if (label != "opening") return {};
  const double sill_m = set.room.floor_m + window.sill->si;
  const auto from_table = [](double z_m) {
    return fmt::format("{} {} the table top", cm(std::abs(z_m)), z_m < 0.0 ? "below" : "above");
  };
  return fmt::format("sill {}, head {}", from_table(sill_m), from_table(sill_m + window.height->si));
}

std::string remark_on(const PlacedSet&, const TableSection& t, std::string_view label) {
  if (label != "middle") return {};
  const double half_x = 0.5 * t.width.si, half_y = 0.5 * t.depth.si;
  return fmt::format("its edges from the cross: left {}, right {}, front {}, back {}", cm(half_x - t.x.si),
                     cm(half_x + t.x.si), cm(half_y - t.y.si), cm(half_y + t.y.si));
}

std::string remark_on(const PlacedSet& set, const ItemSection& item, std::string_view label) {
  if (label == "at") return other_way(item.spot);
  if (label != "what") return {};
  const auto& items = set.placing.items();
  const auto placed = std::ranges::find(items, &item, &PlacedItem::section);
  if (placed == items.end()) return {};
  const Eigen::Vector3d size = placed->bounds.high - placed->bounds.low;
  return fmt::format("as it stands {} x {}, {} high", cm(size.x()), cm(size.y()), cm(size.z()));
}

std::string remark_on(const PlacedSet& set, const BoardSection& board, std::string_view label) {
  const auto fronts = place_board(board, set.description.table.height.si);
  if (!board.fold) return remark_on_sheet(board, fronts.front(), label);
  if (label == "size") return "laid flat; each wing is half as wide";
  if (label == "at") return other_way(board.spot) + "; the foot of the fold";
  if (label == "leans") return "upright";
  return {};
}

std::string remark_on(const PlacedSet& set, const DiffuserSection& cloth, std::string_view label) {
  return remark_on_sheet(cloth, place_diffuser(cloth, set.description.table.height.si), label);
}

std::string remark_on(const PlacedSet&, const LampSection& lamp, std::string_view label) {
  return label == "at" ? other_way(lamp.spot) + "; below its middle" : std::string();
}

std::string remark_on(const PlacedSet& set, const CameraSection& camera, std::string_view label) {
  const double above_level = elevation_of(camera);
  if (label == "sensor") return camera.portrait ? "portrait" : "landscape";
  if (label != "lens" || !camera.look_z) return {};
  const Point lens = camera_looks_at(camera, set.subject_top_m) + camera.distance.si * toward_camera(camera);
  return fmt::format("lens {} above the table top, {} above the floor, over {}; tilted {:.1f} deg down",
                     cm(lens.z()), cm(lens.z() - set.room.floor_m), by_clock(lens), above_level / kDegree);
}

}  // namespace fillside
