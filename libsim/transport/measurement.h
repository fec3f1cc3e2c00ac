// What an instrument read: every row (source, via) of every element (one for a meter, one a cell or pixel for
// maps and pictures), for each independent replicate. Everything above transport reads only this.
#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "libsim/base/colour.h"
#include "libsim/base/estimate.h"
#include "libsim/scene/scene.h"

namespace fillside {

/// The names that a measurement's indices stand for.
struct RowNames {
  std::vector<Source> sources;
  std::vector<Object> objects;  ///< via k + 1
  std::string via_name(std::size_t via) const { return via == 0 ? "straight" : objects[via - 1].name; }
};

/// Samples that gave no finite number: left out, counted, and one of them named so that it can be drawn
/// again: it is `sample` or one of the fifteen after it.
struct RefusedSamples {
  std::uint64_t count = 0;
  std::uint64_t element = 0;
  int replicate = 0;
  std::uint32_t sample = 0;

  /// Counts others as well; the first one stays the named one.
  void join(const RefusedSamples& others);
};

class Measurement {
 public:
  Measurement(const Scene& scene, std::string name, int columns, int rows, int replicates);

  const std::string& name() const { return name_; }
  int columns() const { return columns_; }
  int rows() const { return rows_; }
  std::size_t element_count() const {
    return static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_);
  }
  int replicates() const { return replicates_; }
  std::size_t source_count() const { return names_.sources.size(); }
  std::size_t via_count() const { return names_.objects.size() + 1; }
  const RowNames& names() const { return names_; }
  std::uint64_t samples_per_replicate() const { return samples_; }
  const RefusedSamples& refused() const { return refused_; }

  using RowChoice = std::function<bool(std::size_t source, std::size_t via)>;

  /// Photometric value (lx at a receptor, cd/m2 at a camera) of the chosen rows together.
  Estimate sum(std::size_t element, const RowChoice& chosen) const;
  Estimate row(std::size_t element, std::size_t source, std::size_t via) const;
  Estimate total(std::size_t element = 0) const;
  /// A source's straight (and curtain) light if nothing solid stood in between.
  Estimate unshadowed(std::size_t element, std::size_t source) const;
  /// Linear red, green and blue of the chosen rows together.
  std::array<Estimate, 3> channels(std::size_t element, const RowChoice& chosen) const;
  /// Mean over the replicates of the chosen rows' linear colour.
  Rgb colour(std::size_t element, const RowChoice& chosen) const;

  // For the instruments that fill it.
  void set(std::size_t element, int replicate, std::span<const Rgb> rows, std::span<const Rgb> unshadowed);
  void count_samples(std::uint64_t per_replicate, const RefusedSamples& refused);
  /// Joins further samples of the same instrument, weighted by their numbers.
  void absorb(const Measurement& more);
  /// Joins to one element and replicate further samples, whose share of all is `share`. They are counted by
  /// count_samples.
  void absorb(std::size_t element, int replicate, std::span<const Rgb> rows, std::span<const Rgb> unshadowed,
              double share);
  /// Sets an element to the weighted sum of four others, replicate by replicate.
  struct Share {
    std::size_t element;
    float weight;
  };
  void mix(std::size_t element, const std::array<Share, 4>& shares);
  /// Multiplies all light, as if every source shone that many times as strong.
  void scale(double factor);
  /// Adds, replicate by replicate, what another part of the light gave on the same instrument.
  void add_part(const Measurement& part);

 private:
  std::size_t at(std::size_t element, int replicate, std::size_t row) const;

  std::string name_;
  RowNames names_;
  int columns_, rows_, replicates_;
  std::size_t stride_;         ///< rows and unshadowed entries of one element and replicate
  std::vector<float> values_;  ///< [replicate][element][source x via, then unshadowed sources][rgb]
  std::uint64_t samples_ = 0;
  RefusedSamples refused_;
};

}  // namespace fillside
