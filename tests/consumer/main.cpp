// Uses the installed headers and library as a stranger would: describes a set, reads a meter, writes a
// picture of one colour. The exit status is the verdict.
#include <cmath>
#include <iostream>

#include "libsim/fillside.h"

int main() {
  std::vector<fillside::Problem> warnings;
  const auto set = fillside::load_description_text(
      "[[window]]\nclock = 9\ndistance = \"80 cm\"\n[[food]]\nkind = \"tart\"\n", "a set in memory", {},
      warnings);
  const fillside::Built built = fillside::build(set);
  const auto reading =
      fillside::read_set(set, built.scene, {.precision = fillside::stops(0.2), .seconds = {}});
  const auto ratio = reading.subject_lit_to_shadow();
  if (!ratio || !(ratio->value() > 1.0) || !std::isfinite(ratio->half_width_95())) return 1;
  std::cout << "lit:shadow " << ratio->value() << " : 1 +- " << ratio->half_width_95() << '\n';
  return fillside::png_bytes(fillside::blank_picture(4, 4, 128)).empty() ? 1 : 0;
}
