#include "libsim/view/anchor.h"

#include <fmt/format.h>

#include <cassert>
#include <cmath>

#include "libsim/base/space.h"
#include "libsim/scene/usual_meters.h"
#include "libsim/sensor/dials.h"
#include "libsim/view/exposure.h"

namespace fillside {
namespace {

bool is_reflected(const AnchorSection& anchor) { return anchor.reading == "reflected"; }

Settings settings_of(const AnchorSection& anchor) {
  return {*anchor.aperture, dial_shutter(*anchor.shutter), anchor.iso.value_or(100)};
}

std::string text_of(const AnchorSection& anchor) {
  if (anchor.lux) return to_text(*anchor.lux);
  const double reflectance = anchor.reflectance.value_or(0.18);
  return to_text(settings_of(anchor)) +
         (is_reflected(anchor) ? fmt::format(", off a card of {:.0f} %", 100.0 * reflectance) : ", incident");
}

}  // namespace

Stops Anchor::moved() const { return stops(std::log2(factor)); }

bool Anchor::is_plausible() const { return std::abs(moved().si) <= kPlausible.si; }

std::string anchor_meter(const AnchorSection& anchor) { return anchor.meter.value_or(std::string(kDishUp)); }

Illuminance anchored_illuminance(const AnchorSection& anchor, ReadingKind kind) {
  assert(anchor.says_anything());
  if (anchor.lux) return *anchor.lux;
  const double light = std::exp2(ev100_of(settings_of(anchor))) / 100.0;
  if (is_reflected(anchor)) return lux(kPi * kReflectedConstant * light / anchor.reflectance.value_or(0.18));
  return lux((kind == ReadingKind::dome ? kDomeConstant : kFlatConstant) * light);
}

Anchor anchor_of(const AnchorSection& anchor, ReadingKind kind, double unanchored_lx) {
  assert(unanchored_lx > 0.0);
  const Illuminance wanted = anchored_illuminance(anchor, kind);
  return {anchor_meter(anchor), text_of(anchor), wanted, wanted.si / unanchored_lx};
}

}  // namespace fillside
