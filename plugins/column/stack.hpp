// The stack of clusters on the pole, with topper and collars: pure geometry.
#pragma once

#include <vector>

#include "plugins/column/request.hpp"

namespace quadrille::column {

/// One cluster of the stack: heights in metres.
struct Layer {
  double centre_m = 0, inflated_m = 0;
};

struct Stack {
  std::vector<Layer> layers;  ///< those asked for, from below
  int most_layers = 0;        ///< how many would fit
};

/// Height between two rings of hard spheres of diameters d and e [m], n each, the upper one turned by 180°/n and resting
/// in the creases of the lower: √(((d+e)/2)² − (r² + q² − 2rq cos(180°/n))) with the ring radii r and q. Equal spheres
/// give hard_spacing. The rings must be near enough in size to touch; otherwise 0.
double crease_height(int n, double d, double e);

/// Lowest balloons bare_foot above the floor, each cluster in the creases of the one below times tightness, as long as
/// its balloons stay below the column's height. A tapering column changes its diameters with height, in steps of half an inch.
Stack stack_of(const Request& request);

/// Height [m] above a ring of n balloons at which a ball of diameter D [m] rests on it; `ring_radius` to their centres, d
/// their diameter: √(((D+d)/2)² − ring_radius²). 0 where it falls through.
double seat_height(double D, double d, double ring_radius);

/// Where a collar's balls sit: distance from the axis and height above the ring, both in metres.
struct CollarSeat {
  double radius_m = 0, height_m = 0;
};

/// In the creases between the top ring and a round topper, touching both rings' balloons and the topper, whose centre
/// lies `topper_height` above the ring. Nothing where a ball of diameter c does not fit so.
std::optional<CollarSeat> collar_below_topper(int n, double d, double ring_radius, double c, double D,
                                              double topper_height);

/// On the floor in the creases of the lowest ring, whose centres lie `ring_height` above the floor.
std::optional<CollarSeat> collar_at_foot(int n, double d, double ring_radius, double c, double ring_height);

}  // namespace quadrille::column
