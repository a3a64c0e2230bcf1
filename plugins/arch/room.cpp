#include "plugins/arch/room.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "sdk/number.hpp"
#include "sdk/overlap.hpp"
#include "sdk/units.hpp"

namespace quadrille::arch {
namespace {

/// Clusters nearer than that along the frame are neighbours, whose press the frame's bend decides.
constexpr std::size_t neighbours = 3;

Dressing dressing_of(const Piece& piece) { return {piece.clusters, piece.balloons, 0}; }

std::string floor_remedy(const Outline& outline, const DressingPlan& plan, bool rigid) {
  const auto cure = bare_ends_that_cure(outline, plan, stands_on_floor);
  return (cure ? "leave bare ends of " + print_at_least(cure->bare_m) + ", " : std::string()) +
         (rigid ? "raise the height, " : "narrow the span, ") + "or use a smaller balloon.";
}

/// The parameter to blame for balloons below the floor.
const char* floor_key(const Outline& outline, const DressingPlan& plan, bool rigid) {
  if (bare_ends_that_cure(outline, plan, stands_on_floor)) return "bare-ends";
  return rigid ? "height" : plan.size_key();
}

/// "bare-ends=0.21m", or nothing where bare ends are no cure.
std::string bare_ends_setting(const std::optional<Cure>& cure) {
  return cure ? "bare-ends=" + print_number(up_to_centimetre(cure->bare_m)) + "m" : std::string();
}

}  // namespace

double below_floor_m(const Dressing& dressing) {
  double deepest = 0;
  for (const Balloon& balloon : dressing.balloons)
    deepest = std::max(deepest, balloon.diameter_m / 2 - balloon.centre.z());
  return deepest;
}

double press_of_legs(const Dressing& dressing) {
  if (dressing.clusters.empty()) return 0;
  const std::size_t size = dressing.balloons.size() / dressing.clusters.size();
  const double diameter = dressing.balloons.front().diameter_m;
  const double reach = 2 * (dressing.balloons.front().centre - dressing.clusters.front().centre).norm() + diameter;
  double nearest = diameter;
  for (std::size_t i = 0; i < dressing.clusters.size(); ++i)
    for (std::size_t j = i + neighbours; j < dressing.clusters.size(); ++j) {
      if ((dressing.clusters[i].centre - dressing.clusters[j].centre).squaredNorm() > reach * reach) continue;
      for (std::size_t a = i * size; a < (i + 1) * size; ++a)
        for (std::size_t b = j * size; b < (j + 1) * size; ++b)
          nearest = std::min(nearest, (dressing.balloons[a].centre - dressing.balloons[b].centre).norm());
    }
  return (diameter - nearest) / diameter;
}

bool stands_on_floor(const Dressing& dressing) { return below_floor_m(dressing) <= 0.01; }
bool legs_are_apart(const Dressing& dressing) { return press_of_legs(dressing) <= deepest_press; }

std::optional<Cure> bare_ends_that_cure(const Outline& outline, const DressingPlan& plan,
                                        bool (*has_room)(const Dressing&)) {
  constexpr int most_tries = 40;
  const double most = outline.length_m / 4;
  const double step = std::max({0.01, plan.spacing_m() / 4, (most - plan.bare_m) / most_tries});
  DressingPlan trial = plan;
  trial.clusters = 0;
  for (double bare = plan.bare_m + 0.01; bare < most; bare += step) {
    trial.bare_m = up_to_centimetre(bare);
    const Dressing dressing = dress(outline, trial);
    if (!dressing.clusters.empty() && has_room(dressing)) return Cure{trial.bare_m, dressing.most_clusters};
  }
  return std::nullopt;
}

void warn_of_room(Piece& piece, const Outline& outline, const DressingPlan& plan, bool rigid) {
  const Dressing dressing = dressing_of(piece);
  if (!stands_on_floor(dressing))
    warn(piece, floor_key(outline, plan, rigid),
         "The lowest balloons would reach " + print_both(below_floor_m(dressing)) +
             " below the floor: " + floor_remedy(outline, plan, rigid),
         bare_ends_setting(bare_ends_that_cure(outline, plan, stands_on_floor)));
  if (legs_are_apart(dressing)) return;
  const std::string fault = "The legs stand so close that their balloons press " +
                            print_fixed(100 * press_of_legs(dressing), 0) + " % of a balloon deep into each other: ";
  const auto cure = bare_ends_that_cure(outline, plan, legs_are_apart);
  if (!cure)
    warn(piece, "span", fault + "bare ends do not cure that. Widen the span, or use a smaller balloon.");
  else if (plan.clusters > 0)
    warn(piece, "clusters",
         fault + "mount " + std::to_string(cure->clusters) + " clusters or fewer, or widen the span.",
         "clusters=" + std::to_string(cure->clusters));
  else
    warn(piece, "bare-ends", fault + "leave bare ends of " + print_at_least(cure->bare_m) + ", or widen the span.",
         bare_ends_setting(cure));
}

void refuse_without_room(const Piece& piece, const Outline& outline, const DressingPlan& plan, bool rigid) {
  const double spacing = plan.spacing_m();
  if (piece.clusters.empty()) {
    if (outline.length_m < spacing)
      throw Infeasible(plan.size_key(),
                       "A cluster of these balloons takes " + print_at_least(spacing) + " of frame, which is only " +
                           print_at_most(outline.length_m) + " long: use a smaller balloon or a longer frame.",
                       piece);
    throw Infeasible("bare-ends",
                     "With bare ends of " + print_both(plan.bare_m) + " no cluster finds room on a frame of " +
                         print_both(outline.length_m) + ": leave at most " +
                         print_at_most((outline.length_m - spacing) / 2) + " bare at each foot.",
                     piece,
                     "bare-ends=" + print_number(std::floor((outline.length_m - spacing) / 2 * 100) / 100) + "m");
  }
  const double below = below_floor_m(dressing_of(piece));
  if (below > plan.make.inflated_m / 4)
    throw Infeasible(floor_key(outline, plan, rigid),
                     "The lowest balloons would have to reach " + print_both(below) +
                         " below the floor: " + floor_remedy(outline, plan, rigid),
                     piece, bare_ends_setting(bare_ends_that_cure(outline, plan, stands_on_floor)));
}

}  // namespace quadrille::arch
