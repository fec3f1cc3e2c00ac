#include "tools/open_scene.h"

#include <fmt/format.h>

#include <filesystem>
#include <iostream>
#include <iterator>

#include "libsim/scene/canonical.h"
#include "libsim/scene/load.h"
#include "tools/terminal.h"

namespace fillside::tools {

Description open_description(const std::string& scene, const Arguments& arguments) {
  std::vector<Problem> warnings;
  const auto read = [&] {
    if (scene != "-") return load_description(scene, arguments.edits, warnings);
    std::string text{std::istreambuf_iterator<char>(std::cin), {}};
    return load_description_text(std::move(text), "standard input", arguments.edits, warnings);
  };
  Description description = read();
  if (!arguments.quiet) show(warnings);
  return description;
}

Scene open_set(const Description& description, const Arguments& arguments) {
  Built built = build(description);
  if (!arguments.quiet) show(built.warnings);
  return std::move(built.scene);
}

Effort effort_of(const Arguments& arguments, const Description& description, Stops usual) {
  return {arguments.precision.value_or(usual), arguments.seconds,
          arguments.seed.value_or(static_cast<std::uint64_t>(description.set.seed)), arguments.threads};
}

std::string effort_text(const Effort& effort) {
  if (effort.seconds) return fmt::format("seed {}, {}", effort.seed, to_text(*effort.seconds));
  return fmt::format("seed {}, precision {}", effort.seed, to_text(effort.precision));
}

Metadata provenance(const Arguments& arguments, const Description& description, const Effort& effort) {
  return {{"Software", "fillside " FILLSIDE_VERSION},
          {"Title", description.set.title},
          {"Scene", description.file},
          {"Scene hash", scene_hash(description)},
          {"Seed", fmt::format("{}", effort.seed)},
          {"Precision", effort.seconds ? to_text(*effort.seconds) : to_text(effort.precision)},
          {"Command", arguments.command}};
}

std::string stem_of(const std::string& scene) {
  return scene == "-" ? "scene" : std::filesystem::path(scene).stem().string();
}

}  // namespace fillside::tools
