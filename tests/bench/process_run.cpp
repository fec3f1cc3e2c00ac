#include "tests/bench/process_run.h"

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>

#include "tests/bench/stopwatch.h"

namespace fillside::bench {
namespace {

double seconds_of(const timeval& time) {
  return static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
}

[[noreturn]] void become_fillside(std::vector<std::string> words, const std::string& folder,
                                  const std::string& out) {
  words.insert(words.begin(), FILLSIDE_PROGRAM);
  std::vector<char*> pointers;
  for (std::string& word : words) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  const int file = open(out.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
  if (file >= 0 && dup2(file, 1) >= 0 && chdir(folder.c_str()) == 0) execv(FILLSIDE_PROGRAM, pointers.data());
  _exit(127);
}

}  // namespace

ProcessRun run_fillside(const std::vector<std::string>& words, const std::string& folder) {
  const std::string out = folder + "/printed";
  const Stopwatch watch;
  const pid_t child = fork();
  if (child == 0) become_fillside(words, folder, out);
  int status = 0;
  rusage used{};
  wait4(child, &status, 0, &used);
  ProcessRun run;
  run.wall_s = watch.wall_s();
  run.status = WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
  run.processor_s = seconds_of(used.ru_utime) + seconds_of(used.ru_stime);
  run.peak_memory_mb = static_cast<double>(used.ru_maxrss) / 1024.0;
  std::ifstream printed(out, std::ios::binary);
  run.out.assign(std::istreambuf_iterator<char>(printed), {});
  return run;
}

ProcessRun middle_run(int runs, const std::vector<std::string>& words, const std::string& folder) {
  std::vector<ProcessRun> all;
  for (int i = 0; i < runs; ++i) all.push_back(run_fillside(words, folder));
  std::ranges::sort(all, {}, &ProcessRun::wall_s);
  return all[all.size() / 2];
}

}  // namespace fillside::bench
