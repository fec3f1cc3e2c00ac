// A loop over independent pieces of work on several threads. Results must be written to places that depend
// only on the piece's index: then they are the same bytes for any number of threads.
#pragma once

#include <cstddef>
#include <functional>

namespace fillside {

/// Threads that `wanted` means: itself, or all of the machine's for 0.
int thread_count(int wanted);

/// Calls piece(0) .. piece(count - 1), each once, on thread_count(threads) threads. The first exception
/// thrown by a piece stops the loop and is thrown again here.
void parallel_for(std::size_t count, int threads, const std::function<void(std::size_t)>& piece);

}  // namespace fillside
