#include "plugins/column/dress.hpp"

#include <string>

namespace quadrille::column {
namespace {

double ring_radius(const Request& request, double inflated_m) {
  return request.dressing.make.snug * hard_ring_radius(request.dressing.make.size, inflated_m);
}

Balloon loose_balloon(const Vec3& centre, const Vec3& neck, double inflated_m, double nominal_in, std::uint32_t slot,
                      Role role) {
  return {to_nanometre(centre), to_nanometre(neck), inflated_m, nominal_in, slot, 0, 0, role};
}

/// A ring of single balloons, one in each crease of the cluster.
void add_collar(Piece& piece, const Request& request, const Cluster& cluster, const CollarSeat& seat) {
  const int n = request.dressing.make.size;
  for (int place = 0; place < n; ++place) {
    const Vec3 out = direction_about(Vec3::UnitZ(), cluster.turn_rad + (2 * place + 1) * pi / n);
    const Vec3 centre = cluster.centre + seat.radius_m * out + Vec3(0, 0, seat.height_m);
    piece.balloons.push_back(loose_balloon(centre, cluster.centre + Vec3(0, 0, seat.height_m),
                                           usual_inflated_m(request.collar_nominal_in), request.collar_nominal_in,
                                           request.collar_slot, Role::collar));
  }
}

[[noreturn]] void refuse_collar(const Piece& piece, const char* where) {
  throw Infeasible(
      "collar-balloon",
      std::string("The collar's balloons find no seat ") + where +
          ": they are too small to touch the cluster or too large for its creases. Choose another collar balloon size.",
      piece);
}

void add_round_topper(Piece& piece, const Request& request, const Layer& top) {
  const double D = usual_inflated_m(request.topper_nominal_in), radius = ring_radius(request, top.inflated_m);
  const double height = seat_height(D, top.inflated_m, radius);
  if (height <= 0)
    throw Infeasible("topper",
                     "The topper of " + print_both(D) + " falls through the top cluster: choose a larger one.", piece);
  const Cluster cluster = piece.clusters.back();
  const Vec3 centre = cluster.centre + Vec3(0, 0, height);
  piece.balloons.push_back(
      loose_balloon(centre, cluster.centre, D, request.topper_nominal_in, request.topper_slot, Role::topper));
  if (!request.collar_at_topper) return;
  const auto seat = collar_below_topper(request.dressing.make.size, top.inflated_m, radius,
                                        usual_inflated_m(request.collar_nominal_in), D, height);
  if (!seat) refuse_collar(piece, "below the topper");
  add_collar(piece, request, cluster, *seat);
}

/// One balloon more in the middle of the top cluster, resting on its ring, in the topper's colour, and one in each crease.
void add_crown(Piece& piece, const Request& request, const Layer& top) {
  const double radius = ring_radius(request, top.inflated_m), d = top.inflated_m;
  const double height = seat_height(d, d, radius);
  const Cluster cluster = piece.clusters.back();
  const Vec3 up(0, 0, height > 0 ? height : d);
  piece.balloons.push_back(loose_balloon(cluster.centre + up, cluster.centre, d, request.dressing.make.nominal_in,
                                         request.topper_slot, Role::topper));
  const double small_in = request.collar_nominal_in, c = usual_inflated_m(small_in);
  const auto seat = collar_below_topper(request.dressing.make.size, d, radius, c, d, up.z());
  if (!seat) return;
  for (int place = 0; place < request.dressing.make.size; ++place) {
    const Vec3 out =
        direction_about(Vec3::UnitZ(), cluster.turn_rad + (2 * place + 1) * pi / request.dressing.make.size);
    piece.balloons.push_back(loose_balloon(cluster.centre + seat->radius_m * out + Vec3(0, 0, seat->height_m),
                                           cluster.centre, c, small_in, request.topper_slot, Role::topper));
  }
}

}  // namespace

void add_balloons(Piece& piece, const Request& request, const Stack& stack) {
  const auto laid = lay_pattern(request.dressing.pattern, static_cast<int>(stack.layers.size()));
  ClusterMake make = request.dressing.make;
  for (std::size_t i = 0; i < stack.layers.size(); ++i) {
    const Layer& layer = stack.layers[i];
    make.inflated_m = layer.inflated_m;
    const Cluster cluster{static_cast<std::uint32_t>(i + 1), layer.centre_m, to_nanometre(Vec3(0, 0, layer.centre_m)),
                          Vec3::UnitZ(), laid[i].half_steps * pi / make.size};
    piece.clusters.push_back(cluster);
    const auto ring = ring_balloons(cluster, make, laid[i].slots);
    piece.balloons.insert(piece.balloons.end(), ring.begin(), ring.end());
  }
  if (stack.layers.empty()) return;
  if (request.collar_at_foot) {
    const Layer& low = stack.layers.front();
    const auto seat = collar_at_foot(make.size, low.inflated_m, ring_radius(request, low.inflated_m),
                                     usual_inflated_m(request.collar_nominal_in), low.centre_m);
    if (!seat) refuse_collar(piece, "at the foot");
    add_collar(piece, request, piece.clusters.front(), *seat);
  }
  if (request.topper == Topper::round) add_round_topper(piece, request, stack.layers.back());
  if (request.topper == Topper::crown) add_crown(piece, request, stack.layers.back());
}

double pole_length_m(const Request& request, const Stack& stack) {
  if (stack.layers.empty()) return request.height_m;
  const Layer& top = stack.layers.back();
  return top.centre_m + top.inflated_m / 4;
}

}  // namespace quadrille::column
