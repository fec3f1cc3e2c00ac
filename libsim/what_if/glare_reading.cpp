#include "libsim/what_if/glare_reading.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "libsim/base/parallel.h"
#include "libsim/transport/means.h"
#include "libsim/what_if/image_search.h"

namespace fillside {
namespace {

constexpr int kWidest = 240;               ///< pixels across of the picture that is searched for images
constexpr std::size_t kMostPixels = 2500;  ///< of an image whose light is measured
constexpr std::uint32_t kSamples = 4;      ///< of each of them and replicate
constexpr std::uint32_t kOverlaySamples = 4;
constexpr double kLeastOfPart = 0.01, kLeastOfFrame = 0.0002;
constexpr std::uint32_t kKeptSamples = 16;
constexpr int kStores = 8;

Camera no_wider_than(Camera camera, int widest) {
  const double scale = std::min(1.0, static_cast<double>(widest) / std::max(camera.columns, camera.rows));
  camera.columns = std::max(1, static_cast<int>(std::lround(scale * camera.columns)));
  camera.rows = std::max(1, static_cast<int>(std::lround(scale * camera.rows)));
  return camera;
}

/// Sums over an image's pixels. What is there otherwise counts by how much of a pixel the image covers; what
/// is added is less by that already in a pixel on the edge.
struct ImageLight {
  PerReplicate covered{}, added{}, otherwise{};
};

/// What a part of a thing mirrors in one pixel and replicate.
double added_in(const Scene& scene, const Camera& camera, const Budget& budget, const MeansOf& of,
                const PartKey& part) {
  double added = 0.0;
  const SampleNumbers first = numbers_at(camera, budget, of);
  for (std::uint32_t sample = 0; sample < budget.samples; ++sample) {
    const SampleNumbers numbers = first.with_sample(first.sample() + sample);
    const Ray ray = camera_ray(camera, of.element, numbers);
    for (const MirrorSpot& spot : mirror_spots(scene, numbers, ray, MirrorLight::worked_out).all())
      if (part_of(scene, spot) == part) added += spot.added_cd_m2;
  }
  return added / budget.samples;
}

/// The same and all light, for each replicate of a pixel.
std::array<std::array<double, 2>, kMostReplicates> light_of(const Scene& scene, const Camera& camera,
                                                            const Budget& budget, std::size_t pixel,
                                                            const PartKey& part) {
  const Sensor sensor = camera;
  ElementMeans means(scene, sensor, budget);
  means.take(pixel);
  std::array<std::array<double, 2>, kMostReplicates> light{};
  for (std::size_t r = 0; r < light.size(); ++r) {
    for (const Rgb& row : means.by_replicate()[r].rows()) light[r][0] += luminance(row);
    light[r][1] = added_in(scene, camera, budget, {pixel, static_cast<int>(r)}, part);
  }
  return light;
}

ImageLight measure_image(const Scene& scene, const Camera& camera, const Budget& budget, const PartKey& part,
                         const FoundImage& image) {
  const std::size_t stride = 1 + image.covered.size() / kMostPixels;
  std::vector<std::pair<std::size_t, double>> pixels;
  std::size_t index = 0;
  for (const auto& each : image.covered)
    if (index++ % stride == 0) pixels.push_back(each);
  std::vector<std::array<std::array<double, 2>, kMostReplicates>> light(pixels.size());
  parallel_for(pixels.size(), budget.threads,
               [&](std::size_t i) { light[i] = light_of(scene, camera, budget, pixels[i].first, part); });
  ImageLight sums;
  for (std::size_t i = 0; i < pixels.size(); ++i)
    for (std::size_t r = 0; r < kMostReplicates; ++r) {
      const auto [total, added] = light[i][r];
      const double covered = pixels[i].second / kMostReplicates;
      sums.covered[r] += covered;
      sums.added[r] += added;
      sums.otherwise[r] += covered * (total - added);
    }
  return sums;
}

Estimate ratio(const PerReplicate& above, const PerReplicate& below) {
  return Estimate(std::span<const double>(above)) / Estimate(std::span<const double>(below));
}

bool mirrors_a_curtain(const Scene& scene, int emitter) {
  const auto* opening = std::get_if<Opening>(&scene.emitters()[static_cast<std::size_t>(emitter)].kind);
  return opening && opening->curtain;
}

Glare glare_of(const Scene& scene, const PartKey& key, const FoundPart& part, int emitter,
               double rays_of_frame) {
  const FoundImage& image = part.images.at(emitter);
  double rays = 0.0, part_rays = 0.0;
  for (std::size_t r = 0; r < kMostReplicates; ++r) rays += image.rays[r], part_rays += part.rays[r];
  Glare glare;
  glare.thing = scene.objects()[key.object].name;
  glare.part = key.part;
  glare.source = scene.emitters()[static_cast<std::size_t>(emitter)].name;
  glare.by_curtain = mirrors_a_curtain(scene, emitter);
  glare.part_of_frame = part_rays / (kMostReplicates * rays_of_frame);
  glare.share_of_part = ratio(image.rays, part.rays);
  glare.share_of_frame = Estimate(std::span<const double>(image.rays)) / rays_of_frame;
  glare.mirrored_share = ratio(image.share, image.rays);
  glare.middle = {image.place.x() / rays, image.place.y() / rays};
  return glare;
}

bool is_worth_measuring(const Glare& glare) {
  return glare.share_of_part.value() >= kLeastOfPart || glare.share_of_frame.value() >= kLeastOfFrame;
}

/// What the overlay of the full picture needs; `least` by part.
void work_out_overlay(const Scene& scene, const Camera& camera, const Budget& budget,
                      const std::map<PartKey, double>& least, GlareReading& reading) {
  reading.added_cd_m2.assign(camera.element_count(), 0.0);
  reading.least_cd_m2.assign(camera.element_count(), 0.0);
  parallel_for(camera.element_count(), budget.threads, [&](std::size_t pixel) {
    const SampleNumbers first = numbers_at(camera, budget, {pixel, 0});
    for (std::uint32_t sample = 0; sample < kOverlaySamples; ++sample) {
      const SampleNumbers numbers = first.with_sample(sample);
      const Ray ray = camera_ray(camera, pixel, numbers);
      for (const MirrorSpot& spot : mirror_spots(scene, numbers, ray, MirrorLight::worked_out).all()) {
        reading.added_cd_m2[pixel] += spot.added_cd_m2 / kOverlaySamples;
        if (const auto found = least.find(part_of(scene, spot)); found != least.end())
          reading.least_cd_m2[pixel] = std::max(reading.least_cd_m2[pixel], found->second);
      }
    }
  });
}

}  // namespace

GlareReading read_glare(const Scene& scene, const Camera& camera, const Effort& effort, double light_factor) {
  const Camera small = no_wider_than(camera, kWidest);
  Budget budget{.samples = kSamples, .seed = effort.seed, .threads = effort.threads};
  const Found found = look_for_images(scene, small, budget);
  std::optional<KeptLight> kept;
  GlareReading reading;
  std::map<PartKey, double> least;
  for (const auto& [key, part] : found)
    for (const auto& [emitter, image] : part.images) {
      Glare glare = glare_of(scene, key, part, emitter, static_cast<double>(small.element_count()));
      if (!is_worth_measuring(glare)) continue;
      if (!effort.unbiased && !kept) {
        kept.emplace(scene, mask_of(small),
                     KeepingBudget{kKeptSamples, kStores, effort.seed, effort.threads});
        budget.kept = &*kept;
      }
      const ImageLight light = measure_image(scene, small, budget, key, image);
      glare.added_cd_m2 = light_factor * ratio(light.added, light.covered);
      glare.otherwise_cd_m2 = light_factor * ratio(light.otherwise, light.covered);
      least[key] = std::max(
          least[key], 0.25 * std::max(glare.otherwise_cd_m2.value(), glare.otherwise_cd_m2.half_width_95()));
      reading.glares.push_back(std::move(glare));
    }
  std::ranges::stable_sort(reading.glares, std::ranges::greater{}, [](const Glare& glare) {
    return glare.share_of_frame.value() * glare.least_stops();
  });
  work_out_overlay(scene, camera, budget, least, reading);
  for (double& added : reading.added_cd_m2) added *= light_factor;
  return reading;
}

}  // namespace fillside
