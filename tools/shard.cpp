#include "tools/shard.h"

#include <fmt/format.h>

#include "libsim/scene/wording.h"
#include "tools/misuse.h"
#include "tools/option_values.h"

namespace fillside::tools {

Shard shard_value(const std::string& option, const std::string& word) {
  const auto slash = word.find('/');
  if (slash == std::string::npos)
    throw Misuse{fmt::format("{}: {} is not K/N; for example {} 3/16, the third of sixteen", option,
                             in_quotes(word), option)};
  const std::size_t of = whole_number(option, word.substr(slash + 1), {1, kMostShards});
  const std::string number = word.substr(0, slash);
  if (number == "0")
    throw Misuse{
        fmt::format("{}: shards are counted from 1; a job array of {} is --array=1-{}", option, of, of)};
  return {whole_number(option, number, {1, of}), of};
}

std::string to_text(const Shard& shard) { return fmt::format("{}/{}", shard.number, shard.of); }

std::string in_ranges(const std::vector<std::size_t>& numbers) {
  std::string text;
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    std::size_t last = i;
    while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
    text += fmt::format("{}{}", text.empty() ? "" : ",", numbers[i]);
    if (last > i) text += fmt::format("{}{}", last > i + 1 ? "-" : ",", numbers[last]);
    i = last;
  }
  return text;
}

}  // namespace fillside::tools
