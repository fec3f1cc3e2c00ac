#include "libsim/matter/picture_file.h"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>

namespace fillside {
namespace {

namespace fs = std::filesystem;

// ISO/IEC 15948:2004 (PNG), 5.2: eight bytes; ISO/IEC 10918-1 (JPEG), B.1.1.3: SOI, then a marker.
constexpr std::string_view kPngBegins = "\x89PNG\r\n\x1a\n", kJpegBegins = "\xff\xd8\xff";

PictureLoad faulty(std::string fault, std::string remedy) {
  return {nullptr, std::move(fault), std::move(remedy)};
}

}  // namespace

PictureLoad fault_of_picture_path(const std::string& path) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (!fs::exists(status)) return faulty("is not there", "the path counts from the scene's folder");
  if (!fs::is_regular_file(status)) return faulty("is not a plain file", "name a PNG or JPEG file");
  if (fs::file_size(path, error) > kLargestPictureBytes || error)
    return faulty(fmt::format("is larger than {} MB", kLargestPictureBytes / 1'000'000),
                  "reduce it: 100 pixels to the inch of table are plenty");
  return {};
}

std::string picture_bytes(const std::string& path) {
  if (!fault_of_picture_path(path).fault.empty()) return {};
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

PictureLoad load_picture(const std::string& path, std::optional<double> reflectance) {
  if (PictureLoad fault = fault_of_picture_path(path); !fault.fault.empty()) return fault;
  const std::string bytes = picture_bytes(path);
  if (bytes.empty()) return faulty("is empty or cannot be read", "check the file");
  const bool png = bytes.starts_with(kPngBegins);
  if (!png && !bytes.starts_with(kJpegBegins))
    return faulty("is neither a PNG nor a JPEG file", "export it as one of them");
  DecodedPicture decoded = png ? decode_png(bytes) : decode_jpeg(bytes);
  if (!decoded.fault.empty()) return faulty(std::move(decoded.fault), "export it again");
  auto pattern = std::make_shared<Pattern>(std::move(decoded.codes));
  if (reflectance) pattern->scale_to(*reflectance);
  return {std::move(pattern), {}, {}};
}

}  // namespace fillside
