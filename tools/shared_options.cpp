#include "tools/shared_options.h"

#include <fmt/format.h>

#include "libsim/base/limits.h"
#include "libsim/scene/wording.h"
#include "tools/misuse.h"
#include "tools/option_values.h"

namespace fillside::tools {

void add_reading(CLI::App& verb, Arguments& a) {
  add_value(verb, "--set", "KEY=VALUE",
            "change one thing, any number of times: board.fill.distance=30cm, room.walls=0.8, "
            "board.fill.used=false",
            [&a](const std::string& word) { a.edits.push_back(word); });
  add_switch(verb, "--json", a.json, "the answer as JSON, for programs");
  add_switch(verb, "-q,--quiet", a.quiet, "no progress and no notes");
}

void add_measuring(CLI::App& verb, Arguments& a, Stops usual) {
  add_value(verb, "--precision", "STOPS",
            fmt::format("measure until the 95 % error bar is this small; \"{}\" by default", to_text(usual)),
            [&a](const std::string& word) { a.precision = precision_value("--precision", word); });
  add_value(verb, "--seconds", "N", "measure for about this long instead",
            [&a](const std::string& word) { a.seconds = seconds_value("--seconds", word); });
  add_value(verb, "--seed", "N", "number that fixes every random choice; the scene's own by default",
            [&a](const std::string& word) {
              a.seed = whole_number("--seed", word, {0, UINT64_MAX});
            });
  add_value(verb, "--threads", "N", "0, the default: all processors; the answer is the same for any number",
            [&a](const std::string& word) {
              a.threads = static_cast<int>(whole_number("--threads", word, {0, 256}));
            });
}

void add_unbiased(CLI::App& verb, Arguments& a) {
  add_switch(
      verb, "--unbiased", a.unbiased,
      "walk every sample to its end, instead of looking up light kept on small cells of the set's surfaces; "
      "slower, and exact but for the noise");
}

void add_folder(CLI::App& verb, Arguments& a) {
  add_value(verb, "-o,--out", "FOLDER", "folder to write into; made when it is not there",
            [&a](const std::string& word) { a.folder = word; });
  add_value(verb, "--name", "NAME", "what the files are called; the scene's name by default",
            [&a](const std::string& word) {
              if (word.empty() || word.find('/') != std::string::npos)
                throw Misuse{fmt::format("--name: {} is not a file's name", in_quotes(word))};
              a.stem = word;
            });
}

void add_pixels(CLI::App& verb, Arguments& a, const std::string& usual) {
  add_value(verb, "--pixels", "N",
            fmt::format("long side, {} to {}; {} by default", kFewestPixels, kMostPixels, usual),
            [&a](const std::string& word) {
              a.pixels = static_cast<int>(whole_number("--pixels", word, {kFewestPixels, kMostPixels}));
            });
}

}  // namespace fillside::tools
