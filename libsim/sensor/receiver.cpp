#include "libsim/sensor/receiver.h"

#include <algorithm>
#include <numbers>

#include "libsim/base/warp.h"

namespace fillside {
namespace {

struct Response {
  const Receiver& receiver;
  const Direction& to_source;

  Rgb operator()(const FlatReceptor&) const { return grey(std::max(0.0, to_source.dot(receiver.normal))); }
  Rgb operator()(const DomedReceptor&) const { return grey(0.5 * (1.0 + to_source.dot(receiver.normal))); }
  Rgb operator()(const SeenSurface& seen) const {
    const Frame frame = frame_around(receiver.normal);
    return scattering_cosine_per_sr(seen.material, frame.to_local(seen.to_viewer), frame.to_local(to_source));
  }
};

struct Draw {
  const Frame frame;
  const Numbers4& u;

  std::optional<DrawnResponse> operator()(const FlatReceptor&) const {
    return DrawnResponse{frame.to_world(draw_cosine_hemisphere(u[0], u[1])), grey(kPi)};
  }
  std::optional<DrawnResponse> operator()(const DomedReceptor&) const {
    return DrawnResponse{frame.to_world(draw_cardioid(u[0], u[1])), grey(2.0 * kPi)};
  }
  std::optional<DrawnResponse> operator()(const SeenSurface& seen) const {
    const auto drawn = draw_scattering(seen.material, frame.to_local(seen.to_viewer), u);
    if (!drawn || drawn->turn != Turn::spread) return std::nullopt;
    return DrawnResponse{frame.to_world(drawn->to_source), drawn->weight};
  }
};

}  // namespace

Rgb response(const Receiver& receiver, const Direction& to_source) {
  return std::visit(Response{receiver, to_source}, receiver.kind);
}

std::optional<DrawnResponse> draw_response(const Receiver& receiver, const Numbers4& u) {
  return std::visit(Draw{frame_around(receiver.normal), u}, receiver.kind);
}

}  // namespace fillside
