// A light meter: one receptor somewhere in the set.
#pragma once

#include <string>

#include "libsim/sensor/receiver.h"

namespace fillside {

struct Meter {
  std::string name;
  Receiver receiver;
  bool subject_there = true;  ///< false: an empty-spot reading, the subject taken away
};

}  // namespace fillside
