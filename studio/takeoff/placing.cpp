#include "studio/takeoff/placing.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/model/amounts.hpp"
#include "studio/model/cluster_line.hpp"
#include "studio/model/figures.hpp"
#include "studio/model/securing.hpp"
#include "studio/model/stake.hpp"

namespace quadrille {
namespace {

constexpr double least_kg = 1e-9;  // below it there is no ballast, only the rounding of sums

SupplyLine securing_line(const SecuringLine& line, double run_m) {
  const Cord* const cord = find_cord(line.cord);
  const std::string key = cord == nullptr ? line.cord : cord->key;
  const std::string label = cord == nullptr ? line.cord : cord->label;
  return {"securing-line-" + key, "Securing line: " + label, "m", line_to_cut_m(run_m)};
}

void add_lines(std::vector<SupplyLine>& supplies, const PlacedPiece& placed, const Piece& piece, const Area& area) {
  for (const SecuringLine& line : placed.lines) {
    const auto run = run_of(line, placed, piece, area);
    if (!run) continue;
    supplies.push_back(securing_line(line, run->length_m()));
    if (line.anchor == AnchorKind::stake)
      supplies.push_back({"stake", "Stake for a line, at least " + print_stake(), "piece", 1});
    if (line.anchor == AnchorKind::dead_weight)
      supplies.push_back({"dead-weight-" + print_number(line.mass_kg) + "kg",
                          "Dead weight for a securing line, " + print_mass(line.mass_kg, MassStyle::kilograms) + " (" +
                              print_mass(line.mass_kg, MassStyle::pounds) + ")",
                          "piece", 1});
  }
}

bool asks_for_line_through_clusters(const Piece& piece, const Site& site) {
  const bool outdoors = site.surroundings == Surroundings::outdoors;
  return std::ranges::any_of(piece.anchoring, [&](const AnchoringRule& rule) {
    return rule.requirement == Requirement::clusters_together &&
           (rule.when == When::always || rule.when == (outdoors ? When::outdoors : When::indoors));
  });
}

void add_ballast(std::vector<SupplyLine>& supplies, const Piece& piece, const House& house) {
  double counted = 0, borne = 0;
  for (const Supply& supply : piece.supplies)
    if (supply.key == ballast_key && supply.unit == "kg") counted += supply.quantity;
  std::int64_t containers = 0;
  for (const Support& support : piece.supports) {
    borne += support.ballast_kg;
    containers += containers_holding(support.ballast_kg, house);
  }
  containers += containers_holding(counted - borne, house);
  const double kilograms = std::max(counted, borne);
  if (containers == 0) return;
  supplies.push_back({ballast_container_key,
                      "Ballast container, " + print_number(house.container_l) + " l (" +
                          print_litres(house.container_l, Units::feet) + ")",
                      "piece", static_cast<double>(containers)});
  // A litre of water is a kilogram, to within 0.3 % up to 25 °C.
  if (house.ballast_fill == BallastFill::water)
    supplies.push_back({"ballast-water", "Water for ballast", "l", kilograms});
  else
    supplies.push_back({"ballast-sand", "Sand for ballast", "kg", kilograms});
}

}  // namespace

double container_kg(const House& house) {
  const double litres = std::max(house.container_l, 0.01);
  return house.ballast_fill == BallastFill::water ? litres : litres * figure_of(house, "sand-density");
}

std::int64_t containers_holding(double kilograms, const House& house) {
  if (!(kilograms > least_kg)) return 0;
  return static_cast<std::int64_t>(std::min(1e9, std::ceil(kilograms / container_kg(house) - 1e-9)));
}

std::vector<SupplyLine> placing_supplies(const PlacedPiece& placed, const Piece& piece, const Area& area,
                                         const House& house) {
  std::vector<SupplyLine> supplies;
  add_lines(supplies, placed, piece, area);
  if (const double length = clusters_together_m(piece); length > 0 && asks_for_line_through_clusters(piece, area.site))
    supplies.push_back({"clusters-together-line", "Line, clusters to each other", "m", length});
  add_ballast(supplies, piece, house);
  return supplies;
}

}  // namespace quadrille
