#include "tools/sensitivity_table.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <cmath>

#include "libsim/scene/wording.h"
#include "libsim/what_if/comparison.h"
#include "libsim/writers/plain_table.h"
#include "tools/compare_table.h"
#include "tools/figure_json.h"
#include "tools/help_text.h"
#include "tools/meter_table.h"
#include "tools/open_scene.h"

namespace fillside::tools {
namespace {

using enum PlainTable::Align;

/// What the changes of a figure are counted in.
std::string_view counted_in(const SeriesFigure& figure) { return figure.unit == "mm" ? "mm" : "stops"; }

std::string figure_text(const SeriesFigure& figure, const Estimate& value) {
  if (figure.unit == "ratio") return fmt::format("{} : 1", with_error(value));
  return fmt::format("{} {}", with_error(value), figure.unit);
}

/// Inputs of one worth, the most important first.
std::vector<const SensitivityInput*> of_worth(const Sensitivity& answer, std::size_t figure, Worth wanted) {
  const auto order = answer.ranked(figure);
  const auto each = worths(answer, figure);
  std::vector<const SensitivityInput*> chosen;
  for (std::size_t i = 0; i < order.size(); ++i)
    if (each[i] == wanted) chosen.push_back(order[i]);
  return chosen;
}

std::vector<std::string> row_of(std::string word, const SensitivityInput& input, std::size_t figure) {
  const SlopeUnit unit = slope_unit(input.key);
  return {std::move(word),
          input.key.path,
          value_text(input.key),
          fmt::format("± {}", amount_text(input.key, input.off_by.amount)),
          std::string(input.off_by.basis),
          change_text(input.slopes[figure] * unit.size),
          fmt::format("per {}", unit.text),
          fmt::format("{:.3f} ± {:.3f}", std::abs(input.moves[figure].value()),
                      input.moves[figure].half_width_95())};
}

PlainTable rows_of(const Sensitivity& answer, std::size_t figure) {
  PlainTable table{{{""},
                    {"number"},
                    {"is", right},
                    {"may be off by", right},
                    {""},
                    {std::string(counted_in(answer.figures[figure])), right},
                    {""},
                    {"so it moves it by", right}},
                   {},
                   ""};
  for (const SensitivityInput* input : of_worth(answer, figure, Worth::measure))
    table.rows.push_back(row_of("measure first", *input, figure));
  for (const SensitivityInput* input : of_worth(answer, figure, Worth::little))
    table.rows.push_back(row_of("if you like", *input, figure));
  return table;
}

std::string verdict(const Sensitivity& answer, std::size_t figure) {
  const SeriesFigure& which = answer.figures[figure];
  const double all = answer.together(figure);
  double measured = 0.0;
  for (const SensitivityInput* input : of_worth(answer, figure, Worth::measure))
    measured += std::pow(input->moves[figure].value(), 2.0);
  const double left = std::sqrt(std::max(0.0, all * all - measured));
  const auto unit = counted_in(which);
  if (unit == "stops" && all < kVisibleDifference.si)
    return fmt::format(
        "All of it together leaves ± {:.2f} stop, less than the third of a stop that shows: measure "
        "better only if you need it closer.",
        all);
  return fmt::format(
      "All of it together leaves ± {:.2f} {}; were those to measure first known exactly, ± {:.2f} {}.", all,
      unit, left, unit);
}

std::string names_of(const std::vector<const SensitivityInput*>& inputs) {
  std::vector<std::string> names;
  for (const SensitivityInput* input : inputs) names.push_back(input->key.path);
  return fmt::format("{}", fmt::join(names, ", "));
}

/// Those that move nothing at all are counted, not named.
std::string idle_text(std::vector<const SensitivityInput*> idle, std::size_t figure) {
  const auto still = std::erase_if(idle, [&](const SensitivityInput* input) {
    const Estimate& move = input->moves[figure];
    return move.value() == 0.0 && move.half_width_95() == 0.0;
  });
  std::string text;
  if (!idle.empty()) text = fmt::format("Stop worrying about: {}.", names_of(idle));
  if (still > 0) text += fmt::format("{}{} more change nothing at all.", text.empty() ? "" : " ", still);
  return text.empty() ? text : '\n' + wrapped(text);
}

std::string block(const Sensitivity& answer, std::size_t figure) {
  const SeriesFigure& which = answer.figures[figure];
  std::string text =
      fmt::format("\n{}: {}\n\n", figure_title(which.name), figure_text(which, answer.values[figure]));
  const PlainTable table = rows_of(answer, figure);
  if (!table.rows.empty()) text += to_text(table) + '\n';
  text += wrapped(verdict(answer, figure));
  return text + idle_text(of_worth(answer, figure, Worth::nothing), figure);
}

std::string stuck(const Sensitivity& answer) {
  std::string text;
  for (const SensitivityInput& input : answer.inputs)
    if (!input.cannot.empty())
      text += fmt::format("Not varied: {} ({}).\n", input.key.path, tame(input.cannot));
  return text.empty() ? text : '\n' + text;
}

}  // namespace

std::string sensitivity_table(const Description& description, const Sensitivity& answer,
                              const Effort& effort) {
  std::string text = description.set.title + '\n';
  for (std::size_t f = 0; f < answer.figures.size(); ++f) text += block(answer, f);
  return text + stuck(answer) + '\n' +
         wrapped(fmt::format(
             "What a number may be off by is common practice, or the catalogue's; say better with --off-by. "
             "Measure first: what makes nine tenths of the sum of squares. Stop worrying: less than a tenth "
             "of all "
             "together. {}.",
             effort_text(effort)));
}

nlohmann::ordered_json sensitivity_json(const Description& description, const Sensitivity& answer,
                                        const Effort& effort) {
  constexpr std::string_view kWords[] = {"measure first", "if you like", "stop worrying"};
  nlohmann::ordered_json document{{"schema", "fillside.sensitivity/1"}, {"title", description.set.title}};
  for (std::size_t f = 0; f < answer.figures.size(); ++f) {
    nlohmann::ordered_json figure{{"figure", answer.figures[f].name},
                                  {"unit", answer.figures[f].unit},
                                  {"value", figure_json(answer.values[f])},
                                  {"counted_in", counted_in(answer.figures[f])},
                                  {"together", number_json(answer.together(f))}};
    const auto order = answer.ranked(f);
    const auto each = worths(answer, f);
    for (std::size_t i = 0; i < order.size(); ++i) {
      const SensitivityInput& input = *order[i];
      const SlopeUnit unit = slope_unit(input.key);
      figure["inputs"].push_back({{"key", input.key.path},
                                  {"is", value_text(input.key)},
                                  {"off_by", amount_text(input.key, input.off_by.amount)},
                                  {"basis", input.off_by.basis},
                                  {"per", unit.text},
                                  {"slope", figure_json(input.slopes[f] * unit.size)},
                                  {"moves_it_by", figure_json(input.moves[f])},
                                  {"worth", kWords[static_cast<std::size_t>(each[i])]}});
    }
    document["figures"].push_back(std::move(figure));
  }
  for (const SensitivityInput& input : answer.inputs)
    if (!input.cannot.empty())
      document["not_varied"].push_back({{"key", input.key.path}, {"why", input.cannot}});
  document["effort"] = effort_text(effort);
  return document;
}

}  // namespace fillside::tools
