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

std::vector<Description> open_descriptions(const Arguments& arguments) {
  std::vector<Description> descriptions;
  for (const std::string& scene : arguments.scenes)
    descriptions.push_back(open_description(scene, arguments));
  return descriptions;
}

Scene open_set(const Description& description, const Arguments& arguments) {
  Built built = build(description, arguments.clay ? Finishes::clay : Finishes::own);
  if (!arguments.quiet) show(built.warnings);
  return std::move(built.scene);
}

Effort effort_of(const Arguments& arguments, const Description& description, Stops usual) {
  return {arguments.precision.value_or(usual), arguments.seconds,
          arguments.seed.value_or(static_cast<std::uint64_t>(description.set.seed)), arguments.threads,
          arguments.unbiased};
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

void note_shortfall(const Arguments& arguments, const Effort& effort, double reached_stops,
                    std::string_view where) {
  if (arguments.quiet || effort.seconds || reached_stops <= effort.precision.si) return;
  note(fmt::format("fillside: reached ±{:.3f} stop{}, not the wanted {}; give it some --seconds to go on",
                   reached_stops, where, to_text(effort.precision)));
}

std::string audit_text(const std::optional<Audit>& audit) {
  if (!audit) return "unbiased";
  return fmt::format(
      "cached mode, off by {:+.2f} ± {:.2f} % in the mean, at most {:.2f} % (rms) at single points (audited "
      "at {})",
      100.0 * audit->mean_bias.value(), 100.0 * audit->mean_bias.half_width_95(),
      100.0 * audit->point_bias_at_most, audit->points);
}

nlohmann::ordered_json audit_document(const std::optional<Audit>& audit) {
  if (!audit) return {{"mode", "unbiased"}};
  return {{"mode", "cached"},
          {"mean_bias", audit->mean_bias.value()},
          {"mean_bias_half_width_95", audit->mean_bias.half_width_95()},
          {"point_bias_rms_at_most", audit->point_bias_at_most},
          {"audited_points", audit->points}};
}

void note_refused(const Arguments& arguments, const RefusedSamples& refused) {
  if (arguments.quiet || refused.count == 0) return;
  note(fmt::format(
      "fillside: {} samples gave no finite number and were left out; one is element {}, replicate {}, "
      "sample {}",
      refused.count, refused.element, refused.replicate, refused.sample));
}

std::string file_stem_of(const std::string& scene, const Arguments& arguments) {
  return arguments.stem.empty() ? stem_of(scene) : arguments.stem;
}

std::string stem_of(const std::string& scene) {
  return scene == "-" ? "scene" : std::filesystem::path(scene).stem().string();
}

}  // namespace fillside::tools
