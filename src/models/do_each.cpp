#include "models/do_each.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace tailblock {

void do_each_on_threads(std::size_t count, const std::function<void(std::size_t)>& work) {
  constexpr unsigned most_threads = 8;
  std::atomic<std::size_t> next{0};
  std::mutex guard;
  std::exception_ptr thrown;
  const auto take_turns = [&] {
    for (std::size_t i = next++; i < count; i = next++) {
      try {
        work(i);
      } catch (...) {
        const std::lock_guard lock(guard);
        if (!thrown) thrown = std::current_exception();
        next = count;
      }
    }
  };
  {
    const unsigned cores = std::clamp(std::thread::hardware_concurrency(), 1U, most_threads);
    const std::size_t helpers = std::min<std::size_t>(cores, count) - (count > 0 ? 1 : 0);
    std::vector<std::jthread> threads;
    for (std::size_t i = 0; i < helpers; ++i) threads.emplace_back(take_turns);
    take_turns();
  }
  if (thrown) std::rethrow_exception(thrown);
}

}  // namespace tailblock
