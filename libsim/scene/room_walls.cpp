#include "libsim/scene/room_walls.h"

namespace fillside {
namespace {

struct StockWindow {
  std::string_view name;
  double width_m, height_m, sill_m;
};
constexpr std::array kStockWindows{StockWindow{"small", 0.6, 0.9, 0.9}, StockWindow{"medium", 0.9, 1.2, 0.9},
                                   StockWindow{"wide", 1.5, 1.2, 0.9},
                                   StockWindow{"patio door", 1.8, 2.0, 0.1}};

StockWindow stock_of(const WindowSection& window) {
  for (const StockWindow& stock : kStockWindows)
    if (stock.name == window.size) return stock;
  return kStockWindows[1];
}

}  // namespace

std::array<WallSpan, 4> walls_of(const Description& description) {
  const WindowSection first = description.windows.empty() ? WindowSection{} : description.windows.front();
  const RoomSection& room = description.room;
  const Direction ahead = to_clock(first.clock);
  const Direction right(ahead.y(), -ahead.x(), 0.0);
  const double near_m = first.distance.value_or(centimetres(80)).si, far_m = room.depth.si - near_m;
  const double left_m = room.along.si - 0.5 * room.width.si, right_m = room.along.si + 0.5 * room.width.si;
  return {WallSpan{ahead, near_m, left_m, right_m}, WallSpan{right, right_m, -near_m, far_m},
          WallSpan{-ahead, far_m, -right_m, -left_m}, WallSpan{-right, -left_m, -far_m, near_m}};
}

std::size_t wall_of(const std::array<WallSpan, 4>& walls, const WindowSection& window) {
  const Direction to_window = to_clock(window.clock);
  std::size_t best = 0;
  for (std::size_t i = 1; i < walls.size(); ++i)
    if (walls[i].to_wall.dot(to_window) > walls[best].to_wall.dot(to_window) + 1e-9) best = i;
  return best;
}

OpeningSpan opening_of(const WindowSection& window) {
  const StockWindow stock = stock_of(window);
  const double width_m = window.width ? window.width->si : stock.width_m;
  const double height_m = window.height ? window.height->si : stock.height_m;
  const double sill_m = window.sill ? window.sill->si : stock.sill_m;
  return {window.along.si - 0.5 * width_m, window.along.si + 0.5 * width_m, sill_m, sill_m + height_m};
}

}  // namespace fillside
