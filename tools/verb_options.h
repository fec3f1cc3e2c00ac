// Which options each verb takes.
#pragma once

#include "tools/arguments.h"
#include "tools/help_pages.h"
#include "tools/option_shapes.h"

namespace fillside::tools {

/// Declares the verb with its options; what is read goes into `a`, which must outlive the reading.
void add_verb(CLI::App& app, const VerbPage& page, Arguments& a);

}  // namespace fillside::tools
