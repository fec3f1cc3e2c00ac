#include "libsim/what_if/comparison.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "libsim/view/stops_between.h"

namespace fillside {
namespace {

/// The same instrument of the other set; nothing when it has none.
const Reading* counterpart(const Reading& reading, const SetReading& set) {
  const auto same = [&](const Reading& other) {
    return other.name == reading.name && other.kind == reading.kind &&
           other.subject_there == reading.subject_there;
  };
  const auto found = std::ranges::find_if(set.readings, same);
  return found == set.readings.end() ? nullptr : &*found;
}

std::vector<std::string> without_counterpart(const SetReading& set, const SetReading& other) {
  std::vector<std::string> names;
  for (const Reading& each : set.readings)
    if (!counterpart(each, other)) names.push_back(each.name);
  return names;
}

Estimate row_lx(const Reading& reading, const std::string& source, const std::string& via) {
  const auto same = [&](const RowFigure& row) { return row.source == source && row.via == via; };
  const auto found = std::ranges::find_if(reading.rows, same);
  return found == reading.rows.end() ? Estimate(0.0) : found->lx;
}

/// cause_stops, replicate by replicate.
Estimate share_of_change(const Estimate& change, const Estimate& from, const Estimate& to) {
  const Estimate per_lx =
      Estimate::combined(from, to, [](double a, double b) { return cause_stops(1.0, a, b); });
  return change * per_lx;
}

std::vector<Cause> causes_of(const Reading& from, const Reading& to) {
  std::vector<Cause> causes;
  const auto add = [&](const RowFigure& row) {
    const Estimate change = row_lx(to, row.source, row.via) - row_lx(from, row.source, row.via);
    causes.push_back({row.source, row.via, change, share_of_change(change, from.total_lx, to.total_lx)});
  };
  const auto is_listed = [&](const RowFigure& row) {
    return std::ranges::any_of(
        causes, [&](const Cause& cause) { return cause.source == row.source && cause.via == row.via; });
  };
  for (const Reading* reading : {&from, &to})
    for (const RowFigure& row : reading->rows)
      if (!is_listed(row)) add(row);
  std::ranges::stable_sort(causes, std::ranges::greater{},
                           [](const Cause& cause) { return std::abs(cause.change_lx.value()); });
  return causes;
}

MeterChange change_of(const Reading& from, const Reading& to) {
  return {
      .name = from.name,
      .kind = from.kind,
      .subject_there = from.subject_there,
      .reference_lx = from.total_lx,
      .lx = to.total_lx,
      .change_stops = stops_between(from.total_lx, to.total_lx),
      .key_to_fill_stops = stops_between(from.key_lx, to.key_lx) - stops_between(from.fill_lx, to.fill_lx),
      .causes = causes_of(from, to)};
}

/// For ranking: what cannot be formed comes last.
double size_of(const Estimate& stops) {
  return std::isfinite(stops.value()) ? std::abs(stops.value()) : -1.0;
}

void add_ratio(Comparison& comparison, const char* name, const std::optional<Estimate>& from,
               const std::optional<Estimate>& to) {
  if (from && to) comparison.ratios.push_back({name, *from, *to, stops_between(*from, *to)});
}

}  // namespace

Seen seen(const Estimate& difference_stops) {
  const double size = std::abs(difference_stops.value()), width = difference_stops.half_width_95();
  if (!std::isfinite(size) || !std::isfinite(width)) return Seen::no_light;
  if (size <= width) return Seen::cannot_be_told_apart;
  return size >= kVisibleDifference.si ? Seen::visible : Seen::not_visible;
}

std::string_view word_of(Seen seen) {
  switch (seen) {
    case Seen::visible:
      return "visible";
    case Seen::not_visible:
      return "not visible";
    case Seen::cannot_be_told_apart:
      return "cannot be told apart";
    case Seen::no_light:
      break;
  }
  return "no light";
}

double cause_stops(double change, double from, double to) {
  constexpr double kAlike = 1e-6;  // below, the logarithmic mean is the mean, and better formed as such
  const double mean = 0.5 * (from + to);
  const bool alike = std::abs(to - from) <= kAlike * mean;
  const double logarithmic_mean = alike ? mean : (to - from) / (std::log(to) - std::log(from));
  return change / (std::numbers::ln2 * logarithmic_mean);
}

bool Comparison::nothing_differs() const {
  const auto is_told = [](const auto& each) {
    const Seen how = seen(each.change_stops);
    return how == Seen::visible || how == Seen::not_visible;
  };
  return std::ranges::none_of(meters, is_told) && std::ranges::none_of(ratios, is_told);
}

double Comparison::widest_stops() const {
  double widest = 0.0;
  const auto look = [&](const Estimate& stops) {
    if (const double width = stops.half_width_95(); std::isfinite(width)) widest = std::max(widest, width);
  };
  for (const MeterChange& each : meters) look(each.change_stops);
  for (const RatioChange& each : ratios) look(each.change_stops);
  return widest;
}

Comparison compare(const SetReading& reference, const SetReading& other) {
  Comparison comparison;
  for (const Reading& each : reference.readings)
    if (const Reading* same = counterpart(each, other)) comparison.meters.push_back(change_of(each, *same));
  std::ranges::stable_sort(comparison.meters, std::ranges::greater{},
                           [](const MeterChange& change) { return size_of(change.change_stops); });
  add_ratio(comparison, "lit:shadow on the food", reference.food_lit_to_shadow, other.food_lit_to_shadow);
  add_ratio(comparison, "lit:shadow in the empty spot", reference.empty_lit_to_shadow,
            other.empty_lit_to_shadow);
  comparison.only_in_reference = without_counterpart(reference, other);
  comparison.only_in_other = without_counterpart(other, reference);
  return comparison;
}

}  // namespace fillside
