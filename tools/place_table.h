// What `place` found, as a table for people.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "libsim/what_if/place.h"

namespace fillside::tools {

/// `given`: the --set edits of the command, for the command to look at it.
std::string place_table(const Description& description, const PlaceTask& task, const PlaceAnswer& answer,
                        const Effort& effort, const std::vector<std::string>& given);
nlohmann::ordered_json place_json(const Description& description, const PlaceTask& task,
                                  const PlaceAnswer& answer, const Effort& effort);

}  // namespace fillside::tools
