// Options that several verbs have in common.
#pragma once

#include "libsim/base/quantity.h"
#include "tools/arguments.h"
#include "tools/option_shapes.h"

namespace fillside::tools {

void add_reading(CLI::App& verb, Arguments& a);                 ///< --set, --json, --quiet
void add_measuring(CLI::App& verb, Arguments& a, Stops usual);  ///< --precision, --seconds, --seed, --threads
void add_unbiased(CLI::App& verb, Arguments& a);
void add_folder(CLI::App& verb, Arguments& a);  ///< --out, --name
void add_pixels(CLI::App& verb, Arguments& a, const std::string& usual);

}  // namespace fillside::tools
