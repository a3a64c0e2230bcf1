// Wind: the Beaufort scale, velocity pressures of two codes, the force on a leaning member.
#include "studio/standing/wind.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "tests/reference_table.hpp"

namespace quadrille {
namespace {

TEST_CASE("the bands of the Beaufort scale are those of its m/s column, and its formula lies in the middle of each") {
  const ReferenceTable table("beaufort.csv");
  REQUIRE(table.rows() == beaufort_scale.size());
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const auto number = static_cast<int>(table.number(row, "force"));
    CHECK(beaufort_of(table.number(row, "ms_min")).number == number);
    if (!table.text(row, "ms_max").empty()) CHECK(beaufort_of(table.number(row, "ms_max") + 0.05).number == number);
    CHECK(beaufort_middle_m_s(number) == doctest::Approx(table.number(row, "v_formula_0.836B^1.5_ms")).epsilon(1e-4));
    if (number > 0) CHECK(beaufort_of(beaufort_middle_m_s(number)).number == number);
  }
}

TEST_CASE("no piece is left up above the top of Beaufort 5") {
  // The printed tops of force 5: 24 mph and 38 km/h (beaufort.csv); the smaller is taken.
  CHECK(beaufort_5_top_m_s == doctest::Approx(std::min(24 * 0.44704, 38 / 3.6)).epsilon(1e-12));
  CHECK(beaufort_of(beaufort_5_top_m_s).number == 5);
}

TEST_CASE("velocity pressure is that of EN 1991-1-4 at the gust") {
  // Expression (4.10) with 1.25 kg/m³, evaluated independently (beaufort.csv holds it at the tops of the bands).
  const ReferenceTable table("beaufort.csv");
  for (std::size_t row = 0; row + 1 < table.rows(); ++row)
    CHECK(velocity_pressure_pa(table.number(row, "ms_max"), 1.25) ==
          doctest::Approx(table.number(row, "q_EN_at_ms_max_Pa_rho1.25")).epsilon(2e-3));
  CHECK(velocity_pressure_pa(10.7, 1.25) == doctest::Approx(71.55625).epsilon(1e-12));
}

TEST_CASE("EN 1991-1-4's peak pressure is that of the gust its turbulence gives") {
  // q_p = (1 + 7 I_v) ½ρ v_m² (4.8) is ½ρ of a gust √(1 + 7 I_v) above the mean c_r v_b.
  const ReferenceTable table("wind_en1991.csv");
  for (std::size_t row = 0; row < table.rows(); ++row)
    for (const auto& [speed, column] : {std::pair{10.0, "qp_Pa_at_vb_10"}, std::pair{25.0, "qp_Pa_at_vb_25"}}) {
      const double gust = table.number(row, "cr") * speed * std::sqrt(1 + 7 * table.number(row, "Iv"));
      CHECK(velocity_pressure_pa(gust, 1.25) == doctest::Approx(table.number(row, column)).epsilon(1e-4));
    }
}

TEST_CASE("ASCE 7's velocity pressure is ours with its exposure factor and its density of air") {
  // 0.00256 psf/mph² stands for 0.0765 lb/ft³, 1.2254 kg/m³: the printed constant is rounded by 0.1 %.
  constexpr double pa_per_psf = 47.88026, m_s_per_mph = 0.44704, air = 0.0765 * 16.018463;
  const ReferenceTable table("wind_asce7.csv");
  for (std::size_t row = 0; row < table.rows(); ++row)
    for (const auto& [mph, column] :
         {std::pair{50.0, "qz_psf_V50"}, std::pair{90.0, "qz_psf_V90"}, std::pair{115.0, "qz_psf_V115"}})
      CHECK(velocity_pressure_pa(mph * m_s_per_mph, air) * table.number(row, "Kz") / pa_per_psf ==
            doctest::Approx(table.number(row, column)).epsilon(2e-3));
}

TEST_CASE("a wind is named by where it comes from, for one who faces the piece") {
  // 90° blows away from the audience: it comes from the front; 0° blows to the right: it comes from the left.
  CHECK(wind_words(90) == "from the front");
  CHECK(wind_words(0) == "from the left");
  CHECK(wind_words(225) == "from behind on the right");
  CHECK(wind_words(-45) == "from behind on the left");
  CHECK(wind_words(359) == "from the left");
}

TEST_CASE("a speed is told in miles an hour, kilometres an hour and metres a second") {
  // By definition 1 mph = 0.44704 m/s: 10.7 m/s are 23.9 mph and 38.52 km/h.
  CHECK(speed_words(10.7) == "23.9 mph (38.5 km/h, 10.7 m/s)");
}

TEST_CASE("only the wind across a member pushes it, and square on it") {
  const Vec3 way = wind_way(0);
  // 60° from the wind: cos² of the angle between wind and the normal, by hand.
  const Vec3 along = 2 * Vec3(std::cos(pi / 3), 0, std::sin(pi / 3));
  const Vec3 force = cross_flow_force(along, 0.04, way, 100, 1.2);
  CHECK(force.norm() == doctest::Approx(100 * 1.2 * 0.04 * 2 * std::pow(std::sin(pi / 3), 2)).epsilon(1e-9));
  CHECK(std::abs(force.dot(along)) < 1e-9);
  CHECK(cross_flow_force({1, 0, 0}, 0.04, way, 100, 1.2).norm() == doctest::Approx(0).epsilon(1e-9));
  CHECK(cross_flow_force({0, 0, 1}, 0.04, way, 100, 1.2).x() == doctest::Approx(4.8).epsilon(1e-9));
}

}  // namespace
}  // namespace quadrille
