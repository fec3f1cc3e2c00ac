#include "libsim/base/parallel.h"

#include <gtest/gtest.h>

#include <atomic>
#include <cmath>
#include <stdexcept>
#include <vector>

namespace fillside {
namespace {

TEST(ParallelFor, calls_every_index_once) {
  for (const int threads : {0, 1, 2, 7}) {
    std::vector<std::atomic<int>> calls(1000);
    parallel_for(calls.size(), threads, [&](std::size_t i) { ++calls[i]; });
    for (const auto& each : calls) ASSERT_EQ(each, 1) << threads;
  }
}

TEST(ParallelFor, of_nothing_does_nothing_and_of_one_does_one) {
  int calls = 0;
  parallel_for(0, 4, [&](std::size_t) { ++calls; });
  EXPECT_EQ(calls, 0);
  parallel_for(1, 4, [&](std::size_t) { ++calls; });
  EXPECT_EQ(calls, 1);
}

TEST(ParallelFor, gives_the_same_bytes_on_any_number_of_threads) {
  const auto results = [](int threads) {
    std::vector<double> values(500);
    parallel_for(values.size(), threads,
                 [&](std::size_t i) { values[i] = std::sin(static_cast<double>(i)); });
    return values;
  };
  EXPECT_EQ(results(1), results(2));
  EXPECT_EQ(results(1), results(5));
}

TEST(ParallelFor, throws_a_pieces_exception_again_and_stops_early) {
  for (const int threads : {1, 2, 4}) {
    std::atomic<int> calls{0};
    const auto piece = [&](std::size_t i) {
      ++calls;
      if (i == 3) throw std::runtime_error("piece 3");
    };
    try {
      parallel_for(1'000'000, threads, piece);
      ADD_FAILURE() << "nothing was thrown";
    } catch (const std::runtime_error& error) {
      EXPECT_STREQ(error.what(), "piece 3");
    }
    EXPECT_LT(calls, 1'000'000) << threads;
  }
}

TEST(ThreadCount, is_what_is_wanted_or_all_of_the_machines) {
  EXPECT_EQ(thread_count(3), 3);
  EXPECT_GE(thread_count(0), 1);
}

}  // namespace
}  // namespace fillside
