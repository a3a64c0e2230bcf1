// Colours as people see them who lack one kind of cone.
#pragma once

#include <array>

#include "studio/colour/lab.hpp"

namespace quadrille {

enum class Sight { usual, protanopia, deuteranopia, tritanopia };

inline constexpr std::array all_sights{Sight::usual, Sight::protanopia, Sight::deuteranopia, Sight::tritanopia};

/// What is seen of a light. Source: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, IEEE Trans. Vis. Comput. Graph.
/// 15(6):1291-1298, 2009, matrices for severity 1 (second-hand, equal in several copies). Parts stay within 0 to 1.
LinearRgb seen_by(Sight sight, LinearRgb light);

/// CIEDE2000 of what is seen of two colours.
double difference_seen(Sight sight, Srgb one, Srgb other);

}  // namespace quadrille
