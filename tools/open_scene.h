// From a scene's name on the command line to a checked description and the built set.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/scene/build.h"
#include "libsim/scene/description.h"
#include "libsim/transport/measurement.h"
#include "libsim/what_if/audit.h"
#include "libsim/what_if/effort.h"
#include "libsim/writers/metadata.h"
#include "tools/arguments.h"

namespace fillside::tools {

/// Reads, edits and checks; shows warnings. Throws SceneError.
Description open_description(const std::string& scene, const Arguments& arguments);
/// The same for all scenes of the command, so that a fault in the last is found before the first is measured.
std::vector<Description> open_descriptions(const Arguments& arguments);
/// Builds, shows warnings.
Scene open_set(const Description& description, const Arguments& arguments);

/// The effort that the options ask for; `usual` where they do not say.
Effort effort_of(const Arguments& arguments, const Description& description, Stops usual);

/// What every output file carries: command, version, scene, seed and precision.
Metadata provenance(const Arguments& arguments, const Description& description, const Effort& effort);

/// Says when the wanted precision was not reached; `where` tells of what: "", " in 95 % of the cells".
void note_shortfall(const Arguments& arguments, const Effort& effort, double reached_stops,
                    std::string_view where);
/// How far the cached mode was found to be off, or "unbiased": for the answer's last line, and for programs.
std::string audit_text(const std::optional<Audit>& audit);
nlohmann::ordered_json audit_document(const std::optional<Audit>& audit);
/// Says when samples had to be left out, and which.
void note_refused(const Arguments& arguments, const RefusedSamples& refused);

/// The scene's short name for file names: "citrus_tart" for "scenes/citrus_tart.toml".
std::string stem_of(const std::string& scene);
/// What the files of that scene are called: --name, else the scene's short name.
std::string file_stem_of(const std::string& scene, const Arguments& arguments);

/// "seed 1, precision 0.05 stop": one line for captions.
std::string effort_text(const Effort& effort);

}  // namespace fillside::tools
