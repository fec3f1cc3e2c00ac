#include <fmt/format.h>

#include <filesystem>

#include "libsim/base/problem.h"
#include "tools/catalogue_tables.h"
#include "tools/exit_status.h"
#include "tools/scene_schema.h"
#include "tools/terminal.h"
#include "tools/verbs.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

constexpr std::string_view kStarter =
    R"(# My table by the window. The camera stands at 6 o'clock, 12 is behind the dish, 9 is to its left.
# Measure your own. What is not said here has a default: fillside check --full shows them all.
[[window]]
clock = 9                      # the key: light from the left
distance = "80 cm"             # from the dish to the glass
width = "90 cm"
height = "120 cm"
sill = "90 cm"                 # from the floor to the glass

[[food]]
kind = "tart"                  # or ball, egg, plate, bowl, layer cake, loaf, dumpling, jar, tumbler, box

[[board]]                      # sends light back into the shadow side: fill
name = "fill"
sheet = "A3"                   # or width and height
surface = "white foam board"   # try "black foam board" or "crumpled kitchen foil"
clock = 3                      # across from the window
distance = "25 cm"
)";

}  // namespace

int run_scene(const Arguments& arguments) {
  if (arguments.schema) {
    say(scene_schema().dump(2) + '\n');
    return kDone;
  }
  if (arguments.catalogue) {
    say(catalogue_tables());
    return kDone;
  }
  if (arguments.new_file.empty() || arguments.new_file == "-") {
    say(kStarter);
    return kDone;
  }
  std::error_code unreachable;  // then writing says why
  if (std::filesystem::exists(std::filesystem::symlink_status(arguments.new_file, unreachable)))
    throw WriteError(fmt::format("{} is there already; give the new scene another name", arguments.new_file));
  write_file(arguments.new_file, kStarter);
  say(fmt::format("{0} written; next: fillside meter {0}\n", arguments.new_file));
  return kDone;
}

}  // namespace fillside::tools
