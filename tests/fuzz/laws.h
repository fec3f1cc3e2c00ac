// What must hold of any input whatever, said as a harness goes along. A harness throws nothing but BrokenLaw.
#pragma once

#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/base/problem.h"
#include "libsim/scene/description.h"

namespace fillside::fuzz {

/// A law that some input broke; the fuzzer dies of it, a test tells it.
class BrokenLaw : public std::logic_error {
 public:
  using std::logic_error::logic_error;
};

/// Throws BrokenLaw with these words when it does not hold.
void law(bool holds, const std::string& words);

/// The lines of a text, however they end.
int line_count(std::string_view text);

/// A refusal says something; each problem says what is wrong and what to do, on a line that the input has, in
/// words that cannot move a terminal's cursor.
void keep_problem_laws(const std::vector<Problem>& problems, int lines);
void keep_refusal_laws(const SceneError& error, int lines);

/// For load_description: making a tart's crust takes longer than all else, and most inputs have the same.
std::shared_ptr<MadeOnce> shared_stand_ins();

/// A description that passed its checks is written, short or in full, as a scene that says the same.
void keep_writing_laws(const Description& description);

/// The parts of an input that stand between lines of four dashes.
std::vector<std::string> parts_of(std::string_view input);

/// A folder of this process alone, gone when it ends; for harnesses of what is read from files.
class OwnFolder {
 public:
  OwnFolder();
  ~OwnFolder();
  OwnFolder(const OwnFolder&) = delete;
  OwnFolder& operator=(const OwnFolder&) = delete;

  std::string path(const std::string& name) const { return folder_ + "/" + name; }
  /// Writes the file and returns its path.
  std::string put(const std::string& name, std::string_view bytes) const;

 private:
  std::string folder_;
};

}  // namespace fillside::fuzz
