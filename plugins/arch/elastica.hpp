// A straight springy rod bent into an arch between two feet on one level: the elastica, in closed form.
// Planar, inextensible, of constant bending stiffness, straight when free, without weight. All lengths are in units of
// the rod's length L, forces in EI/L², moments in EI/L, so that one solution serves every rod.
#pragma once

#include <string>

namespace quadrille::arch {

enum class Feet { upright, pinned };

/// A point of the arch. x from the middle between the feet, z above them, in units of L; slope: angle of the tangent to
/// the x axis [rad], falling from the left foot to the right one; curvature in 1/L, positive where it bends downward.
struct ArchPoint {
  double x = 0, z = 0, slope = 0, curvature = 0;
};

/// The symmetric arch of least energy for a span.
class Elastica {
 public:
  /// `span` ÷ L: 0 (feet touching; pinned: 0.02) to most_span. Outside that range the behaviour is undefined: see
  /// span_is_valid. Upright: the rod leaves both feet vertically. Pinned: it turns freely in them.
  /// Source: Euler's elastica by Legendre's integrals in Carlson's form (DLMF 19.25); upright feet lead to
  /// S/L = 1 − 2D/F at φ = 45° with the parameter m = 4P/κ², which has no special case at the semicircle (m = 0) or at
  /// the separatrix (m = 1); beyond the span without foot moment (m = 2) the arch overhangs its feet and is written by
  /// the amplitude at the foot instead.
  Elastica(Feet feet, double span);

  static constexpr double most_span = 0.98;
  static bool span_is_valid(Feet feet, double span);

  double span() const { return span_; }
  double height() const { return height_; }
  double widest() const { return widest_; }        ///< largest width of the rod's axis
  double widest_at() const { return widest_at_; }  ///< height at which it is widest
  double thrust() const { return thrust_; }  ///< inward push on each foot, PL²/EI; negative: feet are pulled together
  double crown_curvature() const { return crown_curvature_; }  ///< κL
  double foot_curvature() const {
    return foot_curvature_;
  }                                          ///< κL, which is also the foot moment ML/EI; negative where it overhangs
  double energy() const { return energy_; }  ///< UL/EI
  double largest_curvature() const;          ///< largest |κL| anywhere

  /// The point at arc length `at` from the left foot, 0 to 1.
  ArchPoint point(double at) const;

 private:
  enum class Branch { falling, overhanging };
  void solve_falling(double span);
  void solve_overhanging(double span);
  void solve_pinned(double span);
  ArchPoint from_crown(double distance) const;

  Branch branch_ = Branch::falling;
  double span_, height_ = 0, widest_ = 0, widest_at_ = 0, thrust_ = 0, crown_curvature_ = 0, foot_curvature_ = 0,
                energy_ = 0;
  double parameter_ = 0;  ///< falling: m; overhanging: k²
};

}  // namespace quadrille::arch
