#include "libsim/writers/exr.h"

#include <OpenEXR/ImfChannelList.h>
#include <OpenEXR/ImfFrameBuffer.h>
#include <OpenEXR/ImfHeader.h>
#include <OpenEXR/ImfIO.h>
#include <OpenEXR/ImfOutputFile.h>
#include <OpenEXR/ImfStringAttribute.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <set>
#include <string_view>

#include "libsim/base/problem.h"

namespace fillside {
namespace {

// Where OpenEXR writes: into memory. It goes back once, to fill in the table of line offsets.
class MemoryStream : public Imf::OStream {
 public:
  MemoryStream() : Imf::OStream("picture.exr") {}
  void write(const char bytes[], int count) override {
    const auto size = static_cast<std::size_t>(count);
    if (bytes_.size() < place_ + size) bytes_.resize(place_ + size);
    std::memcpy(bytes_.data() + place_, bytes, size);
    place_ += size;
  }
  std::uint64_t tellp() override { return place_; }
  void seekp(std::uint64_t place) override { place_ = place; }
  std::string& bytes() { return bytes_; }

 private:
  std::string bytes_;
  std::size_t place_ = 0;
};

[[noreturn]] void refuse(const std::string& reason) { throw WriteError("cannot write an EXR: " + reason); }

std::vector<std::string> channel_names(const ExrLayer& layer) {
  const std::string before = layer.name.empty() ? "" : layer.name + ".";
  if (layer.colour) return {before + "R", before + "G", before + "B"};
  return {before + "Y"};
}

void check(const ExrPicture& picture) {
  if (picture.width < 1 || picture.height < 1 || picture.layers.empty()) refuse("there is no picture");
  const std::size_t pixels =
      static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height);
  std::set<std::string_view> names;
  for (const ExrLayer& layer : picture.layers) {
    const std::string& name = layer.name;
    if (!names.insert(name).second) refuse("two layers are called '" + name + "'; rename one of them");
    if (layer.values.size() != pixels * (layer.colour ? 3 : 1))
      refuse("layer '" + name + "' has another size");
    const bool empty_part = !name.empty() && (name.front() == '.' || name.back() == '.');
    if (empty_part || name.find("..") != std::string::npos || name.size() > 250)
      refuse("'" + name + "' is not a layer name; use words with single dots between them");
  }
}

Imf::Header header_of(const ExrPicture& picture) {
  Imf::Header header(picture.width, picture.height);
  header.compression() = Imf::ZIP_COMPRESSION;
  const Imf::PixelType type = picture.number == ExrNumber::half ? Imf::HALF : Imf::FLOAT;
  for (const ExrLayer& layer : picture.layers)
    for (const std::string& name : channel_names(layer)) header.channels().insert(name, Imf::Channel(type));
  for (const auto& [key, text] : picture.attributes) {
    if (key.empty() || header.find(key.c_str()) != header.end())
      refuse("'" + key + "' is the format's own attribute or given twice; use another key");
    header.insert(key, Imf::StringAttribute(text));
  }
  return header;
}

constexpr float kLargestHalf = 65504.0f;

std::vector<half> halves_of(const std::vector<float>& values) {
  std::vector<half> halves;
  for (const float value : values) {
    const bool number = value == value;  // NaN says "covered" and must stay so
    halves.emplace_back(number ? std::clamp(value, -kLargestHalf, kLargestHalf) : value);
  }
  return halves;
}

template <class Number>
void add_slices(Imf::FrameBuffer& frame, const ExrPicture& picture, const ExrLayer& layer,
                const Number* values) {
  const std::vector<std::string> names = channel_names(layer);
  const std::size_t step = names.size() * sizeof(Number);
  const Imf::PixelType type = sizeof(Number) == sizeof(half) ? Imf::HALF : Imf::FLOAT;
  for (std::size_t channel = 0; channel < names.size(); ++channel) {
    auto* first = reinterpret_cast<char*>(const_cast<Number*>(values + channel));  // OpenEXR only reads it
    frame.insert(names[channel],
                 Imf::Slice(type, first, step, step * static_cast<std::size_t>(picture.width)));
  }
}

}  // namespace

std::string exr_bytes(const ExrPicture& picture) {
  check(picture);
  std::vector<std::vector<half>> halves;
  Imf::FrameBuffer frame;
  for (const ExrLayer& layer : picture.layers) {
    if (picture.number == ExrNumber::half) {
      halves.push_back(halves_of(layer.values));
      add_slices(frame, picture, layer, halves.back().data());
    } else {
      add_slices(frame, picture, layer, layer.values.data());
    }
  }
  MemoryStream stream;
  try {
    Imf::OutputFile file(stream, header_of(picture));
    file.setFrameBuffer(frame);
    file.writePixels(picture.height);
  } catch (const WriteError&) {
    throw;
  } catch (const std::exception& fault) {
    refuse(fault.what());
  }
  return std::move(stream.bytes());
}

}  // namespace fillside
