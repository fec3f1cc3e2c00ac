#include "libsim/what_if/daylit_set.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "libsim/base/cases.h"
#include "libsim/scene/build.h"
#include "libsim/scene/daylight.h"
#include "libsim/scene/finish.h"
#include "libsim/transport/sunbeam.h"

namespace fillside {
namespace {

constexpr std::uint32_t kFirstSamples = 1024, kMostSamples = 1u << 16;
constexpr int kSunDraws = 64;

Description before_even_outside(Description description) {
  description.daylight.window_luminance = candela_per_m2(1.0);
  return description;
}

Rgb ground_of(const Description& d) { return tinted(d.daylight.ground, d.daylight.ground_colour); }

/// The n-th of the places where an instrument receives light: a patch's are spread over its skin.
Receiver receiver_of(const Sensor& sensor, const SampleNumbers& numbers) {
  return std::visit(Cases{[](const Meter& meter) { return meter.receiver; },
                          [&](const Patch& patch) { return patch.draw(numbers.group(0)); },
                          [](const auto&) { return Receiver{}; }},
                    sensor);
}

double widest(const std::vector<Coefficients>& all) {
  double widest = 0.0;
  for (const Coefficients& c : all) {
    const Estimate even = c.of_even_outside();
    widest = std::max(widest, half_width_stops(even.value(), even.half_width_95()));
  }
  return widest;
}

/// Joins the second half of a doubling: both have as many samples.
void absorb(Coefficients& into, const Coefficients& more) {
  into.all = 0.5f * (into.all + more.all);
  into.turned = 0.5f * (into.turned + more.turned);
  into.lamps = 0.5f * (into.lamps + more.lamps);
  for (std::size_t e = 0; e < into.by_curtain.size(); ++e)
    into.by_curtain[e] = 0.5f * (into.by_curtain[e] + more.by_curtain[e]);
  if (into.refused.count == 0)
    into.refused = more.refused;
  else
    into.refused.count += more.refused.count;
}

}  // namespace

SetFacing facing_of(const Description& description, std::optional<Angle> first_window_faces) {
  // The sky alone, whatever the hour: only what stands before it is wanted.
  Description d = description;
  if (first_window_faces) d.windows.front().facing = to_text(*first_window_faces);
  d.daylight.time.reset();
  d.daylight.window_luminance.reset();
  d.daylight.sky = std::string(sky_name(kTraditionalOvercast));
  const Outside outside = outside_of(d);
  return {compass_of(d).value_or(Compass{}),
          PatchedOutside(std::get<Sky>(outside.front().light).skyline, grey(d.daylight.skyline_reflectance))};
}

SunMoment::SunMoment(const EarthPlace& place, const Instant& instant)
    : sun(sun_position(place, instant)), day_of_year(fillside::day_of_year(instant)) {}

DaylitSet::DaylitSet(const Description& description, const Effort& effort, const EffortProgress& progress)
    : scene_(std::move(build(before_even_outside(description)).scene)),
      daylight_{DaylightByHour(kTraditionalOvercast, ground_of(description)),
                DaylightByHour(kClearSky, ground_of(description))} {
  const Key key = find_key(scene_, description.set.key, dish_place(scene_));
  instruments_ = instruments_of(description, scene_, toward_window(scene_, key.emitter));
  measure_all(effort, progress);
}

void DaylitSet::measure_all(const Effort& effort, const EffortProgress& progress) {
  const EffortClock clock(effort);
  Budget budget{.samples = kFirstSamples, .seed = effort.seed, .threads = effort.threads};
  do {
    for (std::size_t i = 0; i < instruments_.size(); ++i) {
      Coefficients more = measure_coefficients(scene_, instruments_[i].sensor, budget);
      if (budget.first_sample == 0)
        coefficients_.push_back(std::move(more));
      else
        absorb(coefficients_[i], more);
      const double share = static_cast<double>(i + 1) / static_cast<double>(instruments_.size());
      if (progress) progress({share, reached_stops_, clock.seconds_left(reached_stops_)});
    }
    reached_stops_ = widest(coefficients_);
    samples_ = budget.first_sample += budget.samples;
    budget.samples = budget.first_sample;
  } while (clock.goes_on(reached_stops_, 2.0 * clock.spent_s()) && samples_ < kMostSamples);
}

std::optional<std::size_t> DaylitSet::index_of(std::string_view meter) const {
  for (std::size_t i = 0; i < coefficients_.size(); ++i)
    if (coefficients_[i].name == meter) return i;
  return std::nullopt;
}

double DaylitSet::straight_sun_lx(std::size_t meter, const SunDisc& sun) const {
  const auto faces_the_sun = [&](const Emitter& emitter) {
    return sun_behind_glass(emitter, sun.to_sun) > 0.0;
  };
  if (std::ranges::none_of(scene_.emitters(), faces_the_sun)) return 0.0;
  const Instrument& instrument = instruments_[meter];
  const std::uint32_t mask = instrument.subject_there ? kEverything : kWithoutSubject;
  Rgb sum = grey(0.0);
  for (std::uint32_t draw = 0; draw < kSunDraws; ++draw) {
    const SampleNumbers numbers(0, 0, 0, draw);
    const Receiver receiver = receiver_of(instrument.sensor, numbers);
    const Numbers4 u = numbers.group(1);
    const Direction to_sun = draw_in_disc(sun, u[0], u[1]);
    const Rgb answer = response(receiver, to_sun);
    if (answer.maxCoeff() > 0.0)
      sum += answer * sunbeam(scene_, receiver.position, receiver.normal, to_sun, mask);
  }
  return luminance(sum * sun.colour) * sun.normal_illuminance_lx / kSunDraws;
}

Eigen::VectorXf DaylitSet::turned_sun_lx(const Coefficients& c, const SunDisc& sun) const {
  Eigen::VectorXf lx = Eigen::VectorXf::Zero(c.replicates());
  for (const auto& [bin, weight] : sky_patches::shares_of(sun.to_sun).of) {
    const Rgb radiance =
        sun.colour * (sun.normal_illuminance_lx * weight / sky_patches::fine_solid_angle_sr(bin));
    lx += c.turned.middleCols<3>(static_cast<Eigen::Index>(3 * bin)) * radiance.matrix().cast<float>();
  }
  for (std::size_t e = 0; e < c.by_curtain.size(); ++e) {
    const double behind_lx = sun.normal_illuminance_lx * sun_behind_glass(scene_.emitters()[e], sun.to_sun);
    if (behind_lx > 0.0) lx += c.by_curtain[e] * (sun.colour * behind_lx).matrix().cast<float>();
  }
  return lx;
}

std::vector<Estimate> DaylitSet::read(const SetFacing& facing, const SunMoment& moment, DayWeather weather,
                                      std::span<const std::size_t> meters) const {
  std::vector<std::size_t> all(meters.begin(), meters.end());
  if (all.empty()) {
    all.resize(instruments_.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
  }
  const auto light =
      daylight_[static_cast<std::size_t>(weather)].at(moment.sun, moment.day_of_year, facing.compass);
  Eigen::VectorXf outside;
  if (light) outside = facing.outside.radiances(*light);
  std::vector<Estimate> readings;
  for (const std::size_t meter : all) {
    const Coefficients& c = coefficients_[meter];
    Eigen::VectorXf lx = c.lamps;
    if (light) lx += c.all * outside;
    if (light && light->sun && facing.outside.sun_is_free(light->sun->to_sun)) {
      lx += turned_sun_lx(c, *light->sun);
      lx.array() += static_cast<float>(straight_sun_lx(meter, *light->sun));
    }
    readings.push_back(estimate_of(lx));
  }
  return readings;
}

}  // namespace fillside
