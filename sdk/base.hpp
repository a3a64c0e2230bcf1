// Base plates with ballast: parameters, supports, supplies and work that standing piece types share.
#pragma once

#include <cmath>
#include <cstdint>
#include <string>

#include "sdk/dressing.hpp"
#include "sdk/number.hpp"
#include "sdk/piece.hpp"
#include "sdk/units.hpp"

namespace quadrille {

inline constexpr double standard_ballast_kg = 10;

inline constexpr quadrille_parameter base_parameters[] = {
    length("plate-width", "Plate width", "Side of the square base plate at each foot; 0 for none.", "Base")
        .range(0, 2)
        .display(0, 1)
        .standard(0.45)
        .decimals(2),
    mass("plate-mass", "Plate mass", "Of one base plate.", "Base")
        .range(0, 200)
        .display(0, 30)
        .standard(8)
        .only_with("plate-width>0")
        .advanced(),
    mass("ballast", "Ballast", "Put on each base plate, beyond its own mass.", "Base")
        .range(0, 500)
        .display(0, 60)
        .standard(standard_ballast_kg)
        .only_with("plate-width>0"),
};

struct BaseValues {
  double plate_width_m = 0, plate_mass_kg = 0, ballast_kg = 0;
};

inline BaseValues read_base(const Values& values) {
  return {values.number("plate-width"), values.number("plate-mass"), values.number("ballast")};
}

/// Room for ballast containers on a plate. Common practice, no source.
inline constexpr double ballast_per_m2_kg = 300;

/// A foot at `node`; without a plate it is a socket in the ground.
inline Support foot_at(std::uint32_t node, const BaseValues& base, bool turns) {
  Support foot;
  foot.kind = base.plate_width_m > 0 ? SupportKind::plate : SupportKind::socket;
  foot.node = node;
  foot.turns = turns;
  foot.width_m = foot.depth_m = base.plate_width_m;
  if (base.plate_width_m > 0) {
    foot.own_mass_kg = base.plate_mass_kg;
    foot.ballast_kg = base.ballast_kg;
    foot.ballast_limit_kg = ballast_per_m2_kg * base.plate_width_m * base.plate_width_m;
  }
  return foot;
}

/// Plates and ballast of `feet` feet, and the work of placing them.
inline void add_base(Piece& piece, const BaseValues& base, int feet) {
  piece.work.push_back({"place-base", "Place a base", static_cast<double>(feet)});
  if (base.plate_width_m <= 0) return;
  const std::string side = std::to_string(std::lround(base.plate_width_m * 1000));
  piece.supplies.push_back({"base-plate-" + side + "mm-" + print_fixed(base.plate_mass_kg, 1) + "kg",
                            "Base plate, " + side + " mm (" + print_feet_inches(base.plate_width_m) + ") square, " +
                                print_mass(base.plate_mass_kg, MassStyle::kilograms) + " (" +
                                print_mass(base.plate_mass_kg, MassStyle::pounds) + ")",
                            "piece", static_cast<double>(feet)});
  if (base.ballast_kg <= 0) return;
  piece.supplies.push_back({"ballast", "Ballast", "kg", feet * base.ballast_kg});
  piece.work.push_back({"carry-ballast", "Place ballast, kg", feet * base.ballast_kg});
}

/// Notes a plate's mass that was changed where there is no plate.
inline void note_base_without_effect(Piece& piece, const Values& values, const BaseValues& base) {
  if (base.plate_width_m <= 0)
    note_without_effect(piece, values, "plate-mass", "There is no base plate: its mass has no effect.");
}

/// Warns of more ballast than finds room on a plate, and of ballast that no plate bears and that is therefore left out; of
/// the standard ballast, which nobody may have asked for, only in a note.
inline void warn_of_ballast(Piece& piece, const BaseValues& base) {
  if (base.plate_width_m <= 0 && base.ballast_kg > 0)
    piece.messages.push_back({base.ballast_kg == standard_ballast_kg ? Severity::note : Severity::warning, "ballast",
                              "Without a base plate there is nothing to put " + print_fixed(base.ballast_kg, 0) +
                                  " kg of ballast on, so none is counted: give the plate a width, or set the ballast "
                                  "to 0.",
                              Topic::other, "ballast=0kg"});
  const double limit = ballast_per_m2_kg * base.plate_width_m * base.plate_width_m;
  if (base.plate_width_m > 0 && base.ballast_kg > limit)
    warn(piece, "ballast",
         print_fixed(base.ballast_kg, 0) + " kg of ballast find no room on the plate: it takes about " +
             print_fixed(limit, 0) + " kg.",
         "ballast=" + print_number(std::floor(limit)) + "kg");
}

}  // namespace quadrille
