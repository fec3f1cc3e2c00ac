// What the shell is told.
#pragma once

namespace fillside::tools {

enum ExitStatus {
  kDone = 0,
  kAnswerIsNo = 1,  ///< a claim does not hold
  kBadUsage = 2,
  kBadInput = 3,
  kCannotWrite = 4,
};

}  // namespace fillside::tools
