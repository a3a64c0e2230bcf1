#include "studio/standing/share_out.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <thread>
#include <vector>

namespace quadrille {

void share_out(std::size_t jobs, const std::function<void(std::size_t)>& job) {
  std::vector<std::exception_ptr> thrown(jobs);
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    for (std::size_t i = next++; i < jobs; i = next++) try {
        job(i);
      } catch (...) {
        thrown[i] = std::current_exception();
      }
  };
  {
    const std::size_t hands = std::min(jobs, std::clamp<std::size_t>(std::thread::hardware_concurrency(), 1, 16));
    std::vector<std::jthread> others;
    for (std::size_t i = 1; i < hands; ++i) others.emplace_back(work);
    work();
  }
  for (const std::exception_ptr& first : thrown)
    if (first) std::rethrow_exception(first);
}

}  // namespace quadrille
