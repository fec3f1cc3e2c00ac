#include "libsim/what_if/place.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "libsim/scene/wording.h"
#include "libsim/what_if/optimum_search.h"

namespace fillside {
namespace {

/// Values of all freedoms: shares of the continuous ones, indices of the choices.
struct Values {
  std::vector<std::size_t> choices;
  Shares shares;
};

class Search {
 public:
  Search(const PlaceTask& task, const Effort& effort, const EffortProgress& progress)
      : task_(task),
        progress_(progress),
        trials_(task.describe, task.wants, things_moved(task.freedoms), task.allowed, effort),
        margin_(0.5 * effort.precision.si),
        offsets_(task.wants.size(), 0.0) {}

  PlaceAnswer run();

 private:
  std::vector<std::string> edits_at(const Values& values) const;
  std::vector<std::vector<std::size_t>> all_choices() const;
  /// What is made as large as can be: never over `kImpossible` for what cannot be.
  double worth(const Values& values) const;
  double farness(const Shares& shares) const;
  std::optional<Values> best_place();
  Values best_with(const std::vector<std::size_t>& choices) const;
  Trial put_right(const Values& values);
  double slack_of(const Trial& trial) const;
  bool holds(const Values& values) const;
  [[noreturn]] void refuse_all() const;
  double last_that_holds(Values values, std::size_t share, double end) const;
  void describe_keys(const Values& values, bool reached, PlaceAnswer& answer) const;
  std::size_t share_count() const {
    return static_cast<std::size_t>(
        std::ranges::count_if(task_.freedoms, [](const Freedom& freedom) { return !freedom.is_choice(); }));
  }

  static constexpr double kImpossible = -1e6;  ///< below what any miss is worth

  const PlaceTask& task_;
  const EffortProgress& progress_;
  TrialSet trials_;
  double margin_;  ///< slack that is asked for, so that what a fresh reading says is not luck
  /// What fresh readings have over trials, want by want: trials share their sample numbers, and so they err
  /// alike.
  std::vector<double> offsets_;
};

std::vector<std::string> Search::edits_at(const Values& values) const {
  std::vector<std::string> edits;
  std::size_t choice = 0, share = 0;
  for (const Freedom& freedom : task_.freedoms)
    edits.push_back(freedom.key + "=" +
                    (freedom.is_choice() ? freedom.choices[values.choices[choice++]]
                                         : freedom.text_at(values.shares[share++])));
  return edits;
}

/// Every combination, the last choice running fastest.
std::vector<std::vector<std::size_t>> Search::all_choices() const {
  std::vector<std::vector<std::size_t>> all{{}};
  for (const Freedom& freedom : task_.freedoms) {
    if (!freedom.is_choice()) continue;
    std::vector<std::vector<std::size_t>> longer;
    for (const auto& begun : all)
      for (std::size_t i = 0; i < freedom.choices.size(); ++i) {
        longer.push_back(begun);
        longer.back().push_back(i);
      }
    all = std::move(longer);
  }
  return all;
}

double Search::farness(const Shares& shares) const {
  double sum = 0.0;
  std::size_t share = 0;
  for (const Freedom& freedom : task_.freedoms) {
    if (freedom.is_choice()) continue;
    if (freedom.key.ends_with("distance")) sum += shares[share];
    ++share;
  }
  return sum;
}

double Search::worth(const Values& values) const {
  if (progress_) progress_({0.0, 0.0, 0.0});
  const Trial& trial = trials_.at(edits_at(values));
  if (!trial.possible()) return kImpossible;
  const double slack = slack_of(trial) - margin_;
  if (task_.preference != Preference::farthest) return slack;
  constexpr double kStopsMatter = 30.0;  // no distance makes up for a want that is missed
  return farness(values.shares) + kStopsMatter * std::min(0.0, slack);
}

Values Search::best_with(const std::vector<std::size_t>& choices) const {
  Values values{choices, Shares(share_count(), 0.5)};
  if (values.shares.empty()) return values;
  const auto shares = static_cast<int>(values.shares.size());
  const SearchLimits limits{.look_round = 4 + 14 * shares, .climb = 4 + 10 * shares};
  values.shares = find_largest(
                      values.shares.size(),
                      [&](const Shares& at) {
                        return worth({choices, at});
                      },
                      limits)
                      .at;
  return values;
}

std::optional<Values> Search::best_place() {
  std::optional<Values> best;
  for (const auto& choices : all_choices()) {
    const Values here = best_with(choices);
    const double value = worth(here);
    if (value > kImpossible && (!best || value > worth(*best))) best = here;
    if (task_.preference == Preference::smallest && best && value >= 0.0) break;
  }
  return best;
}

double Search::slack_of(const Trial& trial) const {
  double least = trial.slacks.front().value() + offsets_.front();
  for (std::size_t i = 1; i < trial.slacks.size(); ++i)
    least = std::min(least, trial.slacks[i].value() + offsets_[i]);
  return least;
}

/// Reads a place afresh, and learns from it by how much trials are off.
Trial Search::put_right(const Values& values) {
  const std::vector<std::string> edits = edits_at(values);
  Trial fresh = trials_.afresh(edits);
  if (fresh.possible())
    for (std::size_t i = 0; i < offsets_.size(); ++i)
      offsets_[i] = fresh.slacks[i].value() - trials_.at(edits).slacks[i].value();
  return fresh;
}

bool Search::holds(const Values& values) const {
  const Trial& trial = trials_.at(edits_at(values));
  return trial.possible() && slack_of(trial) >= 0.0;
}

/// How far toward that end a share may go, to a sixty-fourth of the way there.
double Search::last_that_holds(Values values, std::size_t share, double end) const {
  const double start = values.shares[share];
  values.shares[share] = end;
  if (holds(values)) return end;
  double held = start, missed = end;
  for (int halving = 0; halving < 6; ++halving) {
    values.shares[share] = 0.5 * (held + missed);
    (holds(values) ? held : missed) = values.shares[share];
  }
  return held;
}

void Search::describe_keys(const Values& values, bool reached, PlaceAnswer& answer) const {
  std::size_t choice = 0, share = 0;
  for (const Freedom& freedom : task_.freedoms) {
    PlacedKey key{freedom.key, {}, {}, {}};
    if (freedom.is_choice()) {
      key.text = freedom.choices[values.choices[choice++]];
    } else {
      key.text = freedom.text_at(values.shares[share]);
      key.at_least_bound = key.text == freedom.text_at(0.0);
      key.at_most_bound = key.text == freedom.text_at(1.0);
      if (reached) {
        key.holds_from = freedom.text_at(last_that_holds(values, share, 0.0));
        key.holds_to = freedom.text_at(last_that_holds(values, share, 1.0));
      }
      ++share;
    }
    answer.keys.push_back(std::move(key));
  }
}

PlaceAnswer Search::run() {
  constexpr int kMostRounds = 3;  // the second is enough where trials are off everywhere alike
  PlaceAnswer answer;
  std::optional<Values> best;
  for (int round = 0; round < kMostRounds; ++round) {
    const std::optional<Values> before = std::exchange(best, best_place());
    if (!best) refuse_all();
    if (before && edits_at(*before) == edits_at(*best)) break;
    answer.reading = put_right(*best);
  }
  answer.reached = answer.reading.possible() && answer.reading.slack() >= 0.0;
  if (!answer.reached && answer.reading.possible()) answer.limit = task_.wants[answer.reading.tightest].text;
  describe_keys(*best, answer.reached, answer);
  answer.units = trials_.units();
  answer.sets_tried = trials_.tried();
  answer.obstacles = trials_.obstacles();
  return answer;
}

void Search::refuse_all() const {
  constexpr std::size_t kTold = 3;  // more of them only say the same of other values
  std::vector<Problem> problems;
  for (const auto& [obstacle, sets] : trials_.obstacles())
    if (problems.size() < kTold)
      problems.push_back(problem_at({"--move", 0, 0}, "no values give a set that can be: " + obstacle,
                                    "move it within other bounds, or move what stands in its way"));
  throw SceneError(std::move(problems));
}

}  // namespace

std::vector<std::string> PlaceAnswer::edits() const {
  std::vector<std::string> all;
  for (const PlacedKey& key : keys) all.push_back(key.key + "=" + key.text);
  return all;
}

std::vector<std::string> things_moved(const std::vector<Freedom>& freedoms) {
  std::vector<std::string> names;
  for (const Freedom& freedom : freedoms) {
    const auto first = freedom.key.find('.'), last = freedom.key.rfind('.');
    if (first != last) names.push_back(freedom.key.substr(first + 1, last - first - 1));
  }
  return names;
}

PlaceAnswer find_place(const PlaceTask& task, const Effort& effort, const EffortProgress& progress) {
  return Search(task, effort, progress).run();
}

}  // namespace fillside
