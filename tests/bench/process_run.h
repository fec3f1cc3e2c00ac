// A program run from start to exit, as a person waits for it.
#pragma once

#include <string>
#include <vector>

namespace fillside::bench {

struct ProcessRun {
  int status = -1;
  double wall_s = 0.0, processor_s = 0.0;
  double peak_memory_mb = 0.0;
  std::string out;  ///< what it printed
};

/// The program `fillside` with these words, in that folder.
ProcessRun run_fillside(const std::vector<std::string>& words, const std::string& folder);

/// The run of middle wall time among so many.
ProcessRun middle_run(int runs, const std::vector<std::string>& words, const std::string& folder);

}  // namespace fillside::bench
