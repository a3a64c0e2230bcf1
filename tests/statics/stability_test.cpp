// Loads at which frames buckle or topple, against closed forms and independent computations.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "plugins/arch/topple.hpp"
#include "sdk/number.hpp"
#include "tests/reference_table.hpp"
#include "tests/statics/frame_shapes.hpp"

using namespace quadrille;

namespace {

/// A pole of height 1 and EI 1; its foot and its top held as said.
FrameModel pole(int count, std::array<bool, 3> foot_turns, std::optional<FrameSupport> top) {
  FrameModel model = rod_along(count, {1e6, 1, 1}, [](double at) { return Vec3(0, 0, at); });
  model.supports.push_back({0, {}, foot_turns});
  if (top) {
    top->node = last_node(model);
    model.supports.push_back(*top);
  }
  return model;
}

/// Every free node kept in the xz plane: a round pole bends over in any direction and resists none of them.
FrameModel in_its_plane(FrameModel model) {
  for (std::uint32_t i = 1; i < model.nodes.size(); ++i)
    model.supports.push_back({i, {true, false, true}, {false, true, false}});
  return model;
}

double critical_push(const FrameModel& model) {
  const CriticalLoad found = FrameAnalysis(model).critical({}, push_on(last_node(model), Vec3(0, 0, -1)), 200);
  CHECK(found.outcome == Outcome::unstable);
  return found.factor;
}

const std::array<bool, 3> in_all{true, true, true}, about_none{false, false, false}, up_and_down{false, false, true};
const std::array<bool, 3> about_y{false, true, false};

}  // namespace

TEST_CASE("poles buckle at Euler's four loads") {
  // Critical loads of Euler's columns, EI = L = 1: π²/4, π², 20.1907286 (tan z = z, z = 4.493409458), 4π².
  // Those with a turning foot turn about one axis: about all three the pole would spin freely.
  const FrameModel free_top = pole(20, about_none, std::nullopt);
  const FrameModel pinned = pole(20, about_y, FrameSupport{0, up_and_down, about_y});
  const FrameModel propped = pole(20, about_none, FrameSupport{0, up_and_down, in_all});
  const FrameModel clamped = pole(20, about_none, FrameSupport{0, up_and_down, about_none});
  CHECK(critical_push(free_top) == doctest::Approx(2.4674011).epsilon(1e-4));
  CHECK(critical_push(pinned) == doctest::Approx(9.8696044).epsilon(1e-4));
  CHECK(critical_push(propped) == doctest::Approx(20.1907286).epsilon(1e-4));
  CHECK(critical_push(clamped) == doctest::Approx(39.4784176).epsilon(1e-4));
}

TEST_CASE("a heavy pole bends over at Greenhill's height") {
  // wL³/EI = 7.837347 (Greenhill 1881: the first zero of the Bessel function J of order −1/3).
  const FrameModel model = pole(40, about_none, std::nullopt);
  const CriticalLoad found = FrameAnalysis(model).critical({}, weight_of(model, 1), 20);
  CHECK(found.outcome == Outcome::unstable);
  CHECK(found.factor == doctest::Approx(7.837347).epsilon(0.002));
}

TEST_CASE("a pole above its buckling load comes to rest bent, and says that it lost stability") {
  const FrameModel model = in_its_plane(pole(20, about_none, std::nullopt));
  const double load = 1.063 * pi * pi / 4;
  const Equilibrium found = solve(model, push_on(20, Vec3(0, 0, -load)));
  REQUIRE(found.converged());
  REQUIRE(found.lost_stability_at.has_value());
  CHECK(*found.lost_stability_at == doctest::Approx(1 / 1.063).epsilon(0.005));
  // Elastica of a column clamped at its foot, tip angle 40°: P/Pcr = 1.063, top moved sideways by 0.422 L (Timoshenko and
  // Gere, Theory of Elastic Stability, table 2-4; from memory, and (2/π)K(k) = 1.0313 squared, 2k/K = 0.4222, k = sin 20°).
  CHECK(Vec3(found.state.shifts[20].x(), found.state.shifts[20].y(), 0).norm() ==
        doctest::Approx(0.4222).epsilon(0.005));
  SolveOptions stop;
  stop.past_loss = false;
  const Equilibrium stopped = solve(model, push_on(20, Vec3(0, 0, -load)), stop);
  CHECK(stopped.outcome == Outcome::unstable);
  CHECK(!stopped.reason.empty());
  CHECK(stopped.iterations < 100);
}

TEST_CASE("a pole that has toppled hangs from its foot") {
  // A slack rod: with a thousand times its critical weight it hangs straight down, but for the bend at its clamp.
  const FrameModel model = in_its_plane(pole(20, about_none, std::nullopt));
  const Equilibrium found = solve(model, weight_of(model, 500));
  REQUIRE(found.converged());
  CHECK(found.lost_stability_at.has_value());
  CHECK(found.state.shifts[20].z() < -1.5);
}

TEST_CASE("a round pole that bends over any way it likes is told to have lost stability") {
  // Its azimuth meets no resistance but rounding, which may fall on either side of zero.
  for (const double load : {2.6, 3.0, 5.0, 20.0}) {
    const Equilibrium found = solve(pole(20, about_none, std::nullopt), push_on(20, Vec3(0, 0, -load)));
    CAPTURE(load);
    CHECK((found.outcome == Outcome::mechanism || found.outcome == Outcome::converged));
    REQUIRE(found.lost_stability_at.has_value());
    CHECK(*found.lost_stability_at == doctest::Approx(pi * pi / 4 / load).epsilon(0.1));
    CHECK(found.iterations < 700);
  }
}

/// The clamped elastica of length 1 and EI 1 at this span, of the nodes that the table has; none where it has no such span.
/// That of 2/π is reckoned.
FrameModel published_arch(const std::string& span, double torsion) {
  const ReferenceTable shape("elastica_shape.csv");
  FrameModel model;
  for (std::size_t i = 0; i < shape.rows(); ++i)
    if (shape.number(i, "span_over_L") == *parse_number(span))
      model.nodes.emplace_back(shape.number(i, "x_over_L"), 0, shape.number(i, "y_over_L"));
  // At a span of 2/π the rod is a half circle, whose curvature is everywhere the same: an elastica by itself.
  if (std::abs(*parse_number(span) - 2 / pi) < 1e-9)
    for (int i = 0; i <= 40; ++i)
      model.nodes.emplace_back((1 - std::cos(pi * i / 40)) / pi, 0, std::sin(pi * i / 40) / pi);
  if (model.nodes.empty()) return model;
  model.tangents.assign(model.nodes.size(), Vec3::Zero());
  model.tangents.front() = model.tangents.back() = Vec3::UnitZ();
  for (std::uint32_t i = 0; i + 1 < model.nodes.size(); ++i) {
    model.elements.push_back(element_between(i, i + 1, {1e6, 1, torsion}, Rest::straight));
    model.elements.back().length_m = 1.0 / static_cast<double>(model.nodes.size() - 1);
  }
  model.supports = {{0, {}, {}}, {last_node(model), {}, {}}};
  return model;
}

TEST_CASE("clamped arches topple sideways under the weight of the second variation") {
  const ReferenceTable limits("elastica_toppling.csv");
  int checked = 0;
  bool half_circle = false;
  for (std::size_t row = 0; row < limits.rows(); ++row) {
    const std::string& span = limits.text(row, "span_over_L");
    const FrameModel model = published_arch(span, 0.769);
    if (model.nodes.empty()) continue;
    CAPTURE(span);
    const CriticalLoad found = FrameAnalysis(model).critical({}, weight_of(model, 1), 200, 1e-4);
    CHECK(found.outcome == Outcome::unstable);
    CHECK(found.factor == doctest::Approx(limits.number(row, "gamma_crit_sideways_wL3_over_EI")).epsilon(0.01));
    ++checked;
    half_circle = half_circle || std::abs(limits.number(row, "gamma_crit_sideways_wL3_over_EI") - 84.93418) < 1e-4;
  }
  CHECK(checked >= 4);
  CHECK(half_circle);
}

TEST_CASE("the crown of a bent rod gives way to a push as the second variation has it, whatever its torsion") {
  // Two ways to the same figure: the tilt of the continuous rod about its bent shape, and this frame in three dimensions.
  int checked = 0;
  for (const double span : {0.2, 0.4, 0.6})
    for (const double weight : {0.0, 20.0, 40.0})
      for (const double torsion : {0.1, 0.769}) {
        CAPTURE(span);
        CAPTURE(weight);
        const FrameModel model = published_arch(print_number(span), torsion);
        if (model.nodes.empty()) continue;
        const auto crown = static_cast<std::uint32_t>(model.nodes.size() / 2);
        FrameLoads loads = weight_of(model, weight);
        const double push = 0.02;
        loads.pushes.push_back({crown, Vec3(0, push, 0), Vec3::Zero(), Vec3::Zero()});
        const Equilibrium found = solve(model, loads);
        REQUIRE(found.converged());
        const auto give = arch::crown_give(span, weight);
        REQUIRE(give.has_value());
        CHECK(found.state.shifts[crown].y() / push == doctest::Approx(*give).epsilon(0.02));
        ++checked;
      }
  CHECK(checked >= 12);
}
