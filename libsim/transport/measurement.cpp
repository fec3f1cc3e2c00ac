#include "libsim/transport/measurement.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace fillside {

Measurement::Measurement(const Scene& scene, std::string name, int columns, int rows, int replicates)
    : name_(std::move(name)),
      names_{scene.sources(), scene.objects()},
      columns_(columns),
      rows_(rows),
      replicates_(replicates),
      stride_(source_count() * (via_count() + 1)) {
  assert(replicates >= 1 && replicates <= kMostReplicates);
  values_.resize(element_count() * static_cast<std::size_t>(replicates) * stride_ * 3);
}

std::size_t Measurement::at(std::size_t element, int replicate, std::size_t row) const {
  return ((static_cast<std::size_t>(replicate) * element_count() + element) * stride_ + row) * 3;
}

Estimate Measurement::sum(std::size_t element, const RowChoice& chosen) const {
  std::array<double, kMostReplicates> replicate{};
  for (std::size_t source = 0; source < source_count(); ++source)
    for (std::size_t via = 0; via < via_count(); ++via) {
      if (!chosen(source, via)) continue;
      for (int r = 0; r < replicates_; ++r) {
        const float* rgb = &values_[at(element, r, source * via_count() + via)];
        replicate[static_cast<std::size_t>(r)] += luminance({rgb[0], rgb[1], rgb[2]});
      }
    }
  return Estimate(std::span(replicate).first(static_cast<std::size_t>(replicates_)));
}

Estimate Measurement::row(std::size_t element, std::size_t source, std::size_t via) const {
  return sum(element, [&](std::size_t s, std::size_t v) { return s == source && v == via; });
}

Estimate Measurement::total(std::size_t element) const {
  return sum(element, [](std::size_t, std::size_t) { return true; });
}

Estimate Measurement::unshadowed(std::size_t element, std::size_t source) const {
  std::array<double, kMostReplicates> replicate{};
  for (int r = 0; r < replicates_; ++r) {
    const float* rgb = &values_[at(element, r, source_count() * via_count() + source)];
    replicate[static_cast<std::size_t>(r)] = luminance({rgb[0], rgb[1], rgb[2]});
  }
  return Estimate(std::span(replicate).first(static_cast<std::size_t>(replicates_)));
}

std::array<Estimate, 3> Measurement::channels(std::size_t element, const RowChoice& chosen) const {
  std::array<std::array<double, kMostReplicates>, 3> replicate{};
  for (std::size_t source = 0; source < source_count(); ++source)
    for (std::size_t via = 0; via < via_count(); ++via) {
      if (!chosen(source, via)) continue;
      for (int r = 0; r < replicates_; ++r)
        for (std::size_t channel = 0; channel < 3; ++channel)
          replicate[channel][static_cast<std::size_t>(r)] +=
              values_[at(element, r, source * via_count() + via) + channel];
    }
  const auto estimate = [&](std::size_t channel) {
    return Estimate(std::span(replicate[channel]).first(static_cast<std::size_t>(replicates_)));
  };
  return {estimate(0), estimate(1), estimate(2)};
}

Rgb Measurement::colour(std::size_t element, const RowChoice& chosen) const {
  Rgb sum = grey(0.0);
  for (std::size_t source = 0; source < source_count(); ++source)
    for (std::size_t via = 0; via < via_count(); ++via) {
      if (!chosen(source, via)) continue;
      for (int r = 0; r < replicates_; ++r) {
        const float* rgb = &values_[at(element, r, source * via_count() + via)];
        sum += Rgb(rgb[0], rgb[1], rgb[2]);
      }
    }
  return sum / replicates_;
}

void Measurement::set(std::size_t element, int replicate, std::span<const Rgb> rows,
                      std::span<const Rgb> unshadowed) {
  float* out = &values_[at(element, replicate, 0)];
  for (const auto& part : {rows, unshadowed})
    for (const Rgb& rgb : part)
      for (int channel = 0; channel < 3; ++channel) *out++ = static_cast<float>(rgb[channel]);
}

void Measurement::count_samples(std::uint64_t per_replicate, const RefusedSamples& refused) {
  samples_ += per_replicate;
  refused_.join(refused);
}

void RefusedSamples::join(const RefusedSamples& others) {
  if (others.count == 0) return;
  const std::uint64_t all = count + others.count;
  if (count == 0) *this = others;
  count = all;
}

void Measurement::absorb(std::size_t element, int replicate, std::span<const Rgb> rows,
                         std::span<const Rgb> unshadowed, double share) {
  float* out = &values_[at(element, replicate, 0)];
  for (const auto& part : {rows, unshadowed})
    for (const Rgb& rgb : part)
      for (int channel = 0; channel < 3; ++channel, ++out)
        *out = static_cast<float>((1.0 - share) * *out + share * static_cast<float>(rgb[channel]));
}

void Measurement::mix(std::size_t element, const std::array<Share, 4>& shares) {
  for (int replicate = 0; replicate < replicates_; ++replicate) {
    float* out = &values_[at(element, replicate, 0)];
    for (std::size_t i = 0; i < 3 * stride_; ++i) {
      float sum = 0.0f;
      for (const auto& [from, weight] : shares) sum += weight * values_[at(from, replicate, 0) + i];
      out[i] = sum;
    }
  }
}

void Measurement::scale(double factor) {
  for (float& value : values_) value = static_cast<float>(factor * value);
}

void Measurement::absorb(const Measurement& more) {
  assert(values_.size() == more.values_.size());
  const double share = static_cast<double>(more.samples_) / static_cast<double>(samples_ + more.samples_);
  for (std::size_t i = 0; i < values_.size(); ++i)
    values_[i] = static_cast<float>((1.0 - share) * values_[i] + share * more.values_[i]);
  count_samples(more.samples_, more.refused_);
}

void Measurement::add_part(const Measurement& part) {
  assert(values_.size() == part.values_.size());
  for (std::size_t i = 0; i < values_.size(); ++i) values_[i] += part.values_[i];
  samples_ = std::max(samples_, part.samples_);
  refused_.join(part.refused_);
}

}  // namespace fillside
