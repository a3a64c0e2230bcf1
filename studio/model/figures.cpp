#include "studio/model/figures.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>
#include <string>

namespace quadrille {
namespace {

constexpr const char* our_choice = "our choice, no source";
constexpr const char* practice = "common practice, no source";

constexpr std::array<HouseFigure, 15> table{{
    {"balloon-pressure", "Pressure in a balloon above the air's", "Pa", 3500, 0, 10'000,
     "amateur measurements: 35 hPa inflated"},
    {"sun-heat-light", "How much warmer than the air a light balloon gets in the sun", "K", 10, 0, 60, our_choice},
    {"sun-heat-dark", "How much warmer than the air a dark balloon gets in the sun", "K", 25, 0, 60, our_choice},
    {"dark-lightness", "Colours below this lightness (L*) are dark", "", 40, 0, 100, our_choice},
    {"full-share", "Fullest size where it will grow, as a share of nominal", "", 0.95, 0.5, 1.1, our_choice},
    {"sand-density", "Mass of a litre of dry sand", "kg/l", 1.6, 1, 2.2, "loose dry sand, from memory"},
    {"voltage-drop", "Voltage that a cord may lose", "", 0.03, 0.01, 0.1,
     "NEC 210.19, informational note: 3 % for a branch circuit, from memory"},
    {"power-factor", "Power factor of an inflator's motor", "", 0.9, 0.5, 1, "universal motors, from memory"},
    {"cord-slack", "Length of a cord by the distance to the outlet", "", 1.15, 1, 3, practice},
    {"circuit-120v", "Current of a circuit of 100 to 127 V", "A", 15, 5, 60, "NEC 210.3, the smallest, from memory"},
    {"circuit-230v", "Current of a circuit of 200 to 250 V", "A", 13, 5, 60,
     "fused plugs of BS 1363, from memory; 16 A in most of Europe"},
    {"circuit-share", "Share of a circuit's current that is drawn for long", "", 0.8, 0.1, 1,
     "NEC 210.20(A), continuous loads, from memory"},
    {"generator-margin", "Power of a generator or battery by that of the inflator", "", 1.5, 1, 5,
     "motors draw more when they start; our choice"},
    {"battery-margin", "Energy of a battery by what the inflator uses", "", 1.5, 1, 5,
     "losses of the inverter, old cells, a reserve; our choice"},
    {"least-spares", "Spares of each colour and size at least", "piece", 1, 0, 100, our_choice},
}};

}  // namespace

std::span<const HouseFigure> all_figures() { return table; }

const HouseFigure* find_figure(std::string_view key) {
  const auto* found = std::ranges::find_if(table, [&](const HouseFigure& figure) { return key == figure.key; });
  return found == table.end() ? nullptr : found;
}

double figure_of(const House& house, std::string_view key) {
  const HouseFigure* const figure = find_figure(key);
  if (figure == nullptr) throw std::invalid_argument("there is no figure \"" + std::string(key) + "\"");
  const auto own = house.rates.find(key);
  if (own == house.rates.end() || std::isnan(own->second)) return figure->standard;
  return std::clamp(own->second, figure->least, figure->most);
}

}  // namespace quadrille
