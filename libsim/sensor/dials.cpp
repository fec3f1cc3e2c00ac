#include "libsim/sensor/dials.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace fillside {
namespace {

constexpr double kSlack = 1e-9;  // of a third: what is on a mark is not past it

// Index k: f-number 2^(k/6) from f/1; time 2^(-k/3) s from 1 s; speed 100 x 2^(k/3) from ISO 100.
constexpr std::array kApertures{1.0, 1.1, 1.2, 1.4,  1.6,  1.8,  2.0,  2.2,  2.5,  2.8,  3.2,  3.5, 4.0,
                                4.5, 5.0, 5.6, 6.3,  7.1,  8.0,  9.0,  10.0, 11.0, 13.0, 14.0, 16., 18.,
                                20., 22., 25., 29.0, 32.0, 36.0, 40.0, 45.0, 51.0, 57.0, 64.0};
constexpr std::array kParts{1.0,   1.3,   1.6,   2.0,   2.5,   3.0,   4.0,   5.0,   6.0,   8.0,
                            10.0,  13.0,  15.0,  20.0,  25.0,  30.0,  40.0,  50.0,  60.0,  80.0,
                            100.0, 125.0, 160.,  200.,  250.,  320.,  400.,  500.0, 640.0, 800.0,
                            1000., 1250., 1600., 2000., 2500., 3200., 4000., 5000., 6400., 8000.};
constexpr std::array kSeconds{1.0, 1.3, 1.6,  2.0,  2.5,  3.2,  4.0,  5.0,
                              6.0, 8.0, 10.0, 13.0, 15.0, 20.0, 25.0, 30.0};
constexpr std::array kDecimals{1.0, 0.8, 0.6,
                               0.5, 0.4, 0.3};  // dials name times down to 0.3 s by their value
constexpr std::array kIsos{100,   125,   160,   200,   250,   320,   400,   500,   640,   800,   1000,
                           1250,  1600,  2000,  2500,  3200,  4000,  5000,  6400,  8000,  10000, 12800,
                           16000, 20000, 25600, 32000, 40000, 51200, 64000, 80000, 102400};
constexpr std::array kSlowIsos{100, 80, 64, 50, 40, 32, 25};

template <class Marks>
bool has(const Marks& marks, int k) {
  return k >= 0 && k < static_cast<int>(marks.size());
}

template <class Marks>
auto at(const Marks& marks, int k) {
  return marks[static_cast<std::size_t>(k)];
}

int thirds(double ratio) { return static_cast<int>(std::lround(3.0 * std::log2(ratio))); }

int iso_of(int k) {
  if (has(kIsos, k)) return at(kIsos, k);
  if (has(kSlowIsos, -k)) return at(kSlowIsos, -k);
  return static_cast<int>(std::lround(100.0 * std::exp2(k / 3.0)));
}

}  // namespace

FNumber true_aperture(FNumber engraved) {
  return f_number(std::exp2(std::round(6.0 * std::log2(engraved.si)) / 6.0));
}

FNumber engraved_aperture(FNumber any) {
  const int k = static_cast<int>(std::lround(6.0 * std::log2(any.si)));
  return has(kApertures, k) ? f_number(at(kApertures, k)) : true_aperture(any);
}

Duration dial_shutter(Duration any) { return seconds(std::exp2(thirds(any.si) / 3.0)); }

std::string dial_text(Duration shutter) {
  const int k = thirds(shutter.si);
  if (has(kSeconds, k)) return fmt::format("{:g} s", at(kSeconds, k));
  if (has(kDecimals, -k)) return fmt::format("{:g} s", at(kDecimals, -k));
  if (has(kParts, -k)) return fmt::format("1/{:g} s", at(kParts, -k));
  return shutter.si < 1.0 ? fmt::format("1/{:.0f} s", 1.0 / shutter.si) : fmt::format("{:.0f} s", shutter.si);
}

double true_iso(int marked) { return 100.0 * std::exp2(thirds(marked / 100.0) / 3.0); }

int marked_iso(double any) { return iso_of(thirds(any / 100.0)); }

int marked_iso_at_least(double any) {
  return iso_of(static_cast<int>(std::ceil(3.0 * std::log2(any / 100.0) - kSlack)));
}

}  // namespace fillside
