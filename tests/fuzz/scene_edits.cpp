#include <sstream>

#include "libsim/scene/load.h"
#include "tests/fuzz/harnesses.h"
#include "tests/fuzz/laws.h"

namespace fillside::fuzz {
namespace {

constexpr const char* kScene = R"([set]
title = "a bit of everything"
[daylight]
sky = "overcast"
[[window]]
[[window]]
name = "small one"
clock = "12"
size = "small"
[[food]]
kind = "box"
parts = { body = "rye crust" }
[[board]]
name = "fill"
clock = "3"
distance = "30 cm"
sheet = "A3"
[[board]]
name = "a.b"
used = false
sheet = "A4"
clock = "5"
distance = "40 cm"
[[lamp]]
x = "1 m"
y = "0 m"
z = "1 m"
lumens = "400 lm"
[[meter]]
name = "spot"
[[claim]]
figure = "subject.stops"
is = 1
tolerance = 1
[camera]
)";

std::vector<std::string> lines_of(std::string_view input) {
  constexpr std::size_t kMost = 8;
  std::istringstream text{std::string(input)};
  std::vector<std::string> lines;
  for (std::string line; lines.size() < kMost && std::getline(text, line);) lines.push_back(line);
  return lines;
}

}  // namespace

void scene_edits(std::string_view input) {
  const int lines = line_count(kScene);
  std::vector<Problem> warnings;
  try {
    const Description set =
        load_description_text(kScene, "/nowhere/set.toml", lines_of(input), warnings, shared_stand_ins());
    keep_problem_laws(warnings, lines);
    keep_writing_laws(set);
  } catch (const SceneError& error) {
    keep_refusal_laws(error, lines);
  }
}

}  // namespace fillside::fuzz
