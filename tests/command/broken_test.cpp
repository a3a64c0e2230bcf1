// Whatever goes wrong inside, the command line ends with a sentence and a status, never as a crash.
#include <doctest/doctest.h>

#include <new>
#include <ostream>
#include <sstream>
#include <stdexcept>
#include <streambuf>
#include <string>
#include <utility>
#include <vector>

#include "studio/command/run.hpp"

namespace quadrille {
namespace {

/// Throws Thrown at the first byte that is written.
template <class Thrown>
class Breaks : public std::streambuf {
 protected:
  int_type overflow(int_type) override { throw Thrown("the press is stuck"); }
};

struct MemoryFull : std::bad_alloc {
  explicit MemoryFull(const char*) {}
};

template <class Thrown>
std::pair<int, std::string> ended_by() {
  Breaks<Thrown> buffer;
  std::ostream out(&buffer);
  out.exceptions(std::ios::badbit);  // so that what the buffer throws goes on
  std::ostringstream err;
  const std::vector<std::string> words{"--help"};
  const int status = run(words, out, err, "quadrille");
  return {status, err.str()};
}

TEST_CASE("what is thrown ended the program as a crash: now a sentence is said and a status given") {
  const auto [status, said] = ended_by<std::runtime_error>();
  CHECK(status == 5);
  CHECK(said == "The program failed, which it should not: the press is stuck\n");
  const auto [full, told] = ended_by<MemoryFull>();
  CHECK(full == 3);
  CHECK(told.starts_with("The memory is full: "));
}

}  // namespace
}  // namespace quadrille
