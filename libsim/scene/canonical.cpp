#include "libsim/scene/canonical.h"

#include <fmt/format.h>

#include <cstdint>

#include "libsim/scene/lesson.h"
#include "libsim/scene/pictures.h"
#include "libsim/scene/sections.h"
#include "libsim/scene/value_writer.h"

namespace fillside {
namespace {

/// One key of a section: its text, nothing when left out.
struct Line {
  std::string_view key, help;
  std::optional<std::string> value;
};

/// The visitor of the field tables: turns a section into lines.
template <class S>
std::vector<Line> lines_of(S section) {
  std::vector<Line> lines;
  fields(
      [&](const Field& field, const auto& member) {
        lines.push_back({field.key, field.help, written_if_there(member)});
      },
      section);
  return lines;
}

std::string with_help(const Line& line) {
  const std::string left =
      line.value ? fmt::format("{} = {}", line.key, *line.value) : fmt::format("# {} =", line.key);
  return fmt::format("{:<36} # {}\n", left, line.help);
}

/// The lines that differ from the default section's; a section's name is always said.
template <class S>
std::string body(const S& section, bool all_defaults) {
  S plain;
  if constexpr (std::is_same_v<S, ItemSection>) plain.subject = section.subject;
  const auto lines = lines_of(section), defaults = lines_of(plain);
  std::string text;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (all_defaults)
      text += with_help(lines[i]);
    else if (lines[i].value && lines[i].value != defaults[i].value)
      text += fmt::format("{} = {}\n", lines[i].key, *lines[i].value);
  }
  return text;
}

template <class S>
std::string_view heading_of(const Heading& heading, const S& section) {
  if constexpr (std::is_same_v<S, ItemSection>) return section.subject ? heading.name : heading.also;
  return heading.name;
}

}  // namespace

std::string canonical_scene(const Description& description, bool all_defaults) {
  std::string text;
  const auto add = [&](const std::string& heading, const std::string& lines) {
    text += fmt::format("{}{}\n{}", text.empty() ? "" : "\n", heading, lines);
  };
  each_section(description, [&]<class S>(const Heading& heading, const S& section) {
    if constexpr (SectionList<S>) {
      for (const auto& one : section)
        add(fmt::format("[[{}]]", heading_of(heading, one)), body(one, all_defaults));
    } else if (const std::string lines = body(section, all_defaults); !lines.empty()) {
      add(fmt::format("[{}]", heading.name), lines);
    }
  });
  return text;
}

std::string canonical_lesson(const LessonSection& lesson) {
  return lesson.says_anything() ? fmt::format("[{}]\n{}", kLessonHeading, body(lesson, true)) : "";
}

std::string fingerprint(std::string_view bytes) {
  // Fowler, Noll, Vo, Eastlake, "The FNV Non-Cryptographic Hash Algorithm", IETF draft, section 2.
  std::uint64_t state = 0xcbf29ce484222325u;
  for (const char c : bytes) {
    state ^= static_cast<unsigned char>(c);
    state *= 0x100000001b3u;
  }
  return fmt::format("{:016x}", state);
}

std::string scene_hash(const Description& description) {
  return fingerprint(canonical_scene(description, false) + bytes_of_pictures(description));
}

}  // namespace fillside
