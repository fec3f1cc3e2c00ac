#include "tools/terminal.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <system_error>

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

void put(std::string_view text, std::FILE* stream) { std::fwrite(text.data(), 1, text.size(), stream); }

/// The control code that begins there, and its bytes: one of ASCII's, or one of U+0080 to U+009F in UTF-8.
struct ControlCode {
  int code = 0;
  std::size_t bytes = 0;
};
ControlCode control_code_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0; };
  const int first = byte(at), second = byte(at + 1);
  if ((first < 0x20 && first != '\n' && first != '\t') || first == 0x7f) return {first, 1};
  if (first == 0xc2 && second >= 0x80 && second <= 0x9f) return {second, 2};
  return {};
}

/// Names in a stranger's scene, and file names, may carry codes that a terminal would obey: they are shown
/// instead, after `escape`.
std::string harmless(std::string_view text, std::string_view escape = "\\x") {
  std::string shown;
  for (std::size_t at = 0; at < text.size();) {
    const ControlCode control = control_code_at(text, at);
    if (control.bytes > 0) shown += fmt::format("{}{:02x}", escape, control.code);
    if (control.bytes == 0) shown += text[at];
    at += std::max<std::size_t>(control.bytes, 1);
  }
  return shown;
}

}  // namespace

void say(std::string_view answer) { put(harmless(answer), stdout); }
void note_text(std::string_view remark) { put(harmless(remark), stderr); }
void note(std::string_view remark) { note_text(std::string(remark) + '\n'); }
void clear_bar() {
  if (can_draw()) put("\r\033[K", stderr);
}
void show(const std::vector<Problem>& problems) {
  for (const Problem& problem : problems) note(to_text(problem));
}

void say_documents(const std::vector<nlohmann::ordered_json>& documents) {
  const nlohmann::ordered_json all =
      documents.size() == 1 ? documents.front() : nlohmann::ordered_json(documents);
  const std::string text = all.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
  put(harmless(text, "\\u00"), stdout);  // JSON's own way to write them
}

void finish_answer() {
  if (std::fflush(stdout) != 0 || std::ferror(stdout) != 0)
    throw WriteError(
        fmt::format("standard output did not take the answer: {}", std::generic_category().message(errno)));
}

void hold_standard_streams() {
  for (int stream = STDIN_FILENO; stream <= STDERR_FILENO; ++stream)
    if (::fcntl(stream, F_GETFD) < 0 && errno == EBADF)
      ::open("/dev/null", O_RDONLY);  // takes the lowest free number
}

ProgressBar::ProgressBar(std::string what, bool quiet) : what_(std::move(what)), on_(!quiet && can_draw()) {}

ProgressBar::~ProgressBar() {
  if (drawn_) clear_bar();
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
  const std::string precision =
      state.half_width_stops > 0.0 ? fmt::format("  ±{:.2f} stop", state.half_width_stops) : "";
  const std::string left =
      state.seconds_left >= 1.0 ? fmt::format("  {:.0f} s left", state.seconds_left) : "";
  put(fmt::format("\r\033[K{} [{}{}]{}{}", what_, std::string(static_cast<std::size_t>(full), '='),
                  std::string(static_cast<std::size_t>(kCells - full), ' '), precision, left),
      stderr);
}

}  // namespace fillside::tools
