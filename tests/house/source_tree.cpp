#include "tests/house/source_tree.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>

namespace fillside::tests {
namespace {

namespace fs = std::filesystem;

const fs::path kRoot = FILLSIDE_SOURCE_DIR;

std::vector<std::string> lines_of(const fs::path& path) {
  std::ifstream in(path);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

bool is_hidden(const fs::path& path) { return path.filename().string().starts_with('.'); }

bool is_text(const fs::path& path) {
  static constexpr std::string_view kEndings[] = {".h",  ".cpp",  ".txt", ".cmake", ".in",   ".sh",
                                                  ".md", ".toml", ".csv", ".obj",   ".json", ".html",
                                                  ".js", ".css",  ".svg", ".yml"};
  return std::ranges::find(kEndings, path.extension().string()) != std::end(kEndings);
}

std::vector<std::string> includes(const SourceFile& file, const std::regex& pattern) {
  std::vector<std::string> found;
  std::smatch match;
  for (const std::string& line : file.lines)
    if (std::regex_search(line, match, pattern)) found.push_back(match[1]);
  return found;
}

}  // namespace

std::vector<std::string> top_level() {
  auto ignored = lines_of(kRoot / ".gitignore");
  for (std::string& name : ignored) name.erase(std::min(name.find('/'), name.size()));
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(kRoot)) {
    std::string name = entry.path().filename().string();
    if (!is_hidden(name) && std::ranges::find(ignored, name) == ignored.end())
      names.push_back(std::move(name));
  }
  std::ranges::sort(names);
  return names;
}

std::vector<SourceFile> text_files(std::string_view below) {
  const fs::path top = kRoot / below;
  std::vector<SourceFile> files;
  const auto take = [&](const fs::path& path) {
    if (is_text(path) && !is_hidden(path))
      files.push_back({fs::relative(path, kRoot).generic_string(), lines_of(path)});
  };
  if (fs::is_regular_file(top)) take(top);
  if (fs::is_directory(top))
    for (auto it = fs::recursive_directory_iterator(top); it != fs::recursive_directory_iterator(); ++it) {
      if (it->is_directory() && (is_hidden(it->path()) || it->path().filename() == "node_modules"))
        it.disable_recursion_pending();
      else if (it->is_regular_file())
        take(it->path());
    }
  std::ranges::sort(files, {}, &SourceFile::path);
  return files;
}

std::vector<SourceFile> cpp_files(std::string_view below) {
  auto files = text_files(below);
  std::erase_if(files,
                [](const SourceFile& f) { return !f.path.ends_with(".h") && !f.path.ends_with(".cpp"); });
  return files;
}

std::vector<std::string> quoted_includes(const SourceFile& file) {
  static const std::regex pattern(R"(^\s*#\s*include\s*"([^"]+)\")");
  return includes(file, pattern);
}

std::vector<std::string> angled_includes(const SourceFile& file) {
  static const std::regex pattern(R"(^\s*#\s*include\s*<([^>]+)>)");
  return includes(file, pattern);
}

std::string floor_of(std::string_view path) {
  constexpr std::string_view kLibrary = "libsim/";
  if (!path.starts_with(kLibrary)) return {};
  path.remove_prefix(kLibrary.size());
  const auto slash = path.find('/');
  return slash == std::string_view::npos ? std::string{} : std::string(path.substr(0, slash));
}

}  // namespace fillside::tests
