#include <fmt/format.h>

#include <filesystem>

#include "libsim/base/problem.h"
#include "libsim/writers/atomic_file.h"
#include "tools/exit_status.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace fillside::tools {
namespace {

constexpr std::string_view kStarter = R"(# A dish on a table by a window. The camera stands at 6 o'clock, 12 is behind the dish, 9 is left.
# Measure your own window, table and distances; fillside check --full shows everything else that can be set.
set.title = "My table by the window"
daylight = { sky = "overcast", outdoor = "10 klx" }      # a grey day

[[window]]
clock = 9                 # the light comes from the left
distance = "80 cm"        # from the dish to the glass
width = "90 cm"
height = "120 cm"
sill = "90 cm"            # above the floor

[[food]]
kind = "tart"             # ball, egg, bowl, tart, layer cake, loaf, dumpling, jar, tumbler ...

[[board]]
name = "fill"
sheet = "A3"              # or width and height
surface = "white foam board"   # black foam board, crumpled foil, mirror ...
clock = 3                 # opposite the window
distance = "25 cm"
lean = "10 deg"           # top toward the food
)";

}  // namespace

int run_scene(const Arguments& arguments) {
  if (arguments.new_file.empty() || arguments.new_file == "-") {
    say(kStarter);
    return kDone;
  }
  if (std::filesystem::exists(arguments.new_file))
    throw WriteError(fmt::format("{} is there already; give the new scene another name", arguments.new_file));
  write_file(arguments.new_file, kStarter);
  say(fmt::format("{} written; next: fillside meter {}\n", arguments.new_file, arguments.new_file));
  return kDone;
}

}  // namespace fillside::tools
