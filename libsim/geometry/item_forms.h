// The forms behind make_item, one source file each. A form is built around the z axis at its true width and
// depth; make_item then stretches it to the exact box, so a form may keep its usual height where a stretch
// does no harm. A stand left at 0 means the top. To add a kind: write its file, declare it here, and give it
// a row with its usual size in item.cpp.
#pragma once

#include <cstdint>

#include "libsim/geometry/item.h"

namespace fillside {

/// Adds a piece to the part of that role, which is made when there is none; all its pieces have a second
/// surface, or none has.
void add_part(Item& item, std::string_view role, const Mesh& piece, std::vector<double> second = {});

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
Item citrus_tart_form(const ItemSize& size, std::uint64_t seed);
Item cut_cake_form(const ItemSize& size, std::uint64_t seed);
Item dumplings_form(const ItemSize& size, std::uint64_t seed);
Item garnish_form(const ItemSize& size, std::uint64_t seed);
Item berries_form(const ItemSize& size, std::uint64_t seed);
Item leaves_form(const ItemSize& size, std::uint64_t seed);
Item noodles_form(const ItemSize& size, std::uint64_t seed);
Item citrus_half_form(const ItemSize& size, std::uint64_t seed);
Item cheese_form(const ItemSize& size, std::uint64_t seed);
Item cookies_form(const ItemSize& size, std::uint64_t seed);
Item pickle_jar_form(const ItemSize& size, std::uint64_t seed);
Item iced_tumbler_form(const ItemSize& size, std::uint64_t seed);
Item spoon_form(const ItemSize& size, std::uint64_t seed);
Item fork_form(const ItemSize& size, std::uint64_t seed);
Item napkin_form(const ItemSize& size, std::uint64_t seed);
Item cutting_board_form(const ItemSize& size, std::uint64_t seed);

}  // namespace fillside
