#include "studio/making/anchored_line.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "studio/model/anchor_place.hpp"
#include "studio/model/cluster_line.hpp"

namespace quadrille {
std::vector<AnchoredLine> anchored_lines(const PlacedPiece& placed, const Piece& piece, const Area& area) {
  std::vector<AnchoredLine> lines;
  for (std::size_t i = 0; i < placed.lines.size(); ++i) {
    const auto run = run_of(placed.lines[i], placed, piece, area);
    if (!run) continue;
    AnchoredLine line{i, *run, run->length_m(), line_to_cut_m(run->length_m()), 0, "", 0, 0};
    line.to_ground_rad = std::asin(std::clamp(std::abs(run->to.z() - run->from.z()) / line.length_m, 0.0, 1.0));
    AnchorPlace place = anchor_place(piece, run->to.x(), run->to.y());
    line.foot = std::move(place.foot), line.right_m = place.right_m, line.away_m = place.away_m;
    lines.push_back(std::move(line));
  }
  return lines;
}

std::string print_way(double right_m, double away_m, LengthStyle lengths) {
  constexpr double least_m = 0.005;
  std::string text;
  if (std::abs(away_m) >= least_m)
    text = print_length(std::abs(away_m), lengths) + (away_m < 0 ? " out in front" : " behind");
  if (std::abs(right_m) >= least_m)
    text += (text.empty() ? "" : ", ") + print_length(std::abs(right_m), lengths) +
            (right_m < 0 ? " to the left" : " to the right");
  return text.empty() ? "right there" : text;
}

std::string print_anchor(const SecuringLine& line, const Area& area, LengthStyle lengths) {
  if (line.anchor == AnchorKind::stake) return "stake";
  if (line.anchor == AnchorKind::dead_weight)
    return "dead weight, " +
           print_mass(line.mass_kg, lengths == LengthStyle::metres ? MassStyle::kilograms : MassStyle::pounds);
  const auto found = std::ranges::find(area.structures, line.structure, &Structure::id);
  const std::string name = found == area.structures.end() || found->name.empty() ? "structure" : found->name;
  return name + ", " + print_length(line.height_m, lengths) + " up";
}

}  // namespace quadrille
