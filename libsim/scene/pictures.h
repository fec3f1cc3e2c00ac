// Pictures that a scene names for its surfaces: looked for by check(), read by build().
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "libsim/matter/pattern.h"
#include "libsim/scene/description.h"
#include "libsim/scene/fault_list.h"

namespace fillside {

/// Where a file named in the scene lies: relative to the scene's folder.
std::string path_beside(const Description& description, const std::string& file);

/// Files that are missing or too large, pictures beside a finish of another kind, widths without a picture.
void check_pictures(const Description& description, std::vector<Problem>& problems);

/// The picture, scaled to the reflectance in the mean where there is one; null, and a problem at `key`, when
/// the file cannot be read.
std::shared_ptr<const Pattern> read_picture(const FaultList& faults, std::string_view key,
                                            const Description& description, const PictureOn& picture,
                                            std::optional<double> reflectance);

/// The bytes of all pictures named by things in use, in the order of the sections.
std::string bytes_of_pictures(const Description& description);

}  // namespace fillside
