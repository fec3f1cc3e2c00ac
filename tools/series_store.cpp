#include "tools/series_store.h"

#include <fmt/format.h>

#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "libsim/matter/picture_file.h"
#include "libsim/scene/canonical.h"
#include "libsim/writers/png.h"
#include "tools/edited_scene.h"
#include "tools/figure_json.h"
#include "tools/open_scene.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

/// Models stand beside the scene and not in its hash: their size and time tell when they have changed.
Json meshes_of(const Description& description) {
  Json meshes = Json::array();
  for (const MeshSection& mesh : description.meshes) {
    const fs::path path = fs::path(description.file).parent_path() / mesh.file;
    std::error_code fault;
    const auto bytes = fs::file_size(path, fault);
    const auto written = fs::last_write_time(path, fault).time_since_epoch().count();
    meshes.push_back({{"file", mesh.file}, {"bytes", bytes}, {"written", written}});
  }
  return meshes;
}

/// All that the figures depend on.
Json identity(const Description& description, const Effort& effort, double light_factor) {
  return {{"schema", "fillside.series_value/1"},   {"program", FILLSIDE_VERSION},
          {"scene_hash", scene_hash(description)}, {"effort", effort_text(effort)},
          {"unbiased", effort.unbiased},           {"light_factor", light_factor},
          {"meshes", meshes_of(description)}};
}

Json figure_to_keep(const Estimate& figure) {
  Json replicates = Json::array();
  for (int r = 0; r < figure.replicate_count(); ++r) replicates.push_back(number_json(figure.replicate(r)));
  return {{"value", number_json(figure.value())}, {"replicates", replicates}};
}

double number_in(const Json& json) { return json.is_null() ? std::nan("") : json.get<double>(); }

/// The value is not the replicates' mean (a ratio's is the ratio of means): it is put back in its place.
Estimate figure_from(const Json& json) {
  const double value = number_in(json.at("value"));
  std::vector<double> replicates;
  for (const Json& each : json.at("replicates")) replicates.push_back(number_in(each));
  if (replicates.empty()) return value;
  if (replicates.size() > kMostReplicates) throw std::runtime_error("more replicates than there can be");
  const Estimate mean(replicates);
  return mean.mapped([&](double figure) { return figure == mean.value() ? value : figure; });
}

/// The document in a file; null when there is none that can be read.
Json document_in(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  const Json document = Json::parse(in, nullptr, false);
  return document.is_object() && document.contains("figures") ? document : Json(nullptr);
}

}  // namespace

SeriesStore::SeriesStore(fs::path folder, const Effort& effort, double light_factor)
    : folder_(std::move(folder)), effort_(effort), light_factor_(light_factor) {}

fs::path SeriesStore::path_of(const Description& description, const std::string& ending) const {
  return folder_ / fmt::format("{}-{}{}", scene_hash(description), file_word(effort_text(effort_)), ending);
}

std::optional<std::vector<Estimate>> SeriesStore::kept(const Description& description,
                                                       const std::vector<SeriesFigure>& figures) const {
  Json document = document_in(path_of(description, ".json"));
  if (document.is_null()) return std::nullopt;
  const Json kept = document["figures"];
  document.erase("figures");
  if (document != identity(description, effort_, light_factor_)) return std::nullopt;
  std::vector<Estimate> values;
  try {
    for (const SeriesFigure& figure : figures) values.push_back(figure_from(kept.at(figure.name)));
  } catch (const std::exception&) {
    return std::nullopt;  // not there, or not ours: measured anew
  }
  return values;
}

void SeriesStore::keep(const Description& description, const std::vector<SeriesFigure>& figures,
                       const std::vector<Estimate>& values) const {
  const fs::path path = path_of(description, ".json");
  Json document = identity(description, effort_, light_factor_);
  Json before = document_in(path);
  const Json earlier = before.is_null() ? Json::object() : before["figures"];
  if (!before.is_null()) before.erase("figures");
  document["figures"] = before == document ? earlier : Json::object();
  for (std::size_t i = 0; i < figures.size(); ++i)
    document["figures"][figures[i].name] = figure_to_keep(values[i]);
  keep_file(path, document.dump(1) + "\n");
}

std::optional<Picture> SeriesStore::kept_picture(const Description& description,
                                                 const std::string& look) const {
  std::ifstream in(path_of(description, fmt::format("-{}.png", file_word(look))), std::ios::binary);
  if (!in) return std::nullopt;
  std::ostringstream bytes;
  bytes << in.rdbuf();
  DecodedPicture decoded = decode_png(bytes.str());
  if (!decoded.fault.empty()) return std::nullopt;
  return Picture{decoded.codes.width, decoded.codes.height, 3, std::move(decoded.codes.rgb)};
}

void SeriesStore::keep_picture(const Description& description, const std::string& look,
                               const Picture& picture) const {
  keep_file(path_of(description, fmt::format("-{}.png", file_word(look))), png_bytes(picture));
}

}  // namespace fillside::tools
