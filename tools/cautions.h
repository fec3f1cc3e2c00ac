// Safety remarks that fit a set; short, and deferring to the makers' instructions and local codes.
#pragma once

#include <string>
#include <vector>

#include "libsim/scene/description.h"

namespace fillside::tools {

/// One line each, empty when there is nothing to say.
std::string cautions_for(const Description& description);
/// The same, without the word before each and the line ends.
std::vector<std::string> caution_list(const Description& description);

/// What of them concerns lamps that are on; for readings, too.
std::string lamp_cautions_for(const Description& description);

/// Lamps that stand there dark, one line each: they are off unless the file says otherwise.
std::string notes_for(const Description& description);

}  // namespace fillside::tools
