#include "tools/manual.h"

#include <fmt/format.h>

#include "libsim/base/limits.h"
#include "libsim/scene/lesson.h"
#include "libsim/scene/sections.h"
#include "libsim/scene/value_writer.h"
#include "libsim/scene/wording.h"
#include "tools/declared_verbs.h"

namespace fillside::tools {
namespace {

/// What scdoc would take for its own marks.
std::string plain(std::string_view text) {
  std::string safe;
  for (const char c : text) {
    if (std::string_view("\\_*#[]|<>~`").find(c) != std::string_view::npos) safe += '\\';
    safe += c;
  }
  return safe;
}

std::string entry(std::string_view term, std::string_view meaning) {
  return fmt::format("*{}*\n\t{}\n\n", plain(term), plain(meaning));
}

std::string head(std::string_view name, int section, std::string_view duty) {
  return fmt::format("{}({}) \"\" \"fillside {}\"\n\n# NAME\n\n{} - {}\n\n", name, section, FILLSIDE_VERSION,
                     name, plain(duty));
}

constexpr std::string_view kCautions =
    "# CAUTIONS\n\nfillside calculates light; it does not judge whether a set is safe. Keep foam board, "
    "paper and "
    "cloth off hot lamps and flames, mirrors, foil and glass out of sun patches; secure overhead arms; "
    "follow the "
    "makers' instructions and local codes, and use licensed people for wiring, glazing and work at "
    "height.\n\n";

std::string command_page() {
  std::string text = head("fillside", 1, "the light on a table by a window, before a board is moved");
  text +=
      "# SYNOPSIS\n\n*fillside* _verb_ _scene_... [_options_]\n\n# DESCRIPTION\n\nComputes the light on a "
      "table by a "
      "window: how it falls off, how much of it fills the shadows, what a meter reads and how the picture "
      "comes "
      "out, with the boards, cloths and places you have. Every figure has an error bar, a 95 % interval. A "
      "scene "
      "is a short text file; see *fillside-scene*(5).\n\n# OPTIONS\n\n";
  for (const DeclaredOption& option : options_without_verb()) text += entry(option.term(), option.help);
  for (const DeclaredVerb& verb : declared_verbs()) {
    text += fmt::format("# FILLSIDE {}\n\n*fillside {}* {}\n\n{}. {}\n\n", verb.page.name, verb.page.name,
                        plain(verb.page.words), plain(verb.page.duty), plain(verb.page.more));
    for (const DeclaredOption& option : verb.options) text += entry(option.term(), option.help);
    text += fmt::format("Example: *{}*\n\n", plain(verb.page.example));
  }
  text +=
      "# EXIT STATUS\n\n0 done, 1 the answer is no (a claim fails, a wish cannot be reached), 2 bad usage, 3 "
      "bad "
      "input, 4 could not write.\n\n# ENVIRONMENT\n\n";
  text += entry("NO_COLOR", "when set and not empty, nothing is coloured");
  return text + std::string(kCautions) + "# SEE ALSO\n\n*fillside-scene*(5)\n";
}

/// Of a section that says nothing: its defaults.
template <class S>
std::string keys_of_section() {
  S section;
  std::string text;
  fields(
      [&](const Field& field, const auto& member) {
        const auto value = written_if_there(member);
        std::string help(field.help);
        if (const auto choices = split_choices(field.choices); !choices.empty())
          help += fmt::format("; one of {}", listed(choices));
        text += entry(value ? fmt::format("{} = {}", field.key, *value) : std::string(field.key), help);
      },
      section);
  return text;
}

std::string limits_section() {
  std::string text = "# LIMITS\n\nWhat is more than this is refused, with a message that says so.\n\n";
  for (const Limit& limit : kLimits)
    text += entry(limit.what, fmt::format("{}{}{}", limit.most, limit.unit.empty() ? "" : " ", limit.unit));
  return text;
}

std::string scene_page() {
  std::string text =
      head("fillside-scene", 5, "a set as fillside reads it: window, table, food, boards, camera");
  text +=
      "# DESCRIPTION\n\nA scene is a TOML file. Everything is placed from the dish: the camera stands at 6 "
      "o'clock, 12 is "
      "behind the dish, 9 is left. Values with a dimension are texts with their unit (\"60 cm\", \"1/8 in\", "
      "\"12 klx\", "
      "\"f/8\", \"1/60 s\"); plain numbers are pure. A key that is left out has the value shown here, or, "
      "where none "
      "is shown, what its help says. *fillside check --full* prints a scene with every default, *fillside "
      "scene "
      "--catalogue* the surfaces, cloths and sheets by name.\n\n";
  Description empty;
  each_section(empty, [&]<class S>(const Heading& heading, const S&) {
    if constexpr (SectionList<S>) {
      text += fmt::format("# {}\n\n", plain(fmt::format("[[{}]]", heading.name)));
      if (!heading.also.empty())
        text += fmt::format("And \\[\\[{}\\]\\], which takes the same keys.\n\n", heading.also);
      text += keys_of_section<typename S::value_type>();
    } else {
      text += fmt::format("# {}\n\n", plain(fmt::format("[{}]", heading.name))) + keys_of_section<S>();
    }
  });
  text +=
      fmt::format("# {}\n\n", plain(fmt::format("[{}]", kLessonHeading))) + keys_of_section<LessonSection>();
  return text + limits_section() + "# SEE ALSO\n\n*fillside*(1)\n";
}

}  // namespace

std::optional<std::string> manual_page(std::string_view page) {
  if (page == "fillside") return command_page();
  if (page == "fillside-scene") return scene_page();
  return std::nullopt;
}

}  // namespace fillside::tools
