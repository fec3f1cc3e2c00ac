#include "tools/light_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "tools/figure_json.h"
#include "tools/help_text.h"
#include "tools/meter_table.h"

namespace fillside::tools {
namespace {

constexpr std::size_t kIndent = 7;
constexpr double kArithmetic = 1e-8;  // as far as the last digits of a double may be off: not worth a word

/// All its lines begin under the check's words.
std::string indented(const std::string& text) {
  std::string lines = wrapped(std::string(kIndent - 1, '.') + ' ' + text, kIndent);
  return lines.replace(0, kIndent, kIndent, ' ');
}

/// With its error bar where there is one, else to the digits that tell.
std::string computed_text(const LightCheck& check) {
  return check.computed.replicate_count() > 0 ? with_error(check.computed)
                                              : fmt::format("{:.7g}", check.computed.value());
}

std::string lines_of(const LightCheck& check) {
  const std::string figures =
      fmt::format("{:>9.7g} {:<5} {}", check.expected, check.unit, computed_text(check));
  std::string source = check.source;
  if (check.tolerance > kArithmetic)
    source += fmt::format("; may be off by {:g}: {}", check.tolerance, check.because);
  return fmt::format("{:<6} {:<54} {}\n", holds(check) ? "ok" : "FAILS", check.what, figures) +
         indented(source);
}

std::size_t count_of(const std::vector<LightCheck>& checks) {
  return static_cast<std::size_t>(std::ranges::count_if(checks, holds));
}

}  // namespace

std::string light_table(const std::vector<LightCheck>& checks, std::uint64_t seed) {
  std::string text = fmt::format("{:<6} {:<54} {:>9} {:<5} {}\n", "", "checked, and the published source",
                                 "expected", "", "computed here");
  for (const LightCheck& check : checks) text += lines_of(check);
  const std::size_t held = count_of(checks);
  return text + '\n' +
         wrapped(fmt::format(
             "{} of {} hold{}. Error bars: 95 % intervals, seed {}. A check holds when the published value "
             "lies "
             "within twice the error bar, and what it may be off by; its error bar must be short.",
             held, checks.size(), held == checks.size() ? "" : "; DO NOT TRUST THIS COPY", seed));
}

nlohmann::ordered_json light_json(const std::vector<LightCheck>& checks, std::uint64_t seed) {
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const LightCheck& check : checks)
    list.push_back({{"what", check.what},
                    {"source", check.source},
                    {"unit", check.unit},
                    {"expected", check.expected},
                    {"tolerance", check.tolerance},
                    {"because", check.because},
                    {"longest_bar", check.longest_bar},
                    {"computed", figure_json(check.computed)},
                    {"holds", holds(check)}});
  return {{"schema", "fillside.light_checks/1"},
          {"version", FILLSIDE_VERSION},
          {"seed", seed},
          {"all_hold", count_of(checks) == checks.size()},
          {"checks", list}};
}

}  // namespace fillside::tools
