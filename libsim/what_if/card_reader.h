// A set card read back: the same measures, from the words that a person reads.
#pragma once

#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/scene/source_tree.h"

namespace fillside {

/// Takes the lines of each thing's measures for what they say; headings of steps, notes and what stands in
/// brackets are passed over. A line under a thing that is none of a card's sentences becomes a problem.
/// `name` stands in messages, and pictures are looked for beside it.
SourceTree read_card(std::string text, std::string name, std::vector<Problem>& problems);

/// The set of a card, described and checked as a scene file is. Throws SceneError with every problem.
Description load_card(std::string text, std::string name, std::vector<Problem>& warnings);

}  // namespace fillside
