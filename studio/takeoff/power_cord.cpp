#include "studio/takeoff/power_cord.hpp"

#include <array>
#include <cmath>

namespace quadrille {
namespace {

constexpr double copper_ohm_m = 1e-6 / 58, copper_rise = 0.00393, reference_celsius = 20;

/// Ohms for 1000 ft as ohm/m.
constexpr double per_kft(double ohms) { return ohms / 304.8; }
/// Ohms for a kilometre at 20 °C as ohm/m at 75 °C.
constexpr double warmed(double ohms_per_km) { return ohms_per_km / 1000 * (1 + copper_rise * 55); }

constexpr const char* nec =
    "NEC chapter 9, table 8, stranded uncoated copper at 75 °C; current by NEC 400.5(A), second-hand";
constexpr const char* iec =
    "IEC 60228, class 5, plain copper, brought to 75 °C; current by BS 7671, table 4F3A, both from memory";

constexpr std::array<PowerCord, 5> by_gauge{{{"18 AWG", 0.823, per_kft(7.95), 10, nec},
                                             {"16 AWG", 1.309, per_kft(4.99), 13, nec},
                                             {"14 AWG", 2.081, per_kft(3.14), 18, nec},
                                             {"12 AWG", 3.309, per_kft(1.98), 25, nec},
                                             {"10 AWG", 5.261, per_kft(1.24), 30, nec}}};

constexpr std::array<PowerCord, 6> by_section{{{"0.75 mm²", 0.75, warmed(26.0), 6, iec},
                                               {"1 mm²", 1, warmed(19.5), 10, iec},
                                               {"1.5 mm²", 1.5, warmed(13.3), 16, iec},
                                               {"2.5 mm²", 2.5, warmed(7.98), 25, iec},
                                               {"4 mm²", 4, warmed(4.95), 32, iec},
                                               {"6 mm²", 6, warmed(3.30), 40, iec}}};

}  // namespace

double awg_diameter_m(int gauge) { return 0.005 * 0.0254 * std::pow(92.0, (36.0 - gauge) / 39.0); }

double copper_ohm_per_m(double area_m2, double celsius) {
  return copper_ohm_m * (1 + copper_rise * (celsius - reference_celsius)) / area_m2;
}

double voltage_drop(double amps, double ohm_per_m, double one_way_m) { return 2 * amps * ohm_per_m * one_way_m; }

std::span<const PowerCord> awg_cords() { return by_gauge; }
std::span<const PowerCord> metric_cords() { return by_section; }

const PowerCord* thinnest_cord(std::span<const PowerCord> cords, double amps, double volts, double one_way_m,
                               double share) {
  for (const PowerCord& cord : cords)
    if (amps <= cord.ampacity_a && voltage_drop(amps, cord.ohm_per_m, one_way_m) <= share * volts) return &cord;
  return nullptr;
}

}  // namespace quadrille
