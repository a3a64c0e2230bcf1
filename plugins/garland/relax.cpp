#include "plugins/garland/relax.hpp"

#include <algorithm>
#include <cmath>

#include "plugins/garland/grid.hpp"
#include "plugins/garland/measure.hpp"

namespace quadrille::garland {
namespace {

constexpr double settled = 0.03;  ///< overlap at which relaxed balloons rest, share of the smaller diameter
constexpr double well = 0.09;     ///< where hardly any pair is deeper than this: relaxed
constexpr double skin_m = 0.03;   ///< how far balls may come nearer before neighbours are looked up again
constexpr int rounds = 160, slide_every = 4;

struct Place {
  Vec3 centre;
  double radius;
};

/// What holds a ball.
struct Bond {
  Vec3 neck, axis;
  Vec3 side, deep;                     ///< across the line: in the elevation, and the third direction
  double out = 0, out_deep = 0;        ///< how far its centre may be off the line in these [m]
  double nearest2 = 0, farthest2 = 0;  ///< squares of the distances that its neck allows [m²]
  double carries = 0;
};

struct Contact {
  std::uint32_t a, b;
  double rest, rest2;  ///< distance at which the two rest, and its square
  double a_gives;      ///< which part of the way a makes: the lighter one gives way
};

Bond bond_of(const Ball& ball, const Request& request, const Curve& line) {
  Bond bond;
  bond.neck = ball.neck;
  bond.axis = ball.axis;
  bond.side = across(ball.axis);
  if (bond.side.squaredNorm() < 0.5) bond.side = Vec3::UnitZ();  // the line runs in depth
  bond.deep = bond.axis.cross(bond.side);
  const double half = request.thickness_at(ball.at / line.length_m()) / 2;
  bond.out = std::max(half - ball.radius, 0.0);
  bond.out_deep = std::max(half - ball.radius, 0.85 * ball.radius);
  const double nearest = nearest_share * ball.radius, farthest = farthest_share * ball.radius;
  bond.nearest2 = nearest * nearest;
  bond.farthest2 = farthest * farthest;
  bond.carries = ball.carries;
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

/// Back to where neck, outline, wall and floor let it be.
void hold(Place& place, const Bond& bond, const Request& request) {
  Vec3 from = place.centre - bond.neck;
  const double off = from.dot(bond.side), deep = from.dot(bond.deep);
  if (bond.carries != 0)
    from += 0.5 * (bond.carries * bond.out - off) * bond.side;
  else if (std::abs(off) > bond.out)
    from += 0.7 * (std::clamp(off, -bond.out, bond.out) - off) * bond.side;
  if (std::abs(deep) > bond.out_deep)
    from += 0.5 * (std::clamp(deep, -bond.out_deep, bond.out_deep) - deep) * bond.deep;
  const double distance2 = from.squaredNorm();
  if (distance2 > bond.farthest2) from *= std::sqrt(bond.farthest2 / distance2);
  if (distance2 < bond.nearest2 && distance2 > 0) from *= std::sqrt(bond.nearest2 / distance2);
  place.centre = bond.neck + from;
  if (request.wall) place.centre.y() = std::min(place.centre.y(), request.wall_y - place.radius);
  place.centre.z() = std::max(place.centre.z(), place.radius);
}

/// Clusters whose balls all lean the same way along the line follow them.
void slide(std::vector<Ball>& balls, const std::vector<Place>& places, std::vector<Bond>& bonds, const Request& request,
           const Curve& line) {
  for (std::size_t first = 0, next = 0; first < balls.size(); first = next) {
    double lean = 0;
    for (next = first; next < balls.size() && balls[next].cluster == balls[first].cluster; ++next)
      lean += (places[next].centre - balls[next].neck).dot(balls[next].axis);
    if (first == 0 || next == balls.size()) continue;
    const double at = balls[first].at + 0.5 * lean / static_cast<double>(next - first);
    const Vec3 neck = line.point(at), axis = line.tangent(at);
    for (std::size_t i = first; i < next; ++i) {
      balls[i].at = std::clamp(at, 0.0, line.length_m());
      balls[i].neck = neck;
      balls[i].axis = axis;
      bonds[i] = bond_of(balls[i], request, line);
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
    bonds.push_back(bond_of(ball, request, line));
  }
  std::vector<Contact> contacts;
  for (int round = 0; round < rounds; ++round) {
    // Much moves in the beginning, little later.
    if (round % 20 == 0 || round == 4 || round == 10) contacts = contacts_of(places, request.largest());
    const std::size_t pressed = push_apart(places, contacts);
    if (pressed <= places.size() / 500 && round > 30) break;
    for (std::size_t i = 0; i < places.size(); ++i) hold(places[i], bonds[i], request);
    if (round % slide_every == slide_every - 1 && round < rounds / 2) slide(balls, places, bonds, request, line);
  }
  for (std::size_t i = 0; i < balls.size(); ++i) {
    balls[i].centre = to_nanometre(places[i].centre);
    balls[i].neck = to_nanometre(balls[i].neck);
    balls[i].axis = to_picounit(balls[i].axis);
  }
}

}  // namespace quadrille::garland
