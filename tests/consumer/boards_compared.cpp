// Two boards at one tart, with the same sample numbers, so that a small difference is told apart.
#include <cmath>
#include <iostream>

#include "libsim/fillside.h"

int main() {
  const std::string tart =
      "[[window]]\nclock = 9\ndistance = \"80 cm\"\n[[food]]\nkind = \"tart\"\n"
      "[[board]]\nname = \"fill\"\nsheet = \"A3\"\nclock = 3\ndistance = \"25 cm\"\n";
  std::vector<fillside::Problem> warnings;
  std::vector<double> ratios;
  for (const char* distance : {"20cm", "60cm"}) {
    const auto set = fillside::load_description_text(
        tart, "a set in memory", {std::string("board.fill.distance=") + distance}, warnings);
    const fillside::Built built = fillside::build(set);
    const auto reading =
        fillside::read_set(set, built.scene, {.precision = fillside::stops(0.1), .seconds = {}, .seed = 1});
    const auto ratio = reading.subject_lit_to_shadow();
    if (!ratio) return 1;
    std::cout << distance << ": lit:shadow " << ratio->value() << " : 1 +- " << ratio->half_width_95()
              << '\n';
    ratios.push_back(ratio->value());
  }
  return ratios[0] < ratios[1] ? 0 : 1;  // the nearer board fills more
}
