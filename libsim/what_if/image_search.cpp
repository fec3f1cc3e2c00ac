#include "libsim/what_if/image_search.h"

#include "libsim/base/parallel.h"
#include "libsim/sensor/framing.h"
#include "libsim/transport/means.h"

namespace fillside {
namespace {

struct FoundSpot {
  std::size_t pixel;
  int replicate;
  MirrorSpot spot;
};

}  // namespace

PartKey part_of(const Scene& scene, const MirrorSpot& spot) {
  const Surface& surface = scene.surfaces()[spot.surface];
  return {surface.object, surface.part};
}

Found look_for_images(const Scene& scene, const Camera& camera, const Budget& budget) {
  std::vector<std::vector<FoundSpot>> rows(static_cast<std::size_t>(camera.rows));
  parallel_for(rows.size(), budget.threads, [&](std::size_t row) {
    const auto columns = static_cast<std::size_t>(camera.columns);
    for (std::size_t pixel = row * columns; pixel < (row + 1) * columns; ++pixel)
      for (int replicate = 0; replicate < kMostReplicates; ++replicate) {
        const SampleNumbers numbers = numbers_at(camera, budget, {pixel, replicate});
        const Ray ray = camera_ray(camera, pixel, numbers);
        for (const MirrorSpot& spot : mirror_spots(scene, numbers, ray, MirrorLight::left_out).all())
          rows[row].push_back({pixel, replicate, spot});
      }
  });
  Found found;
  for (const auto& row : rows)
    for (const auto& [pixel, replicate, spot] : row) {
      const auto r = static_cast<std::size_t>(replicate);
      FoundPart& part = found[part_of(scene, spot)];
      part.rays[r] += 1.0;
      if (spot.image_of == kNone) continue;
      FoundImage& image = part.images[spot.image_of];
      image.rays[r] += 1.0;
      image.share[r] += spot.mirrored_share;
      image.covered[pixel] += 1.0;
      if (const auto place = place_in_frame(camera, spot.position))
        image.place += Eigen::Vector2d((*place)[0], (*place)[1]);
    }
  return found;
}

ImageShare image_share(const Scene& scene, const Camera& camera, const ImageName& image, int threads) {
  Camera pinhole = camera;
  pinhole.pinhole = true;
  const auto is_the_part = [&](const MirrorSpot& spot) {
    const Surface& surface = scene.surfaces()[spot.surface];
    return scene.objects()[surface.object].name == image.thing && surface.part == image.part;
  };
  const auto columns = static_cast<std::size_t>(camera.columns);
  std::vector<std::array<std::size_t, 2>> rows(static_cast<std::size_t>(camera.rows));
  parallel_for(rows.size(), threads, [&](std::size_t row) {
    for (std::size_t pixel = row * columns; pixel < (row + 1) * columns; ++pixel) {
      const Ray ray = pinhole.draw(pixel, {0.5, 0.5, 0.5, 0.5});
      for (const MirrorSpot& spot :
           mirror_spots(scene, SampleNumbers(0, pixel, 0, 0), ray, MirrorLight::left_out).all()) {
        if (!is_the_part(spot)) continue;
        ++rows[row][0];
        rows[row][1] += spot.image_of != kNone &&
                        scene.emitters()[static_cast<std::size_t>(spot.image_of)].name == image.source;
      }
    }
  });
  ImageShare share;
  const double one = 1.0 / static_cast<double>(camera.element_count());
  for (const auto& [of_part, of_image] : rows) {
    share.part_of_frame += one * static_cast<double>(of_part);
    share.image_of_frame += one * static_cast<double>(of_image);
  }
  return share;
}

}  // namespace fillside
