// What a meter or patch says: total, key, fill, their ratio, exposure value, and who sent the light.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "libsim/base/estimate.h"
#include "libsim/transport/key.h"
#include "libsim/transport/measurement.h"

namespace fillside {

enum class ReadingKind { flat, dome, patch };

struct RowFigure {
  std::string source, via;
  bool key = false;  ///< counted as key, else as fill
  Estimate lx;
  std::optional<Estimate> colour_K{};
};

struct Reading {
  std::string name;
  ReadingKind kind = ReadingKind::flat;
  bool subject_there = true;  ///< false: an empty-spot reading
  Estimate total_lx{}, key_lx{}, fill_lx{};
  Estimate key_to_fill{};  ///< key rows : fill rows at this one receiver
  Estimate ev100{};
  std::optional<Estimate> colour_K{};  ///< of all its light
  std::vector<RowFigure> rows{};       ///< strongest first; rows without light left out
};

Reading reading_of(const Measurement& measurement, const Key& key, ReadingKind kind, bool subject_there);

/// Correlated colour temperature of a light, K, replicate by replicate; nothing outside 1500 to 15000 K,
/// where McCamy's formula is no longer within a few per cent, for colours far from white, or without light.
std::optional<Estimate> colour_temperature_K(const std::array<Estimate, 3>& channels);

/// Gain of a board (or anything that turns light) at a receiver: log2 of the total over the total without its
/// rows. What its presence takes away (light that it blocks) is not in it.
Estimate gain_stops(const Measurement& measurement, const std::string& via_name, std::size_t element = 0);

/// E(lit) : E(shadow) of two readings of one set, by measurement of the two.
Estimate lit_to_shadow(const Reading& lit, const Reading& shadow);

}  // namespace fillside
