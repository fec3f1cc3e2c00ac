#include "tools/compared_sets.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <optional>

#include "libsim/scene/wording.h"
#include "tools/edited_scene.h"

namespace fillside::tools {
namespace {

/// A set before it is built.
struct Named {
  std::string name;
  std::vector<std::string> edits;
  std::optional<Description> description;
};

/// Short names of scene files; the whole path where two are called alike.
std::string name_of_scene(const Arguments& arguments, const std::string& scene) {
  const auto alike = [&](const std::string& other) { return stem_of(other) == stem_of(scene); };
  return std::ranges::count_if(arguments.scenes, alike) > 1 ? scene : stem_of(scene);
}

}  // namespace

std::string ComparedSet::heading() const {
  if (edits.empty()) return fmt::format("{}: {}", name, description.set.title);
  const std::string all = fmt::format("{}", fmt::join(edits, ", "));
  return name == all ? name : fmt::format("{}: {}", name, all);
}

std::vector<ComparedSet> open_compared(const Arguments& arguments) {
  std::vector<Problem> problems;
  std::vector<Named> named;
  const EditedScene first(arguments.scenes.front(), arguments);
  for (const std::string& scene : arguments.scenes)
    named.push_back({name_of_scene(arguments, scene),
                     {},
                     (named.empty() ? first : EditedScene(scene, arguments)).with({}, "", problems)});
  for (const Variant& variant : arguments.variants) {
    const std::string place = fmt::format("--variant {}: ", in_quotes(variant.name));
    named.push_back({variant.name, variant.edits, first.with(variant.edits, place, problems)});
  }
  settle(std::move(problems), arguments);
  std::vector<ComparedSet> sets;
  for (Named& each : named) {
    Scene scene = open_set(*each.description, arguments);
    sets.push_back(
        {std::move(each.name), std::move(each.edits), std::move(*each.description), std::move(scene)});
  }
  return sets;
}

}  // namespace fillside::tools
