// What a scene can name: surfaces, cloths and stock sheets, with the source of every number.
#pragma once

#include <string>

namespace fillside::tools {

std::string catalogue_tables();

}  // namespace fillside::tools
