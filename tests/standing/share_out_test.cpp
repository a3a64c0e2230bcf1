// Jobs on all hardware threads.
#include "studio/standing/share_out.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

namespace quadrille {
namespace {

TEST_CASE("every job is done once, also where there is none or only one") {
  for (const std::size_t jobs : {0u, 1u, 2u, 1000u}) {
    std::vector<int> done(jobs, 0);
    share_out(jobs, [&](std::size_t i) { ++done[i]; });
    CHECK(std::ranges::count(done, 1) == static_cast<std::ptrdiff_t>(jobs));
  }
}

TEST_CASE("what a job throws comes out when all are done, the first in their order") {
  std::vector<int> done(100, 0);
  std::string thrown;
  try {
    share_out(100, [&](std::size_t i) {
      done[i] = 1;
      if (i % 10 == 7) throw std::runtime_error(std::to_string(i));
    });
  } catch (const std::runtime_error& error) {
    thrown = error.what();
  }
  CHECK(thrown == "7");
  CHECK(std::ranges::count(done, 1) == 100);
}

}  // namespace
}  // namespace quadrille
