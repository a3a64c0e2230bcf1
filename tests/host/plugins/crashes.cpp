// A plugin that ends the program in the way named by CRASHES_BY, unless QUADRILLE_TEST_BEHAVE is set.
#include <csignal>
#include <cstdlib>
#include <iterator>

#include "sdk/piece.hpp"

namespace {

enum class Way { aborts_at_build, aborts_at_load, ends_at_build };
constexpr Way way = Way::CRASHES_BY;

bool behaves() { return std::getenv("QUADRILLE_TEST_BEHAVE") != nullptr; }

[[maybe_unused]] const int at_load = [] {
  if (way == Way::aborts_at_load && !behaves()) std::raise(SIGKILL);
  return 0;
}();

std::int32_t build(const quadrille_value*, std::uint32_t, const quadrille_sink*) {
  if (way == Way::aborts_at_build && !behaves()) std::abort();
  if (way == Way::ends_at_build && !behaves()) std::_Exit(0);
  return QUADRILLE_OK;
}

constexpr quadrille_piece_type types[] = {
    {"crashes", "Crashes", "Ends the program.", nullptr, 0, sizeof(quadrille_parameter), build}};

}  // namespace

QUADRILLE_PIECES("test.crashes", "1.0.0", types)
