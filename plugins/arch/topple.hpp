// When a flexible-rod arch flops over sideways under its own weight.
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

}  // namespace quadrille::arch
