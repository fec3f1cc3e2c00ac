#include "tools/interruption.h"

#include <fmt/format.h>
#include <unistd.h>

#include <csignal>
#include <string>
#include <thread>

#include "tools/terminal.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

std::string what_was_done(const Written& written) {
  std::string text = "fillside: interrupted; ";
  if (written.files.empty())
    text += "no file was written";
  else
    text += fmt::format("written before: {}", written.files.front().string());
  if (written.files.size() > 1) text += fmt::format(" and {} more", written.files.size() - 1);
  if (written.kept > 0)
    text += fmt::format("; {} kept, with which the same command goes on",
                        written.kept == 1 ? "one value is" : fmt::format("{} values are", written.kept));
  return text + ". Files are written whole or not at all.";
}

// Ends by the signal itself: a shell's loop then stops too.
[[noreturn]] void end_by(int signal) {
  std::signal(signal, SIG_DFL);
  sigset_t only;
  sigemptyset(&only);
  sigaddset(&only, signal);
  ::pthread_sigmask(SIG_UNBLOCK, &only, nullptr);
  ::raise(signal);
  ::_exit(128 + signal);
}

void wait_for(const sigset_t& signals) {
  int signal = 0;
  if (::sigwait(&signals, &signal) != 0) return;
  tell_written([&](const Written& written) {
    clear_bar();
    note(what_was_done(written));
    end_by(signal);
  });
}

}  // namespace

void watch_for_interruption() {
  sigset_t signals;
  sigemptyset(&signals);
  bool any = false;
  for (const int signal : {SIGINT, SIGTERM}) {
    struct sigaction before {};
    if (::sigaction(signal, nullptr, &before) != 0 || before.sa_handler == SIG_IGN) continue;
    sigaddset(&signals, signal);
    any = true;
  }
  if (!any || ::pthread_sigmask(SIG_BLOCK, &signals, nullptr) != 0) return;
  try {
    std::thread(wait_for, signals).detach();
  } catch (const std::system_error&) {  // no thread to be had: the signals end the program as they always did
    ::pthread_sigmask(SIG_UNBLOCK, &signals, nullptr);
  }
}

}  // namespace fillside::tools
