// How a flexible-rod arch holds itself upright sideways: when it flops over under its own weight, and how far its crown
// gives way to a push.
#pragma once

#include <optional>

namespace quadrille::arch {

/// Weight per length, wL³/EI, at which an arch with upright, perfectly held feet loses its sideways stability, without
/// lines; `span` ÷ L from 0 to 0.87, to a millionth. Nothing where the equilibrium under that weight was not found, which
/// from 0.875 up is always so: the caller must say that it was not checked.
///
/// The planar shape under the weight obeys EIθ'' = −P sinθ + w(L/2 − s) cosθ. Tilting its tangent sideways by β(s)
/// changes the energy by ½∫ EI β'² − (EI θ'² + P cosθ + w(L/2 − s) sinθ) β² ds, with β = 0 at the feet; the tilt that
/// is antisymmetric about the crown keeps both feet in place by itself, needs no torsion, and is the first to go. So
/// the limit is the least w for which β started at a foot returns to zero at the crown. Source: derived here; checked
/// against independent values of the second variation of the continuous rod.
std::optional<double> sideways_limit(double span);

/// How far the crown of the same arch under the weight per length wL³/EI `weight` gives way sideways to a small push F at
/// the crown, v EI/(F L³), to 1e-8; `span` ÷ L from 0 to 0.87. The tilt of sideways_limit under the push is the β
/// with EIβ'' + (EI θ'² + P cosθ + w(L/2 − s) sinθ) β + F/2 = 0 and β = 0 at foot and crown; v = ∫β ds. Nothing where the
/// arch flops over by itself or its shape was not found. Source: derived here; checked against the three-dimensional
/// frame analysis.
std::optional<double> crown_give(double span, double weight);

}  // namespace quadrille::arch
