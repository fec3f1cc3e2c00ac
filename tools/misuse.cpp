#include "tools/misuse.h"

#include <fmt/format.h>

#include <algorithm>

#include "libsim/scene/wording.h"
#include "tools/edited_scene.h"
#include "tools/help_pages.h"
#include "tools/stock_words.h"
#include "tools/vary.h"

namespace fillside::tools {
namespace {

[[noreturn]] void refuse_word(const std::string& fault, const std::string& word,
                              const std::vector<std::string>& names, std::string_view lead) {
  throw Misuse{fault + "; " + suggestion(word, names, lead)};
}

void refuse_one_name_twice(const std::vector<Variant>& variants) {
  for (auto one = variants.begin(); one != variants.end(); ++one)
    for (auto other = variants.begin(); other != one; ++other)
      if (file_word(one->name) == file_word(other->name))
        throw Misuse{fmt::format("two variants would be called {}; name them: --variant \"NAME: KEY=VALUE\"",
                                 in_quotes(one->name))};
}

void refuse_too_many(const std::vector<SeriesAxis>& axes) {
  std::size_t sets = 1;
  for (const SeriesAxis& axis : axes) sets *= axis.values.size();
  if (sets > kMostSeriesSets)
    throw Misuse{fmt::format("--vary: {} sets are more than {}; give fewer values", sets, kMostSeriesSets)};
  if (axes.size() == 2 && axes[0].key == axes[1].key)
    throw Misuse{fmt::format("--vary: {} is varied twice", in_quotes(axes[0].key))};
}

/// Every combination of choices is a search of its own.
void refuse_too_many(const std::vector<Freedom>& freedoms) {
  constexpr std::size_t kMost = 100;
  std::size_t combinations = 1;
  for (const Freedom& freedom : freedoms) {
    combinations *= std::max<std::size_t>(1, freedom.choices.size());
    if (combinations > kMost)
      throw Misuse{fmt::format("--move: more than {} combinations to choose from; shorten the lists", kMost)};
  }
}

}  // namespace

void refuse_verb(const std::string& word) {
  if (word.starts_with('-'))
    throw Misuse{fmt::format("{} stands where the verb should; options come after it", in_quotes(word))};
  std::vector<std::string> names;
  for (const VerbPage& page : kVerbPages) names.emplace_back(page.name);
  refuse_word(in_quotes(word) + " is not a verb", word, names, "the verbs are");
}

void refuse_option(const std::string& verb, const std::string& word, const std::vector<std::string>& known) {
  const std::string option = word.substr(0, word.find('='));
  refuse_word(fmt::format("{} is not an option of {}", in_quotes(option), verb), option, known, "it has");
}

void refuse_shape(const std::string& verb, const std::string& last_word) {
  if (verb.empty()) refuse_verb(last_word);
  if (last_word.starts_with('-') && last_word.find('=') == std::string::npos)
    throw Misuse{fmt::format("{} needs a value", last_word)};
  throw Misuse{"a value stands where none is taken: --json, --quiet, --full and --empty have none"};
}

void refuse_contradictions(const Arguments& a) {
  refuse_one_name_twice(a.variants);
  if (a.verb == "scene") return;
  if (a.verb == "rules" && a.seconds) throw Misuse{"rules measures to a --precision, not for some --seconds"};
  if (a.verb == "rules") return;
  if (a.light && (!a.scenes.empty() || a.full || !a.edits.empty() || a.precision || a.seconds))
    throw Misuse{
        "--light looks at the program, not at a scene; only --seed, --threads, --json and -q go with it"};
  if (a.light) return;
  if (a.scenes.empty())
    throw Misuse{fmt::format("{} needs a scene; fillside scene writes one to start with", a.verb)};
  if (a.verb == "calendar" && a.scenes.size() > 1)
    throw Misuse{fmt::format("calendar takes one scene; {} is a second one", in_quotes(a.scenes[1]))};
  if (a.verb == "compare" && a.scenes.size() + a.variants.size() < 2)
    throw Misuse{
        "compare needs a second scene, or a --variant: --variant \"no board: board.fill.used=false\""};
  if (a.verb == "series" && a.scenes.size() > 1)
    throw Misuse{fmt::format("series takes one scene; {} is a second one", in_quotes(a.scenes[1]))};
  if (a.verb == "series" && (a.axes.empty() || a.axes.size() > 2))
    throw Misuse{"series takes --vary once or twice; for example --vary board.fill.distance=15cm,20cm,30cm"};
  if (a.verb == "series") refuse_too_many(a.axes);
  if (a.shard && a.merge)
    throw Misuse{"--shard measures a part, --merge puts all together: give one of the two"};
  if ((a.shard || a.merge) && a.scenes.front() == "-")
    throw Misuse{"shards take a scene from a file, so that all of them read the same"};
  if (a.verb == "place" && a.scenes.size() > 1)
    throw Misuse{fmt::format("place takes one scene; {} is a second one", in_quotes(a.scenes[1]))};
  if (a.verb == "place" && (a.wants.empty() || a.freedoms.empty()))
    throw Misuse{
        "place needs a --want and a --move: --want \"lit:shadow = 2:1\" --move "
        "board.fill.distance=15cm..60cm"};
  refuse_too_many(a.freedoms);
  if (a.verb == "sensitivity" && a.scenes.size() > 1)
    throw Misuse{fmt::format("sensitivity takes one scene; {} is a second one", in_quotes(a.scenes[1]))};
  for (const std::string& text : a.off_by)
    if (text.find('=') == std::string::npos || text.ends_with('='))
      throw Misuse{fmt::format("--off-by: {} is not KEY=AMOUNT; for example --off-by board.fill.distance=3cm",
                               in_quotes(text))};
  if (a.verb == "plan" && a.scenes.size() > 1)
    throw Misuse{fmt::format("plan takes one scene; {} is a second one", in_quotes(a.scenes[1]))};
  if (a.verb == "lesson" && (a.scenes.size() > 1 || a.scenes.front() == "-"))
    throw Misuse{fmt::format("lesson takes one scene file; {} is {}", in_quotes(a.scenes.back()),
                             a.scenes.size() > 1 ? "a second one" : "none")};
  if (!a.cut && (!a.stock.empty() || !a.prices.empty() || a.kerf.si > 0.0))
    throw Misuse{"--stock, --price and --kerf go with --cut"};
  if (a.back && (a.cut || a.json || !a.edits.empty()))
    throw Misuse{"--back prints the scene of a card; leave --cut, --json and --set out"};
  priced_stock(a.stock, a.prices);
  if (a.date && a.year) throw Misuse{"--date and --year: the date says the year"};
  if (a.precision && a.seconds && a.verb != "report")  // there they are of readings and of pictures
    throw Misuse{"--precision and --seconds: give one of the two"};
  if (std::ranges::count(a.scenes, "-") > 1) throw Misuse{"standard input (-) can be read only once"};
  if (a.full && a.scenes.size() > 1) throw Misuse{"--full prints one scene at a time"};
  if (a.full && a.json) throw Misuse{"--full prints a scene file, not JSON; leave one of the two out"};
}

}  // namespace fillside::tools
