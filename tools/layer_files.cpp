#include "tools/layer_files.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "libsim/writers/exr.h"
#include "libsim/writers/plain_table.h"
#include "libsim/writers/png.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

using Pixels = std::vector<float>;

double light_in(const Pixels& pixels) {
  double sum = 0.0;
  for (std::size_t i = 0; i + 2 < pixels.size(); i += 3)
    sum += luminance({pixels[i], pixels[i + 1], pixels[i + 2]});
  return sum;
}

std::vector<Rgb> colours_of(const Pixels& pixels) {
  std::vector<Rgb> colours;
  colours.reserve(pixels.size() / 3);
  for (std::size_t i = 0; i + 2 < pixels.size(); i += 3)
    colours.emplace_back(pixels[i], pixels[i + 1], pixels[i + 2]);
  return colours;
}

/// A layer's name as part of a file's.
std::string for_file(std::string name) {
  for (char& c : name)
    if (c == ' ' || c == '/' || c == '\\') c = '_';
  return name;
}

/// A layer's name in the EXR, where dots make groups.
std::string for_exr(std::string name) {
  std::ranges::replace(name, '.', '_');
  return name;
}

}  // namespace

LayerFiles write_layers(const std::string& stem, const Measurement& picture,
                        const std::vector<LightLayer>& layers, Development development,
                        const Metadata& metadata) {
  development.curve = ToneCurve::plain;
  std::vector<std::string> names;
  std::vector<Pixels> lit;
  for (const LightLayer& layer : layers)
    if (Pixels pixels = pixels_of(picture, layer); light_in(pixels) > 0.0) {
      names.push_back(layer.name);
      lit.push_back(std::move(pixels));
    }
  Pixels whole = added_up(lit);
  const double all = light_in(whole);

  LayerFiles files{stem + "-layers.exr", {}};
  ExrPicture exr{picture.columns(), picture.rows(), {}, metadata, ExrNumber::full};
  const auto write = [&](const std::string& name, const Pixels& pixels) {
    files.pictures.push_back(
        {name, fmt::format("{}-layer-{}.png", stem, for_file(name)), light_in(pixels) / all});
    write_file(
        files.pictures.back().png,
        png_bytes(developed(colours_of(pixels), picture.columns(), picture.rows(), development), metadata));
  };
  if (lit.empty()) return files;
  write("all", whole);
  exr.layers.push_back({"", true, std::move(whole)});
  for (std::size_t i = 0; i < lit.size(); ++i) {
    write(names[i], lit[i]);
    // Numbered, for the format keeps its channels by the alphabet and the sum goes by the order.
    exr.layers.push_back({fmt::format("{:02} {}", i + 1, for_exr(names[i])), true, std::move(lit[i])});
  }
  write_file(files.exr, exr_bytes(exr));
  return files;
}

std::string layers_text(const LayerFiles& files) {
  using enum PlainTable::Align;
  PlainTable table{{{"layer"}, {"of the light", right}, {"picture"}}, {}, ""};
  for (const LayerFile& file : files.pictures)
    table.rows.push_back({file.layer, fmt::format("{:.1f} %", 100.0 * file.share), file.png});
  return fmt::format(
      "\nLayers of light, exposed alike and without a tone curve\n\n{}\n"
      "{}: the same in 32-bit numbers. Added in their order they give the whole picture.\n",
      to_text(table), files.exr);
}

nlohmann::ordered_json layers_json(const LayerFiles& files) {
  nlohmann::ordered_json pictures = nlohmann::ordered_json::array();
  for (const LayerFile& file : files.pictures)
    pictures.push_back({{"layer", file.layer}, {"png", file.png}, {"share_of_light", file.share}});
  return {{"exr", files.exr}, {"pictures", pictures}};
}

}  // namespace fillside::tools
