#include "plugins/arch/crown_push.hpp"

#include <cmath>
#include <optional>
#include <string>

#include "plugins/arch/sway.hpp"
#include "plugins/arch/topple.hpp"
#include "sdk/dressing.hpp"
#include "sdk/material.hpp"
#include "sdk/number.hpp"
#include "sdk/units.hpp"

namespace quadrille::arch {
namespace {

constexpr double most_linear_share = 0.5;  // of the height: beyond it the sway that is reckoned is no figure to tell
constexpr double thickest_m = 0.06;        // thicker rods of the same kind are advised up to this diameter

/// What an arch of this shape and dressing does with one rod or another.
struct Pushed {
  bool rigid = false;
  Sway unit;                                      ///< of a rigid frame, for EI = 1
  double length_m = 0, span_m = 0, height_m = 0;  ///< of the frame's line
  double bend_radius_m = 0;                       ///< of a flexible rod where it is bent most
  Rod rod;                                        ///< the one that was asked for,
  double weight_n_per_m = 0;                      ///< and the weight with it, dressed

  double weight_with(const Rod& other) const {
    return weight_n_per_m + gravity * (other.mass_per_m_kg() - rod.mass_per_m_kg());
  }
  bool can_be_bent(const Rod& other) const { return rigid || other.bend_limit_m() <= bend_radius_m; }

  /// How far the named push moves the crown; nothing where it leans over by itself.
  std::optional<double> sway_m(const Rod& other) const {
    const double stiffness = other.bending_stiffness_nm2(), weight = weight_with(other);
    if (rigid) return sway_under_push_m({stiffness * unit.stiffness_n_per_m, stiffness * unit.limit_n_per_m}, weight);
    const double cube = length_m * length_m * length_m;
    const auto give = crown_give(span_m / length_m, weight * cube / stiffness);
    return give ? std::optional(named_push_n * *give * cube / stiffness) : std::nullopt;
  }
  bool too_far(const Rod& other) const {
    const auto by = sway_m(other);
    return !by || *by > most_sway_share * height_m;
  }
};

Pushed pushed(const Piece& piece, const Outline& outline, const Request& request) {
  Pushed arch;
  arch.rigid = is_rigid(request);
  if (arch.rigid) arch.unit = sway_of(outline, 1);
  arch.length_m = outline.length_m;
  arch.span_m = request.span_m;
  arch.height_m = outline.height_m;
  arch.bend_radius_m = find_fact(piece, "bend_radius_m").value_or(0);
  arch.rod = request.rod;
  arch.weight_n_per_m = find_fact(piece, "weight_n_per_m").value_or(0);
  return arch;
}

/// Feet that turn hold nothing upright, and what topples by its weight or was not checked for it is told by others.
bool is_checked(const Piece& piece, const Request& request) {
  if (request.feet == Feet::pinned) return false;
  if (is_rigid(request)) return true;
  const auto limit = find_fact(piece, "topple_weight_n_per_m");
  return limit && find_fact(piece, "weight_n_per_m").value_or(0) < *limit;
}

/// The least diameter, in whole millimetres, that does with the same material and wall.
std::optional<Rod> thicker(const Pushed& arch) {
  const double wall = (arch.rod.section.outer_m - arch.rod.section.inner_m) / 2;
  Rod rod = arch.rod;
  for (double outer = std::ceil(rod.section.outer_m * 1000 + 1e-6); outer <= thickest_m * 1000; ++outer) {
    rod.section = {outer / 1000, rod.section.inner_m > 0 ? outer / 1000 - 2 * wall : 0};
    if (!arch.can_be_bent(rod)) return std::nullopt;
    if (!arch.too_far(rod)) return rod;
  }
  return std::nullopt;
}

/// The lightest of usual aluminium tubes that does in a rigid frame. The sizes are common practice, no source.
std::optional<Rod> tube_that_does(const Pushed& arch) {
  if (!arch.rigid) return std::nullopt;
  constexpr RoundSection tubes[] = {{0.025, 0.022}, {0.03, 0.026}, {0.04, 0.036}, {0.05, 0.044}, {0.06, 0.054}};
  for (const RoundSection& tube : tubes)
    if (const Rod rod{tube, find_material("aluminium"), arch.rod.piece_m}; !arch.too_far(rod)) return rod;
  return std::nullopt;
}

std::string remedy(const Pushed& arch) {
  const auto same = thicker(arch), tube = tube_that_does(arch);
  std::string takes;
  if (same) takes = "take a rod diameter of at least " + millimetres(same->section.outer_m) + " mm";
  const bool is_tube = arch.rod.material == find_material("aluminium") && arch.rod.section.inner_m > 0;
  if (tube && !(same && is_tube)) takes += (same ? ", or " : "take ") + rod_words(*tube);
  return (takes.empty() ? "" : takes + ", or ") + "tie the crown to the front and to the back, indoors too.";
}

}  // namespace

void add_sway_facts(Piece& piece, const Outline& outline, const Request& request) {
  if (!is_checked(piece, request)) return;
  const Pushed arch = pushed(piece, outline, request);
  if (!arch.rigid) {
    if (const auto by = arch.sway_m(arch.rod))
      piece.facts.push_back({"sway_n_per_m", to_twelve_digits(named_push_n / *by)});
    return;
  }
  const double stiffness = request.rod.bending_stiffness_nm2();
  piece.facts.push_back({"sway_n_per_m", to_twelve_digits(stiffness * arch.unit.stiffness_n_per_m)});
  piece.facts.push_back({"topple_weight_n_per_m", to_twelve_digits(stiffness * arch.unit.limit_n_per_m)});
}

void warn_of_sway(Piece& piece, const Outline& outline, const Request& request) {
  if (!is_checked(piece, request)) return;
  const Pushed arch = pushed(piece, outline, request);
  const auto by = arch.sway_m(request.rod);
  if (by && *by <= most_sway_share * arch.height_m) return;
  const std::string frame = (arch.rigid ? "the frame of " : "the bent ") + rod_words(request.rod);
  const std::string push = "A push of " + print_fixed(named_push_n, 0) + " N (" +
                           print_mass(named_push_n / gravity, MassStyle::kilograms) + ", " +
                           print_mass(named_push_n / gravity, MassStyle::pounds) + ") at the crown would ";
  std::string fault;
  if (!by)
    fault = "Under its own weight, " + print_mass_per_length(arch.weight_n_per_m / gravity) + ", " + frame +
            " leans over sideways";
  else if (*by > most_linear_share * arch.height_m)
    fault = push + "lay " + frame + " over sideways";
  else
    fault = push + "sway " + frame + " by " + print_both(*by);
  warn(piece, "rod-diameter", fault + ": " + remedy(arch));
}

}  // namespace quadrille::arch
