#include "libsim/what_if/figure_names.h"

#include <algorithm>
#include <limits>
#include <optional>

#include "libsim/sensor/instruments.h"
#include "libsim/sensor/lit_share.h"
#include "libsim/transport/key.h"
#include "libsim/what_if/dish_figures.h"
#include "libsim/what_if/glare_reading.h"
#include "libsim/what_if/map_reading.h"
#include "libsim/what_if/shadow_edge.h"

namespace fillside {
namespace {

using Figures = std::vector<NamedFigure>;
using Ratio = std::function<std::optional<Estimate>(const SetReading&)>;

Estimate nothing() { return std::numeric_limits<double>::quiet_NaN(); }

void add_ratio(Figures& figures, const std::string& where, const Ratio& ratio,
               const std::vector<std::string>& instruments) {
  figures.push_back(
      {where + ".lit_to_shadow", "ratio",
       [ratio](const MeasuredSet& set, const Effort&) { return ratio(set.reading).value_or(nothing()); },
       instruments});
  figures.push_back({where + ".stops", "stops",
                     [ratio](const MeasuredSet& set, const Effort&) {
                       return in_stops(ratio(set.reading).value_or(nothing()));
                     },
                     instruments});
}

void add_meter(Figures& figures, const std::string& meter) {
  const auto add = [&](const char* what, const char* unit, Estimate Reading::*figure) {
    figures.push_back({"meter." + meter + what,
                       unit,
                       [meter, figure](const MeasuredSet& set, const Effort&) {
                         const Reading* reading = set.reading.named(meter);
                         return reading ? reading->*figure : nothing();
                       },
                       {meter}});
  };
  add(".lx", "lx", &Reading::total_lx);
  add(".key_lx", "lx", &Reading::key_lx);
  add(".fill_lx", "lx", &Reading::fill_lx);
  add(".key_to_fill", "ratio", &Reading::key_to_fill);
  add(".ev100", "EV", &Reading::ev100);
}

void add_stops_under(Figures& figures, const std::string& meter, const std::string& reference) {
  figures.push_back({"meter." + meter + ".stops_under",
                     "stops",
                     [meter, reference](const MeasuredSet& set, const Effort&) {
                       const Reading *here = set.reading.named(meter), *there = set.reading.named(reference);
                       return here && there ? in_stops(there->total_lx / here->total_lx) : nothing();
                     },
                     {meter, reference}});
}

/// Of what the camera sees of the thing, the part that is covered most; images too weak to show do not count.
Estimate share_mirrored(const MeasuredSet& set, const std::string& thing, const Effort& effort) {
  constexpr int kColumns = 96;
  Camera camera = camera_of(set.description, set.scene);
  camera.rows = std::max(1, kColumns * camera.rows / camera.columns);
  camera.columns = kColumns;
  Estimate most = 0.0;
  for (const Glare& glare : read_glare(set.scene, camera, effort).glares)
    if (glare.thing == thing && shows(glare) && glare.share_of_part.value() > most.value())
      most = glare.share_of_part;
  return 100.0 * most;
}

/// Of what the camera sees of the thing, the part that the key reaches straight.
Estimate share_lit(const MeasuredSet& set, std::uint16_t object) {
  const auto share =
      lit_share(set.scene, camera_of(set.description, set.scene), object, set.reading.key.emitter);
  return share ? Estimate(100.0 * *share) : nothing();
}

void add_lit(Figures& figures, const Scene& scene) {
  for (std::size_t o = 0; o < scene.objects().size(); ++o)
    if (const ObjectKind kind = scene.objects()[o].kind; kind == ObjectKind::food || kind == ObjectKind::prop)
      figures.push_back({"lit." + scene.objects()[o].name + ".share", "%",
                         [object = static_cast<std::uint16_t>(o)](const MeasuredSet& set, const Effort&) {
                           return share_lit(set, object);
                         }});
}

void add_dish(Figures& figures) {
  figures.push_back({"dish.falloff", "stops", [](const MeasuredSet& set, const Effort& effort) {
                       return falloff_over_dish(set.scene, effort);
                     }});
  figures.push_back({"dish.sunlit", "%", [](const MeasuredSet& set, const Effort&) {
                       return Estimate(100.0 * sunlit_share_of_dish(set.scene));
                     }});
}

void add_gain(Figures& figures, const std::string& board, const std::string& meter) {
  figures.push_back({"board." + board + ".gain." + meter,
                     "stops",
                     [board, meter](const MeasuredSet& set, const Effort&) {
                       const auto& all = set.reading.readings;
                       const auto found = std::ranges::find(all, meter, &Reading::name);
                       if (found == all.end()) return nothing();
                       return gain_stops(
                           set.reading.measurements[static_cast<std::size_t>(found - all.begin())], board);
                     },
                     {meter}});
}

void add_shadow(Figures& figures, const EdgeLine& line) {
  const auto add = [&](const char* what, std::optional<Estimate> ShadowEdge::*figure) {
    figures.push_back(
        {"shadow." + line.name + what, "mm", [line, figure](const MeasuredSet& set, const Effort& effort) {
           const ShadowEdge edge = read_edge(set.scene, set.reading.key, line, effort);
           return (edge.*figure).value_or(nothing());
         }});
  };
  add(".edge_mm", &ShadowEdge::width_mm);
  add(".full_mm", &ShadowEdge::umbra_mm);
}

/// Stops between the lightest and darkest open cell. The extremes are picked by their own noise, which widens
/// the figure a little: the cells are read to a twentieth of a stop, so that this stays small.
Estimate evenness(const MeasuredSet& set, const std::string& name, Effort effort) {
  constexpr int kCellsAcross = 12;
  effort.precision = std::max(effort.precision, stops(0.05));
  auto plane =
      map_plane(set.description, name, toward_window(set.scene, set.reading.key.emitter), kCellsAcross);
  if (!plane) return nothing();
  plane->subject_there = false;
  const MapReading map = read_map(set.scene, *plane, effort);
  std::optional<Estimate> low, high;
  for (std::size_t cell = 0; cell < map.covered.size(); ++cell) {
    if (map.covered[cell]) continue;
    const Estimate here = map.measurement.total(cell);
    if (!low || here.value() < low->value()) low = here;
    if (!high || here.value() > high->value()) high = here;
  }
  return low ? in_stops(*high / *low) : nothing();
}

std::vector<std::string> meter_names(const Description& description, const Scene& scene) {
  const Key key = find_key(scene, description.set.key, dish_place(scene));
  const Direction to_key = toward_window(scene, key.emitter);
  std::vector<std::string> names;
  for (const Meter& meter : default_meters(description, scene, to_key)) names.push_back(meter.name);
  for (const Meter& meter : own_meters(description, scene, to_key)) names.push_back(meter.name);
  for (const Patch& patch : subject_patches(description, scene, to_key)) names.push_back(patch.name());
  return names;
}

}  // namespace

std::vector<NamedFigure> figures_of(const Description& description, const Scene& scene) {
  Figures figures;
  const auto meters = meter_names(description, scene);
  const std::vector<std::string> patches{std::string(kPatchLit), std::string(kPatchShadow)},
      level{std::string(kDishWindow), std::string(kDishAway)};
  const bool has_food = std::ranges::find(meters, kPatchLit) != meters.end();
  add_ratio(
      figures, "subject", [](const SetReading& set) { return set.subject_lit_to_shadow(); },
      has_food ? patches : level);
  add_ratio(
      figures, "empty_spot", [](const SetReading& set) { return set.empty_lit_to_shadow; }, level);
  for (const std::string& meter : meters) add_meter(figures, meter);
  for (const std::string& meter : meters)
    if (meter != description.set.reference) add_stops_under(figures, meter, description.set.reference);
  add_dish(figures);
  for (const Object& object : scene.objects())
    if (object.kind == ObjectKind::food || object.kind == ObjectKind::prop)
      figures.push_back({"glare." + object.name + ".share", "%",
                         [name = object.name](const MeasuredSet& set, const Effort& effort) {
                           return share_mirrored(set, name, effort);
                         }});
  add_lit(figures, scene);
  for (const Object& object : scene.objects())
    if (object.kind == ObjectKind::board || object.kind == ObjectKind::diffuser)
      for (const std::string& meter : meters) add_gain(figures, object.name, meter);
  if (!scene.emitters().empty()) {
    const Key key = find_key(scene, description.set.key, dish_place(scene));
    for (const EdgeLine& line : shadow_lines(description, scene, key)) add_shadow(figures, line);
  }
  std::vector<std::string> planes{"table"};
  for (const PlaneSection& plane : description.planes) planes.push_back(plane.name);
  for (const std::string& plane : planes)
    figures.push_back(
        {"plane." + plane + ".evenness", "stops",
         [plane](const MeasuredSet& set, const Effort& effort) { return evenness(set, plane, effort); }});
  return figures;
}

std::vector<std::string> in_families(const std::vector<std::string>& names) {
  std::vector<std::string> families;
  for (const std::string& name : names) {
    std::string family = name;
    if (const auto gain = name.find(".gain."); name.starts_with("board.") && gain != std::string::npos)
      family = name.substr(0, gain) + ".gain.METER";
    if (name.starts_with("meter."))
      family = name.substr(0, name.rfind('.')) + ".lx|key_lx|fill_lx|key_to_fill|ev100|stops_under";
    if (std::ranges::find(families, family) == families.end()) families.push_back(family);
  }
  return families;
}

}  // namespace fillside
