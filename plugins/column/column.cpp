// The column: clusters up a pole on a base plate, with topper and collars.
#include <cmath>

#include "plugins/column/dress.hpp"
#include "plugins/column/parameters.hpp"
#include "plugins/column/request.hpp"
#include "plugins/column/securing.hpp"
#include "plugins/column/stack.hpp"
#include "sdk/bare_frame.hpp"
#include "sdk/overlap.hpp"
#include "sdk/piece.hpp"

namespace quadrille::column {
namespace {

void add_frame(Piece& piece, const Request& request, double pole_m) {
  const auto marks = rod_marks(pole_m, request.pole.piece_m, {pole_m / 2});
  add_rod(piece, request.pole, Rest::as_drawn, marks, [](double at_m) { return Vec3(0, 0, at_m); });
  piece.supports.push_back(foot_at(0, request.base, false));
  add_tie_point(piece, pole_m, TiePurpose::front, "top, to the front");
  add_tie_point(piece, pole_m, TiePurpose::back, "top, to the back");
  add_tie_point(piece, pole_m, TiePurpose::side, "top, to the left");
  add_tie_point(piece, pole_m, TiePurpose::side, "top, to the right");
}

void add_facts(Piece& piece, const Request& request, double pole_m) {
  const auto add = [&](const char* key, double number) { piece.facts.push_back({key, number}); };
  double top = pole_m, latex = 0;
  for (const Balloon& balloon : piece.balloons) {
    top = std::max(top, balloon.centre.z() + balloon.diameter_m / 2);
    latex += latex_mass_kg(balloon.nominal_in);
  }
  add("height_m", top);
  add("pole_m", pole_m);
  add_dressing_facts(piece, request.dressing);
  add("mass_kg", latex + request.pole.mass_per_m_kg() * pole_m);
  add("weight_n", gravity * (latex + request.pole.mass_per_m_kg() * pole_m));
}

void refuse_impossible(const Piece& piece, const Request& request, const Stack& stack) {
  const DressingValues& dressing = request.dressing;
  if (stack.most_layers == 0)
    throw Infeasible("height",
                     "No cluster finds room: the lowest balloons reach " +
                         print_at_least(request.bare_foot_m + dressing.make.inflated_m) +
                         " above the floor, so the height must be that or more.",
                     {},
                     "height=" + print_number(up_to_centimetre(request.bare_foot_m + dressing.make.inflated_m)) + "m");
  if (dressing.tightness < joints_part_below)
    throw Infeasible("tightness",
                     "At a tightness of " + print_fixed(dressing.tightness, 2) +
                         " the clusters spring up the pole and push its joints apart: 0.75 is the least that holds, "
                         "0.95 to 1.05 is usual.",
                     piece, "tightness=0.95");
  if (dressing.clusters > stack.most_layers)
    throw Infeasible("clusters",
                     std::to_string(dressing.clusters) + " clusters do not fit below " + print_both(request.height_m) +
                         ": at this size and tightness " + std::to_string(stack.most_layers) + " do.",
                     piece, "clusters=" + std::to_string(stack.most_layers));
  if (request.pole.section.outer_m > 0.6 * dressing.make.inflated_m)
    throw Infeasible(request.pole_as_typed ? "pole-diameter" : "pole-size",
                     "A pole of " + print_fixed(request.pole.section.outer_m * 1000, 0) +
                         " mm is too thick for clusters of balloons of " + print_both(dressing.make.inflated_m) +
                         ": it may be " + print_fixed(std::floor(600 * dressing.make.inflated_m), 0) + " mm at most.",
                     piece,
                     request.pole_as_typed
                         ? "pole-diameter=" + print_number(std::floor(600 * dressing.make.inflated_m) / 1000) + "m"
                         : "");
  const Overlap deepest = deepest_overlap(piece.balloons);
  if (deepest.share > deepest_press)
    throw Infeasible(
        dressing.size_key(),
        "Balloons press " + print_fixed(100 * deepest.share, 0) +
            " % of their diameter into each other: change the balloon, the size it is inflated to, or the snugness.",
        piece);
}

/// Notes values that were changed and have no effect with the pole, the topper, the pattern or the base that was chosen.
void note_ignored(Piece& piece, const Values& values, const Request& request) {
  if (!request.pole_as_typed)
    for (const char* key : {"pole-diameter", "pole-wall"})
      note_without_effect(
          piece, values, key,
          "The pole is " + rod_words(request.pole) + " by its pole size: diameter and wall as typed have no effect.");
  const bool has_collar = request.collar_at_foot || request.collar_at_topper;
  if (request.topper == Topper::none)
    note_without_effect(piece, values, "topper-slot", "There is no topper: its colour has no effect.");
  if (!has_collar) note_without_effect(piece, values, "collar-slot", "There is no collar: its colour has no effect.");
  if (!has_collar && request.topper != Topper::crown)
    note_without_effect(piece, values, "collar-balloon",
                        "There is no collar and no crown of balloons: the collar balloon has no effect.");
  note_pattern_without_effect(piece, values, request.dressing.pattern);
  note_base_without_effect(piece, values, request.base);
}

Piece build(const Values& values) {
  const Request request = read_request(values);
  const Stack stack = stack_of(request);
  Piece piece;
  if (stack.most_layers == 0) refuse_impossible(piece, request, stack);
  add_balloons(piece, request, stack);
  const double pole_m = pole_length_m(request, stack);
  add_frame(piece, request, pole_m);
  add_facts(piece, request, pole_m);
  refuse_impossible(piece, request, stack);
  add_rod_supplies(piece, request.pole, pole_m, 1);
  add_base(piece, request.base, 1);
  add_cluster_line(piece);
  add_cluster_work(piece);
  add_work_units(piece, "join-rod", "Join and tape a rod",
                 static_cast<double>(section_lengths(pole_m, request.pole.piece_m).size() - 1));
  add_work_units(piece, "raise-frame", "Raise the frame", 1);
  add_anchoring_rules(piece, request);
  warn_of_tightness(piece, request.dressing);
  warn_of_bare_frame(piece, request.dressing, "bare-foot");
  warn_of_ballast(piece, request.base);
  warn_of_standing(piece, request);
  warn_of_pattern(piece, request.dressing);
  note_unused_slots(piece, request.dressing.pattern.slots);
  note_ignored(piece, values, request);
  return piece;
}

constexpr quadrille_piece_type types[] = {
    piece_type<parameters, build>("column", "Column", "Clusters up a pole on a base plate, with topper and collars.")};

}  // namespace
}  // namespace quadrille::column

QUADRILLE_PIECES("quadrille.column", "1.0.0", quadrille::column::types)
