#include "tools/place_table.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "libsim/scene/wording.h"
#include "libsim/writers/plain_table.h"
#include "tools/compare_table.h"
#include "tools/figure_json.h"
#include "tools/help_text.h"
#include "tools/meter_table.h"
#include "tools/open_scene.h"
#include "tools/shell_words.h"

namespace fillside::tools {
namespace {

using enum PlainTable::Align;

std::string holds_text(const PlacedKey& key) {
  if (key.holds_from.empty()) return "";
  if (key.holds_from == key.holds_to) return "there only";
  return fmt::format("{} to {}", key.holds_from, key.holds_to);
}

std::string end_text(const PlacedKey& key) {
  if (key.at_least_bound) return "the least it may be";
  if (key.at_most_bound) return "the most it may be";
  return "";
}

PlainTable keys_table(const PlaceAnswer& answer) {
  PlainTable table{{{"key"}, {"set to"}, {"all wants hold from"}, {""}}, {}, ""};
  for (const PlacedKey& key : answer.keys)
    table.rows.push_back({key.key, key.text, holds_text(key), end_text(key)});
  return table;
}

std::string value_text(const Estimate& value, const std::string& unit) {
  return unit == "ratio" ? fmt::format("{} : 1", with_error(value))
                         : fmt::format("{} {}", with_error(value), unit);
}

PlainTable wants_table(const PlaceTask& task, const PlaceAnswer& answer) {
  PlainTable table{{{"wanted"}, {"it reads", right}, {"to spare, stops", right}, {""}}, {}, ""};
  for (std::size_t i = 0; i < task.wants.size(); ++i) {
    const Estimate& slack = answer.reading.slacks[i];
    table.rows.push_back({tame(task.wants[i].text), value_text(answer.reading.figures[i], answer.units[i]),
                          change_text(slack), slack.value() >= 0.0 ? "holds" : "missed"});
  }
  return table;
}

std::string verdict(const PlaceAnswer& answer) {
  if (answer.reached) return "Reached.";
  if (!answer.reading.possible()) return fmt::format("Cannot be reached: {}.", answer.reading.obstacle);
  std::string text =
      fmt::format("Cannot be reached with what may move. The best there is misses {} by {:.2f} stop",
                  in_quotes(answer.limit), -answer.reading.slack());
  std::vector<std::string> ends;
  for (const PlacedKey& key : answer.keys)
    if (key.at_least_bound || key.at_most_bound) ends.push_back(fmt::format("{} at {}", key.key, key.text));
  if (!ends.empty()) text += fmt::format("; it stands at the end of its room: {}", fmt::join(ends, ", "));
  return text + ".";
}

std::string search_line(const PlaceAnswer& answer) {
  int refused = 0;
  std::string most;
  int most_sets = 0;
  for (const auto& [obstacle, sets] : answer.obstacles) {
    refused += sets;
    if (sets > most_sets) most = obstacle, most_sets = sets;
  }
  std::string text = fmt::format("{} sets tried", answer.sets_tried);
  if (refused > 0) text += fmt::format(", {} of them could not be, mostly: {}", refused, most);
  return text + ".";
}

}  // namespace

std::string place_table(const Description& description, const PlaceTask& task, const PlaceAnswer& answer,
                        const Effort& effort, const std::vector<std::string>& given) {
  std::string text =
      fmt::format("{}\n\n{}\n\n{}", description.set.title, verdict(answer), to_text(keys_table(answer)));
  if (answer.reading.possible()) text += fmt::format("\n{}", to_text(wants_table(task, answer)));
  std::string look = "fillside render " + for_shell(description.file);
  for (const std::vector<std::string>& edits : {given, answer.edits()})
    for (const std::string& edit : edits) look += " --set " + for_shell(edit);
  const bool shares = std::ranges::count(answer.units, "%") > 0;
  return text + fmt::format("\nTo look at it: {}\n\n", look) +
         wrapped(
             fmt::format("{} What holds from where to where is each key alone, the others as set. The answer "
                         "was read afresh by other sample numbers. {}{}.",
                         search_line(answer), shares ? "Of a share in % ten points count for a stop. " : "",
                         effort_text(effort)));
}

nlohmann::ordered_json place_json(const Description& description, const PlaceTask& task,
                                  const PlaceAnswer& answer, const Effort& effort) {
  nlohmann::ordered_json document{{"title", description.set.title}, {"reached", answer.reached}};
  for (const PlacedKey& key : answer.keys) {
    nlohmann::ordered_json entry{{"key", key.key}, {"value", key.text}};
    if (!key.holds_from.empty()) entry["holds"] = {key.holds_from, key.holds_to};
    document["keys"].push_back(std::move(entry));
  }
  for (std::size_t i = 0; i < task.wants.size() && answer.reading.possible(); ++i)
    document["wants"].push_back({{"want", task.wants[i].text},
                                 {"figure", task.wants[i].figure},
                                 {"unit", answer.units[i]},
                                 {"value", figure_json(answer.reading.figures[i])},
                                 {"spare_stops", figure_json(answer.reading.slacks[i])}});
  if (!answer.limit.empty()) document["limited_by"] = answer.limit;
  document["sets_tried"] = answer.sets_tried;
  for (const auto& [obstacle, sets] : answer.obstacles) document["obstacles"][obstacle] = sets;
  document["effort"] = effort_text(effort);
  return document;
}

}  // namespace fillside::tools
