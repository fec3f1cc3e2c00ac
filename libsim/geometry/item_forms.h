// The forms behind make_item, one source file each. A form is built around the z axis at its true width and
// depth; make_item then stretches it to the exact box, so a form may keep its usual height where a stretch
// does no harm. A stand left at 0 means the top. To add a kind: write its file, declare it here, and give it
// a row with its usual size in item.cpp.
#pragma once

#include <cstdint>

#include "libsim/geometry/item.h"

namespace fillside {

Item ball_form(const ItemSize& size, std::uint64_t seed);
Item egg_form(const ItemSize& size, std::uint64_t seed);
Item plate_form(const ItemSize& size, std::uint64_t seed);
Item bowl_form(const ItemSize& size, std::uint64_t seed);
Item tart_form(const ItemSize& size, std::uint64_t seed);
Item layer_cake_form(const ItemSize& size, std::uint64_t seed);
Item loaf_form(const ItemSize& size, std::uint64_t seed);
Item dumpling_form(const ItemSize& size, std::uint64_t seed);
Item jar_form(const ItemSize& size, std::uint64_t seed);
Item tumbler_form(const ItemSize& size, std::uint64_t seed);
Item box_form(const ItemSize& size, std::uint64_t seed);

}  // namespace fillside
