// A plugin that breaks the contract in the way named by MISBEHAVES_BY, without the guard of the SDK where it can.
#include <cmath>
#include <iterator>
#include <limits>
#include <stdexcept>
#include <vector>

#include "sdk/piece.hpp"

namespace {

using Build = std::int32_t (*)(const quadrille_value*, std::uint32_t, const quadrille_sink*);
constexpr quadrille_balloon sound = {{0, 0, 1}, {0, 0, 1}, 0.28, 11, 0, 0, 0, QUADRILLE_ROLE_BODY};

void push(const quadrille_sink* sink, const quadrille_balloon& balloon) {
  sink->push(sink->self, QUADRILLE_RECORD_BALLOON, &balloon, 1, sizeof balloon);
}

[[maybe_unused]] std::int32_t throws(const quadrille_value*, std::uint32_t, const quadrille_sink*) {
  throw std::runtime_error("out of balloons");
}

[[maybe_unused]] std::int32_t throws_number(const quadrille_value*, std::uint32_t, const quadrille_sink*) { throw 7; }

[[maybe_unused]] std::int32_t refuses_itself(const quadrille_value*, std::uint32_t, const quadrille_sink* sink) {
  quadrille::Pusher(*sink).refuse("", "Not today.");
  return QUADRILLE_INFEASIBLE;
}

[[maybe_unused]] std::int32_t fails_inside(const quadrille_value*, std::uint32_t, const quadrille_sink* sink) {
  return quadrille::build_guarded(
      [](const quadrille::Values& values) -> quadrille::Piece { return values.number("nowhere"), quadrille::Piece{}; },
      {}, {}, *sink);
}

[[maybe_unused]] std::int32_t not_finite(const quadrille_value*, std::uint32_t, const quadrille_sink* sink) {
  push(sink, sound);
  quadrille_balloon balloon = sound;
  balloon.centre[1] = std::numeric_limits<double>::quiet_NaN();
  push(sink, balloon);
  return QUADRILLE_OK;
}

[[maybe_unused]] std::int32_t ten_million(const quadrille_value*, std::uint32_t, const quadrille_sink* sink) {
  const std::vector<quadrille_balloon> balloons(1000, sound);
  for (int i = 0; i < 10'000; ++i)  // goes on whatever the studio answers
    sink->push(sink->self, QUADRILLE_RECORD_BALLOON, balloons.data(), balloons.size(), sizeof sound);
  return QUADRILLE_OK;
}

[[maybe_unused]] std::int32_t no_such_node(const quadrille_value*, std::uint32_t, const quadrille_sink* sink) {
  const quadrille_support support = {QUADRILLE_SUPPORT_PLATE, 7, 0, 0, 0.4, 0.4, 5, 0, 20};
  sink->push(sink->self, QUADRILLE_RECORD_SUPPORT, &support, 1, sizeof support);
  return QUADRILLE_OK;
}

constexpr Build build = MISBEHAVES_BY;
constexpr quadrille_piece_type types[] = {
    {"misbehaves", "Misbehaves", "Breaks the contract.", nullptr, 0, sizeof(quadrille_parameter), build}};

}  // namespace

QUADRILLE_PIECES("test.misbehaves", "1.0.0", types)
