// What `place` found, as a table for people.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "libsim/what_if/place.h"

namespace fillside::tools {

std::string place_table(const Description& description, const PlaceTask& task, const PlaceAnswer& answer,
                        const Effort& effort);
nlohmann::ordered_json place_json(const Description& description, const PlaceTask& task,
                                  const PlaceAnswer& answer, const Effort& effort);

}  // namespace fillside::tools
