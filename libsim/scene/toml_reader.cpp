#include "libsim/scene/toml_reader.h"

#include <fmt/format.h>

#include <toml++/toml.h>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <tuple>
#include <utility>

#include "libsim/scene/source_text.h"
#include "libsim/scene/wording.h"

namespace fillside {
namespace {

Place place_of(const toml::source_region& region, const std::string& file) {
  return {file, static_cast<int>(region.begin.line), static_cast<int>(region.begin.column)};
}

SourceValue value_of(const toml::node& node, const std::string& file);

/// The library keeps keys by the alphabet; their places restore the file's order.
SourceTable table_of(const toml::table& table, const std::string& file) {
  SourceTable out;
  for (auto&& [key, node] : table)
    out.entries.push_back({std::string(key.str()), place_of(key.source(), file), value_of(node, file)});
  std::ranges::stable_sort(
      out.entries, {}, [](const SourceEntry& e) { return std::tie(e.key_place.line, e.key_place.column); });
  return out;
}

SourceArray array_of(const toml::array& array, const std::string& file) {
  SourceArray out;
  for (const toml::node& node : array) out.push_back(value_of(node, file));
  return out;
}

/// Dates and times become texts, which the reader of an Instant takes; `clock = 09:30:00` is faulted as a
/// text.
template <class T>
std::string text_of(const T& value) {
  std::ostringstream out;
  out.imbue(std::locale::classic());
  out << value;
  return out.str();
}

SourceValue value_of(const toml::node& node, const std::string& file) {
  SourceValue out{place_of(node.source(), file), false};
  if (const auto* table = node.as_table()) out.what = table_of(*table, file);
  if (const auto* array = node.as_array()) out.what = array_of(*array, file);
  if (const auto* text = node.as_string()) out.what = text->get();
  if (const auto* whole = node.as_integer()) out.what = SourceNumber{static_cast<double>(whole->get()), true};
  if (const auto* number = node.as_floating_point()) out.what = SourceNumber{number->get(), false};
  if (const auto* truth = node.as_boolean()) out.what = truth->get();
  if (const auto* date = node.as_date()) out.what = text_of(date->get());
  if (const auto* time = node.as_time()) out.what = text_of(time->get());
  if (const auto* stamp = node.as_date_time()) out.what = text_of(stamp->get());
  return out;
}

/// What people most often got wrong when the library says this.
std::string remedy_for(std::string_view said) {
  constexpr std::pair<std::string_view, std::string_view> kRemedies[] = {
      {"existing array", "write [[...]] with two brackets each time, or only once with one"},
      {"existing table", "a heading in single brackets may stand only once"},
      {"cannot redefine", "a key may stand only once under a heading"},
      {"control characters", "end the text with a quote on its own line"},
      {"expected a comment or whitespace",
       "texts and values with units stand in quotes, as in distance = \"60 cm\""},
      {"decimal integer: expected digit",
       "texts and values with units stand in quotes, as in distance = \"60 cm\""},
      {"parsing time", "clock positions stand in quotes, as in clock = \"9:30\""},
      {"leading zeroes", "write the number without zeroes in front"},
      {"expected 'true'", "write true or false in small letters, texts in quotes"},
      {"expected 'false'", "write true or false in small letters, texts in quotes"},
      {"could not determine value type", "texts stand in quotes, as in surface = \"light oak\""},
      {"expected value, saw '#'", "colours stand in quotes, as in colour = \"#c8a060\""},
      {"expected value", "give the key a value, or take the line out"},
      {"expected '='", "write key = value"},
      {"expected ']'", "close the brackets on the line where they open, as in [[window]]"},
  };
  for (const auto& [part, remedy] : kRemedies)
    if (said.find(part) != std::string_view::npos) return std::string(remedy);
  return "a line is a [heading], key = value, or a comment after #";
}

[[noreturn]] void refuse(Problem problem, std::string_view text) {
  std::vector<Problem> problems{std::move(problem)};
  attach_source_lines(problems, problems.front().place.file, text);
  throw SceneError(std::move(problems));
}

Problem syntax_problem(const toml::parse_error& error, const std::string& file) {
  std::string_view said = error.description();
  constexpr std::string_view kLead = "Error while parsing ";
  const std::string remedy = remedy_for(said);
  if (said.starts_with(kLead)) said.remove_prefix(kLead.size());
  return problem_at(place_of(error.source(), file), fmt::format("cannot read this {}", said), remedy);
}

std::string too_long(std::uintmax_t size) {
  return fmt::format("{:.1f} MB is too long for a scene; the limit is {} MB",
                     static_cast<double>(size) / (1 << 20), kLargestScene >> 20);
}

}  // namespace

SourceTree read_scene_text(std::string text, std::string name) {
  if (text.size() > kLargestScene)
    refuse(problem_at({name, 0, 0}, too_long(text.size()), "is this the right file?"), {});
  if (auto fault = fault_of_text(text, name)) refuse(std::move(*fault), text);
  try {
    SourceTable root = table_of(toml::parse(std::string_view(text), std::string_view(name)), name);
    return {std::move(name), std::move(text), std::move(root)};
  } catch (const toml::parse_error& error) {
    refuse(syntax_problem(error, name), text);
  }
}

SourceTree read_scene_file(const std::string& path) {
  namespace fs = std::filesystem;
  std::error_code fault;
  const fs::file_status status = fs::status(path, fault);
  if (!fs::exists(status))
    refuse(problem_at({path, 0, 0}, "there is no such file", "check its name and the folder you are in"), {});
  if (fs::is_directory(status))
    refuse(problem_at({path, 0, 0}, "this is a folder, not a scene", "name a .toml file in it"), {});
  if (const auto size = fs::file_size(path, fault); !fault && size > kLargestScene)
    refuse(problem_at({path, 0, 0}, too_long(size), "is this the right file?"), {});
  std::ifstream in(path, std::ios::binary);
  // One byte over the limit is enough to know, also for pipes and devices that tell no size.
  std::string text(kLargestScene + 1, '\0');
  in.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (!in.is_open() || in.bad())
    refuse(problem_at({path, 0, 0}, "the file cannot be read", "may you read it?"), {});
  text.resize(static_cast<std::size_t>(in.gcount()));
  return read_scene_text(std::move(text), path);
}

std::optional<SourceValue> read_value(std::string_view text) {
  const std::string line = "value = " + std::string(text);
  if (text.size() > kLargestScene || fault_of_text(line, {})) return std::nullopt;
  try {
    SourceTable root = table_of(toml::parse(std::string_view(line)), {});
    if (root.entries.size() != 1 || root.entries.front().key != "value") return std::nullopt;
    return std::move(root.entries.front().value);
  } catch (const toml::parse_error&) {
    return std::nullopt;
  }
}

}  // namespace fillside
