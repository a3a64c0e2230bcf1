// Whether the balloons of an arch find room: above the floor, and between its legs; and which bare ends would give it.
#pragma once

#include <optional>

#include "plugins/arch/dressing.hpp"
#include "plugins/arch/outline.hpp"

namespace quadrille::arch {

/// How far the lowest balloon would reach below the floor [m]; 0 or less where none does.
double below_floor_m(const Dressing& dressing);

/// How deep balloons of clusters that are no neighbours along the frame press into each other, as a share of a
/// diameter: those of two legs that stand close.
double press_of_legs(const Dressing& dressing);

/// The least bare ends [m, whole centimetres], beyond those of the plan, with which the frame, dressed with as many
/// clusters as fit, has room; nothing where that would leave half of it bare or more, or never helps. Found by dressing
/// it, so that what is advised holds.
struct Cure {
  double bare_m = 0;
  int clusters = 0;  ///< that then fit
};
std::optional<Cure> bare_ends_that_cure(const Outline& outline, const DressingPlan& plan,
                                        bool (*has_room)(const Dressing&));

/// Reaching a centimetre below the floor is nothing that anybody sees.
bool stands_on_floor(const Dressing& dressing);
bool legs_are_apart(const Dressing& dressing);

/// Warns of balloons below the floor and of legs that press into each other.
void warn_of_room(Piece& piece, const Outline& outline, const DressingPlan& plan, bool rigid);

/// Throws Infeasible, with the piece so far, where no cluster fits, or a balloon would have to reach deeper below the
/// floor than a quarter of its diameter.
void refuse_without_room(const Piece& piece, const Outline& outline, const DressingPlan& plan, bool rigid);

}  // namespace quadrille::arch
