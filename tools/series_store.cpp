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

std::string bytes_in(const fs::path& path) {
  std::ostringstream bytes;
  bytes << std::ifstream(path, std::ios::binary).rdbuf();
  return bytes.str();
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

SeriesStore::SeriesStore(std::vector<fs::path> folders, const Effort& effort, double light_factor)
    : folders_(std::move(folders)), effort_(effort), light_factor_(light_factor) {}

std::string SeriesStore::name_of(const Description& description, const std::string& ending) const {
  return fmt::format("{}-{}{}", scene_hash(description), file_word(effort_text(effort_)), ending);
}

/// All that the figures depend on. Models stand beside the scene and not in its hash: their bytes do it.
Json SeriesStore::identity(const Description& description) const {
  Json models = Json::array();
  for (const MeshSection& mesh : description.meshes) {
    std::string& print = models_[mesh.file];
    if (print.empty()) print = fingerprint(bytes_in(fs::path(description.file).parent_path() / mesh.file));
    models.push_back({{"file", mesh.file}, {"fingerprint", print}});
  }
  return {{"schema", "fillside.series_value/2"},
          {"program", FILLSIDE_VERSION},
          {"scene_hash", scene_hash(description)},
          {"effort", effort_text(effort_)},
          {"unbiased", effort_.unbiased},
          {"light_factor", light_factor_},
          {"models", models}};
}

std::optional<FiguresRead> SeriesStore::kept(const Description& description,
                                             const std::vector<SeriesFigure>& figures) const {
  const std::string name = name_of(description, ".json");
  for (const fs::path& folder : folders_) {
    Json document = document_in(folder / name);
    if (document.is_null()) continue;
    const Json kept = document["figures"];
    const double reached_stops = document.value("reached_stops", 0.0);
    document.erase("figures");
    document.erase("reached_stops");
    if (document != identity(description)) continue;
    FiguresRead read{{}, reached_stops};
    try {
      for (const SeriesFigure& figure : figures) read.values.push_back(figure_from(kept.at(figure.name)));
    } catch (const std::exception&) {
      continue;  // not there, or not ours: measured anew
    }
    return read;
  }
  return std::nullopt;
}

void SeriesStore::keep(const Description& description, const std::vector<SeriesFigure>& figures,
                       const FiguresRead& read) const {
  const fs::path path = folder() / name_of(description, ".json");
  Json document = identity(description);
  Json before = document_in(path);
  const Json earlier = before.is_null() ? Json::object() : before["figures"];
  if (!before.is_null()) before.erase("figures"), before.erase("reached_stops");
  const bool ours = before == document;
  document["reached_stops"] = read.reached_stops;
  document["figures"] = ours ? earlier : Json::object();
  for (std::size_t i = 0; i < figures.size(); ++i)
    document["figures"][figures[i].name] = figure_to_keep(read.values[i]);
  keep_file(path, document.dump(1) + "\n");
}

std::optional<Picture> SeriesStore::kept_picture(const Description& description,
                                                 const std::string& look) const {
  const std::string name = name_of(description, fmt::format("-{}.png", file_word(look)));
  for (const fs::path& folder : folders_) {
    if (!fs::exists(folder / name)) continue;
    DecodedPicture decoded = decode_png(bytes_in(folder / name));
    if (decoded.fault.empty())
      return Picture{decoded.codes.width, decoded.codes.height, 3, std::move(decoded.codes.rgb)};
  }
  return std::nullopt;
}

void SeriesStore::keep_picture(const Description& description, const std::string& look,
                               const Picture& picture) const {
  keep_file(folder() / name_of(description, fmt::format("-{}.png", file_word(look))), png_bytes(picture));
}

}  // namespace fillside::tools
