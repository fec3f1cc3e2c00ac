#include "libsim/what_if/optimum_search.h"

#include <nlopt.h>

#include <cassert>
#include <exception>
#include <memory>

namespace fillside {
namespace {

struct Search {
  const std::function<double(const Shares&)>& value;
  LargestFound best;
  nlopt_opt optimiser = nullptr;
  std::exception_ptr thrown = {};
};

/// Exceptions must not pass through C: they are kept, and the search stopped.
double value_for_c(unsigned n, const double* at, double*, void* data) {
  auto& search = *static_cast<Search*>(data);
  try {
    const Shares shares(at, at + n);
    const double value = search.value(shares);
    if (search.best.at.empty() || value > search.best.value) search.best = {shares, value};
    return value;
  } catch (...) {
    search.thrown = std::current_exception();
    nlopt_force_stop(search.optimiser);
    return 0.0;
  }
}

void run(Search& search, nlopt_algorithm algorithm, Shares from, int most_values,
         const SearchLimits& limits) {
  const std::unique_ptr<nlopt_opt_s, decltype(&nlopt_destroy)> optimiser(
      nlopt_create(algorithm, static_cast<unsigned>(from.size())), nlopt_destroy);
  search.optimiser = optimiser.get();
  nlopt_set_lower_bounds1(optimiser.get(), 0.0);
  nlopt_set_upper_bounds1(optimiser.get(), 1.0);
  nlopt_set_max_objective(optimiser.get(), value_for_c, &search);
  nlopt_set_maxeval(optimiser.get(), most_values);
  nlopt_set_stopval(optimiser.get(), limits.enough);
  nlopt_set_xtol_abs1(optimiser.get(), 1e-3);
  nlopt_set_initial_step1(optimiser.get(), 0.08);
  double value = 0.0;
  nlopt_optimize(optimiser.get(), from.data(), &value);
  if (search.thrown) std::rethrow_exception(search.thrown);
}

}  // namespace

LargestFound find_largest(std::size_t shares, const std::function<double(const Shares&)>& value,
                          const SearchLimits& limits) {
  assert(shares > 0);
  Search search{value, {}};
  run(search, NLOPT_GN_DIRECT_L, Shares(shares, 0.5), limits.look_round, limits);
  if (search.best.value >= limits.enough) return search.best;
  run(search, shares == 1 ? NLOPT_LN_NELDERMEAD : NLOPT_LN_BOBYQA, search.best.at, limits.climb, limits);
  return search.best;
}

}  // namespace fillside
