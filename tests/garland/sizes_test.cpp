// Which sizes go where: shares kept on the whole, small ones where it is thin.
#include "plugins/garland/sizes.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace quadrille;
using namespace quadrille::garland;

namespace {

Request standard_mix() {
  Request request;
  request.mix = {{16, 0.33, 0.12}, {11, 0.24, 0.36}, {5, 0.10, 0.52}};
  request.filler = 0.3;
  request.thickness = request.thickness_end = 0.68;
  return request;
}

}  // namespace

TEST_CASE("every stretch of the sequence has its part of each size, to within one balloon") {
  const std::vector<double> shares{0.12, 0.36, 0.52};
  SizeSequence sequence(3);
  std::vector<double> given(3);
  for (int count = 1; count <= 500; ++count) {
    given[sequence.next(shares)] += 1;
    for (std::size_t i = 0; i < 3; ++i) CHECK(std::abs(given[i] - shares[i] * count) <= 1 + 1e-9);
  }
}

TEST_CASE("core and fillers share the mix between them, the smallest sizes to the fillers first") {
  const Request request = standard_mix();
  const std::vector<double> fillers = filler_shares(request), core = core_shares(request);
  CHECK(fillers == std::vector<double>{0, 0, 0.3});
  double total = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(core[i] * 0.7 + fillers[i] == doctest::Approx(request.mix[i].share));
    total += core[i];
  }
  CHECK(total == doctest::Approx(1));
}

TEST_CASE("in a taper no balloon goes where it is thicker than the garland, and small ones go to the thin end") {
  Request request = standard_mix();
  request.thickness_end = 0.2;
  const CoreSizes sizes(request);
  for (double share = 0.01; share < 1; share += 0.02) {
    const std::vector<double>& here = sizes.at(share);
    CHECK(here[0] + here[1] + here[2] == doctest::Approx(1));
    for (std::size_t i = 0; i < 3; ++i)
      if (request.mix[i].inflated_m > request.thickness_at(share) + 0.02) CHECK(here[i] == 0);
  }
  CHECK(sizes.at(0.1)[0] > sizes.at(0.7)[0]);
  CHECK(sizes.at(0.99)[2] == doctest::Approx(1));
}

TEST_CASE("a cluster takes at least the room in which it nests, and more where it is thin or by a wall") {
  Request request = standard_mix();
  CHECK(filling_of(request, 0.24, 0.4) > filling_of(request, 0.24, 0.5));
  const double free = filling_of(request, 0.24, 0.6);
  request.wall = true;
  request.wall_room = 0.1;
  CHECK(filling_of(request, 0.24, 0.6) > free);
  request.tightness = 1.2;
  // Quads of one size nest at 2^(-1/4) of their diameter: the uniform antiprism.
  CHECK(cluster_room(request, 0.25, 0) == doctest::Approx(1.2 * 0.25 * std::pow(2.0, -0.25)));
}
