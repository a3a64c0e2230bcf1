#include "plugins/garland/relax.hpp"

#include <algorithm>
#include <cmath>

#include "plugins/garland/grid.hpp"
#include "plugins/garland/measure.hpp"

namespace quadrille::garland {
namespace {

constexpr double settled = 0.03;  ///< overlap at which relaxed balloons rest, share of the smaller diameter
constexpr double well = 0.10;     ///< where hardly any pair is deeper than this: relaxed
constexpr double skin_m = 0.03;   ///< how far balls may come nearer before neighbours are looked up again
constexpr int rounds = 100, slide_every = 8, last_slide = 80, strict_rounds = 4;
constexpr double least_lean_m = 0.002;

struct Place {
  Vec3 centre;
  double radius;
};

/// What holds a ball.
struct Bond {
  Vec3 neck;
  Vec3 side, deep;                     ///< across the line: in the elevation, and the third direction
  double out = 0, out_deep = 0;        ///< how far its centre may be off the line in these [m]
  double nearest2 = 0, farthest2 = 0;  ///< squares of the distances that its neck allows [m²]
  double carries = 0;
  double slope = 0;  ///< by how much more or less it may be off the line a metre farther along it
};

struct Contact {
  std::uint32_t a, b;
  double rest, rest2;  ///< distance at which the two rest, and its square
  double a_gives;      ///< which part of the way a makes: the lighter one gives way
};

/// Where a cluster is tied: the same for all its balls.
struct Tie {
  Vec3 neck, axis, side, deep;
  double half = 0;   ///< half the thickness there [m]
  double slope = 0;  ///< by how much more half the thickness is a metre farther along
};

Tie tie_at(const Vec3& neck, const Vec3& axis, double at, const Request& request, const Curve& line) {
  Tie tie{neck,
          axis,
          across(axis),
          {},
          request.thickness_at(at / line.length_m()) / 2,
          (request.thickness_end - request.thickness) / 2 / line.length_m()};
  tie.deep = axis.cross(tie.side);
  return tie;
}

Bond bond_of(const Ball& ball, const Tie& tie) {
  Bond bond;
  bond.neck = tie.neck;
  bond.side = tie.side;
  bond.deep = tie.deep;
  bond.out = std::max(tie.half - ball.radius, 0.0);
  bond.out_deep = std::max(tie.half - ball.radius, 0.85 * ball.radius);
  const double nearest = nearest_share * ball.radius, farthest = farthest_share * ball.radius;
  bond.nearest2 = nearest * nearest;
  bond.farthest2 = farthest * farthest;
  bond.carries = ball.carries;
  bond.slope = tie.slope;
  return bond;
}

std::vector<Contact> contacts_of(const std::vector<Place>& places, double largest) {
  Grid grid(largest + skin_m, places.size());
  std::vector<Contact> contacts;
  contacts.reserve(8 * places.size());
  for (std::uint32_t i = 0; i < places.size(); ++i) {
    const Place& b = places[i];
    grid.near(b.centre, [&](std::uint32_t j) {
      const Place& a = places[j];
      const double reach = a.radius + b.radius + skin_m;
      if ((b.centre - a.centre).squaredNorm() >= reach * reach) return false;
      const double rest = a.radius + b.radius - 2 * settled * std::min(a.radius, b.radius);
      const double a2 = a.radius * a.radius, b2 = b.radius * b.radius;
      contacts.push_back({j, i, rest, rest * rest, b2 / (a2 + b2)});
      return false;
    });
    grid.insert(b.centre, i);
  }
  return contacts;
}

/// One push at every contact; how many were found deeper than `well`.
std::size_t push_apart(std::vector<Place>& places, const std::vector<Contact>& contacts) {
  std::size_t pressed = 0;
  for (const Contact& contact : contacts) {
    Place &a = places[contact.a], &b = places[contact.b];
    const Vec3 between = b.centre - a.centre;
    const double distance2 = between.squaredNorm();
    if (distance2 >= contact.rest2 || distance2 == 0) continue;
    const double distance = std::sqrt(distance2), deep = contact.rest - distance;
    pressed += deep > 2 * (well - settled) * std::min(a.radius, b.radius);
    const Vec3 move = between * (deep / distance);
    a.centre -= contact.a_gives * move;
    b.centre += (1 - contact.a_gives) * move;
  }
  return pressed;
}

/// Before the wall and above the floor.
void keep_in_room(Vec3& centre, double radius, const Request& request) {
  if (request.wall) centre.y() = std::min(centre.y(), request.wall_y - radius);
  centre.z() = std::max(centre.z(), radius);
}

/// Back to where neck, outline, wall and floor let it be.
void hold(Place& place, const Bond& bond, const Request& request, double confine) {
  Vec3 from = place.centre - bond.neck;
  const double off = from.dot(bond.side), deep = from.dot(bond.deep);
  double out = bond.out;
  if (bond.slope != 0) out = std::max(0.0, out + bond.slope * from.dot(bond.side.cross(bond.deep)));
  if (std::abs(off) > out) from += confine * (std::clamp(off, -out, out) - off) * bond.side;
  // Gently, or it would fight with what it must push aside.
  if (bond.carries * off < out) from += 0.15 * std::abs(bond.carries) * (bond.carries * out - off) * bond.side;
  if (std::abs(deep) > bond.out_deep)
    from += 0.5 * (std::clamp(deep, -bond.out_deep, bond.out_deep) - deep) * bond.deep;
  const double distance2 = from.squaredNorm();
  if (distance2 > bond.farthest2) from *= std::sqrt(bond.farthest2 / distance2);
  if (distance2 < bond.nearest2 && distance2 > 0) from *= std::sqrt(bond.nearest2 / distance2);
  place.centre = bond.neck + from;
  keep_in_room(place.centre, place.radius, request);
}

/// Clusters whose balls all lean the same way along the line follow them.
void slide(std::vector<Ball>& balls, const std::vector<Place>& places, std::vector<Bond>& bonds, const Request& request,
           const Curve& line) {
  for (std::size_t first = 0, next = 0; first < balls.size(); first = next) {
    double lean = 0;
    for (next = first; next < balls.size() && balls[next].cluster == balls[first].cluster; ++next)
      lean += (places[next].centre - balls[next].neck).dot(balls[next].axis);
    lean /= static_cast<double>(next - first);
    if (first == 0 || next == balls.size() || std::abs(lean) < least_lean_m) continue;
    const double at = std::clamp(balls[first].at + lean, 0.0, line.length_m());
    const Tie tie = tie_at(line.point(at), line.tangent(at), at, request, line);
    for (std::size_t i = first; i < next; ++i) {
      balls[i].at = at;
      balls[i].neck = tie.neck;
      balls[i].axis = tie.axis;
      bonds[i] = bond_of(balls[i], tie);
    }
  }
}

}  // namespace

std::vector<Pair> neighbours(const std::vector<Ball>& balls, double slack_m) {
  double largest = 0.01;
  for (const Ball& ball : balls) largest = std::max(largest, 2 * ball.radius);
  Grid grid(largest + std::max(slack_m, 0.0), balls.size());
  std::vector<Pair> pairs;
  for (std::uint32_t i = 0; i < balls.size(); ++i) {
    grid.near(balls[i].centre, [&](std::uint32_t j) {
      const double reach = balls[i].radius + balls[j].radius + slack_m;
      if ((balls[i].centre - balls[j].centre).squaredNorm() < reach * reach) pairs.push_back({j, i});
      return false;
    });
    grid.insert(balls[i].centre, i);
  }
  return pairs;
}

void relax(std::vector<Ball>& balls, const Request& request, const Curve& line) {
  std::vector<Place> places;
  std::vector<Bond> bonds;
  for (const Ball& ball : balls) {
    places.push_back({ball.centre, ball.radius});
    bonds.push_back(bond_of(ball, tie_at(ball.neck, ball.axis, ball.at, request, line)));
  }
  std::vector<Contact> contacts;
  int last = rounds;
  for (int round = 0; round < last; ++round) {
    // Much moves in the beginning, little later.
    if (round == 0 || round == 5 || round == 15 || round % 30 == 5) contacts = contacts_of(places, request.largest());
    const std::size_t pressed = push_apart(places, contacts);
    if (round > 30 && pressed <= places.size() / 50) last = std::min(last, round + strict_rounds);
    // In the end the outline is kept strictly.
    for (std::size_t i = 0; i < places.size(); ++i)
      hold(places[i], bonds[i], request, round + strict_rounds >= last ? 1.0 : 0.6);
    if (round % slide_every == slide_every - 1 && round < last_slide) slide(balls, places, bonds, request, line);
  }
  for (std::size_t i = 0; i < balls.size(); ++i) {
    keep_in_room(places[i].centre, places[i].radius, request);
    balls[i].centre = to_nanometre(places[i].centre);
    balls[i].neck = to_nanometre(balls[i].neck);
    balls[i].axis = to_picounit(balls[i].axis);
  }
}

}  // namespace quadrille::garland
