#include "tools/terminal.h"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace fillside::tools {
namespace {

double now_s() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

/// A terminal that can rewrite a line.
bool can_draw() {
  const char* kind = std::getenv("TERM");
  return isatty(STDERR_FILENO) != 0 && kind != nullptr && std::string_view(kind) != "dumb";
}

}  // namespace

void say(std::string_view answer) { std::fwrite(answer.data(), 1, answer.size(), stdout); }
void note(std::string_view remark) { fmt::print(stderr, "{}\n", remark); }
void show(const std::vector<Problem>& problems) {
  for (const Problem& problem : problems) note(to_text(problem));
}

ProgressBar::ProgressBar(std::string what, bool quiet) : what_(std::move(what)), on_(!quiet && can_draw()) {}

ProgressBar::~ProgressBar() {
  if (drawn_) fmt::print(stderr, "\r\033[K");
}

EffortProgress ProgressBar::callback() {
  if (!on_) return {};
  return [this](const EffortState& state) { draw(state); };
}

void ProgressBar::draw(const EffortState& state) {
  if (now_s() - last_s_ < 0.1) return;
  last_s_ = now_s();
  drawn_ = true;
  constexpr int kCells = 20;
  const int full = static_cast<int>(std::lround(kCells * std::clamp(state.share, 0.0, 1.0)));
  const std::string precision = state.half_width_stops > 0.0 ? fmt::format("  ±{:.2f} stop", state.half_width_stops) : "";
  const std::string left = state.seconds_left >= 1.0 ? fmt::format("  {:.0f} s left", state.seconds_left) : "";
  fmt::print(stderr, "\r\033[K{} [{}{}]{}{}", what_, std::string(static_cast<std::size_t>(full), '='),
             std::string(static_cast<std::size_t>(kCells - full), ' '), precision, left);
  std::fflush(stderr);
}

}  // namespace fillside::tools
