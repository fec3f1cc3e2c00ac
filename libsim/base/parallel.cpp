#include "libsim/base/parallel.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <system_error>
#include <thread>
#include <vector>

namespace fillside {

int thread_count(int wanted) {
  return wanted > 0 ? wanted : static_cast<int>(std::max(1u, std::thread::hardware_concurrency()));
}

void parallel_for(std::size_t count, int threads, const std::function<void(std::size_t)>& piece) {
  std::atomic<std::size_t> next{0};
  std::exception_ptr fault;
  std::mutex fault_guard;
  const auto work = [&] {
    try {
      for (std::size_t i = next++; i < count; i = next++) piece(i);
    } catch (...) {
      const std::scoped_lock hold(fault_guard);
      if (!fault) fault = std::current_exception();
      next = count;
    }
  };
  const auto helpers = std::min<std::size_t>(count, static_cast<std::size_t>(thread_count(threads)));
  {
    std::vector<std::jthread> pool;
    try {
      for (std::size_t i = 1; i < helpers; ++i) pool.emplace_back(work);
    } catch (const std::system_error&) {  // the system has no more threads to give: fewer do the same
    }
    work();
  }
  if (fault) std::rethrow_exception(fault);
}

}  // namespace fillside
