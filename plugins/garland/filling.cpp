#include "plugins/garland/filling.hpp"

#include <algorithm>
#include <cmath>

#include "plugins/garland/seats.hpp"
#include "plugins/garland/sizes.hpp"

namespace quadrille::garland {
namespace {

/// How deep a filler is pressed into those it is glued to, share of its diameter.
constexpr double glued = 0.035;

/// Distance of the centres of a filler and of a ball it is glued to.
double glued_distance(double filler, double ball) { return filler + ball - 2 * glued * std::min(filler, ball); }

bool too_deep(const Vec3& a, double ra, const Vec3& b, double rb) {
  const double least = ra + rb - 2 * deepest_filler * std::min(ra, rb);
  return (a - b).squaredNorm() < least * least;
}

}  // namespace

Filling::Filling(std::vector<Ball>& balls, const Request& request, const Curve& line)
    : balls_(balls),
      request_(request),
      line_(line),
      chance_(request.seed + 0x9E3779B9u),
      grid_(1.01 * request.largest() + request.mix.back().inflated_m, 2 * balls.size()) {
  for (std::uint32_t i = 0; i < balls_.size(); ++i) grid_.insert(balls_[i].centre, i);
}

void Filling::gather(const Vec3& place, double reach, std::vector<Near>& near) const {
  near.clear();
  grid_.near(place, [&](std::uint32_t j) {
    const Ball& ball = balls_[j];
    const double most = reach + ball.radius;
    if ((ball.centre - place).squaredNorm() < most * most) near.push_back({ball.centre, ball.radius, ball.along, j});
    return false;
  });
}

bool Filling::is_allowed(const Vec3& centre, double radius, double along, double depth_share) const {
  if (request_.wall && centre.y() + radius > request_.wall_y) return false;
  if (centre.z() < radius || along < 0 || along > line_.length_m()) return false;
  const double half = request_.thickness_at(along / line_.length_m()) / 2;
  // At the thin end of a taper only what looks small there.
  if (request_.thickness != request_.thickness_end && radius > fits_taper * half) return false;
  const Vec3 out = centre - line_.point(along);
  const double off = across(line_.tangent(along)).dot(out);
  // A thin garland is deeper than it is thick: its balls lie before and behind the line.
  // Before a wall it bulges to the front, as it has no room behind.
  const double bulge = request_.halved() ? 0.3 * (half - std::min(half, request_.wall_room)) : 0;
  const double most = depth_share * (std::max(half, 0.6 * request_.largest()) + bulge) - radius;
  return std::abs(off) <= 1.02 * half - radius && out.squaredNorm() <= most * most;
}

bool Filling::is_free(const Vec3& centre, double radius) const {
  return !grid_.near(centre,
                     [&](std::uint32_t j) { return too_deep(centre, radius, balls_[j].centre, balls_[j].radius); });
}

std::vector<Seat> Filling::in_creases(std::size_t size, std::uint32_t since) {
  const double radius = radius_of(size);
  std::vector<Seat> found;
  std::vector<Near> around, older;
  for (std::uint32_t i = since; i < balls_.size(); ++i) {
    const Ball& ball = balls_[i];
    gather(ball.centre, ball.radius + 2 * radius, around);
    // Each three is looked at once: by its youngest. Other strands of a looped line are no part of a crease.
    older.clear();
    const double strand = 4 * request_.largest();
    for (const Near& near : around)
      if (near.index < i && std::abs(near.along - ball.along) < strand) older.push_back(near);
    const Near self{ball.centre, ball.radius, ball.along, i};
    for (std::size_t k = 0; k < older.size(); ++k)
      for (std::size_t m = k + 1; m < older.size(); ++m)
        if (auto seat = in_crease(self, older[k], older[m], radius, around)) found.push_back(*seat);
  }
  return found;
}

std::optional<Seat> Filling::in_crease(const Near& a, const Near& b, const Near& c, double radius,
                                       const std::vector<Near>& around) {
  const double bc = b.radius + c.radius + 2 * radius;
  if ((b.centre - c.centre).squaredNorm() >= bc * bc) return std::nullopt;
  const auto both = seats_on_three(a.centre, glued_distance(radius, a.radius), b.centre,
                                   glued_distance(radius, b.radius), c.centre, glued_distance(radius, c.radius));
  if (!both) return std::nullopt;
  const double along = (a.along + b.along + c.along) / 3;
  const Vec3 on_line = line_.point(along);
  const Vec3& centre =
      ((*both)[0] - on_line).squaredNorm() > ((*both)[1] - on_line).squaredNorm() ? (*both)[0] : (*both)[1];
  for (const Near& near : around)
    if (too_deep(centre, radius, near.centre, near.radius)) return std::nullopt;
  const Vec3 out = centre - on_line;
  const double away = out.norm();
  const double facing = away > 1e-9 ? -out.y() / away : 1;
  if (facing < -0.15 || !is_allowed(centre, radius, along, 1.06)) return std::nullopt;  // behind nobody sees it
  const double limit = request_.thickness_at(along / line_.length_m()) / 2;
  return Seat{centre, (a.centre + b.centre + c.centre) / 3, along, facing - 0.8 * away / limit + 0.5 * chance_.unit()};
}

std::vector<Seat> Filling::on_pairs(std::size_t size, std::uint32_t since) {
  const double radius = radius_of(size);
  std::vector<Seat> found;
  std::vector<Near> around;
  for (std::uint32_t i = since; i < balls_.size(); ++i) {
    const Ball& ball = balls_[i];
    gather(ball.centre, ball.radius + 2 * radius, around);
    for (const Near& near : around) {
      if (near.index >= i) continue;
      const Vec3 on_line = line_.point((near.along + ball.along) / 2);
      // Outward from the line, and to the front; before a wall rather to the sides, where there is room.
      Vec3 out = (ball.centre + near.centre) / 2 - on_line;
      out.y() -= (request_.halved() ? 0.1 : 0.5) * request_.largest();
      const auto rim = outermost_on_two(ball.centre, glued_distance(radius, ball.radius), near.centre,
                                        glued_distance(radius, near.radius), out);
      if (!rim) continue;
      const double along = nearest_along(*rim, line_, ball.along, 2 * request_.largest());
      if ((*rim).y() - radius > on_line.y() || !is_allowed(*rim, radius, along, 1.1)) continue;
      bool free = true;
      for (const Near& other : around) free = free && !too_deep(*rim, radius, other.centre, other.radius);
      if (free) found.push_back({*rim, (ball.centre + near.centre) / 2, along, chance_.unit()});
    }
  }
  return found;
}

template <class Rating>
std::optional<Seat> Filling::on_two(const std::vector<Near>& near, double radius, const Vec3& normal, double level,
                                    Rating rating) const {
  std::optional<Seat> best;
  for (std::size_t k = 0; k < near.size(); ++k)
    for (std::size_t m = k + 1; m < near.size(); ++m) {
      const Near &a = near[k], &b = near[m];
      const auto both = seats_on_two(a.centre, glued_distance(radius, a.radius), b.centre,
                                     glued_distance(radius, b.radius), normal, level);
      if (!both) continue;
      for (const Vec3& centre : *both) {
        Seat seat{centre, (a.centre + b.centre) / 2, 0, 0};
        seat.score = rating(seat);
        if (seat.score > 0 && (!best || seat.score > best->score) && is_free(centre, radius)) best = seat;
      }
    }
  return best;
}

std::optional<Seat> Filling::at_outline(const Shortfall& gap, std::size_t size) const {
  const double radius = radius_of(size), half = request_.thickness_at(gap.at / line_.length_m()) / 2;
  if (radius > half) return std::nullopt;
  const Vec3 on_line = line_.point(gap.at), side = across(line_.tangent(gap.at));
  std::vector<Near> near;
  gather(on_line + gap.side * (half - radius) * side, radius + 0.7 * half, near);
  const auto rating = [&](Seat& seat) {
    seat.along = nearest_along(seat.centre, line_, gap.at, half);
    const double aside = std::abs(seat.along - gap.at);
    if (aside > 0.7 * half || !is_allowed(seat.centre, radius, seat.along, 1.3)) return 0.0;
    // Rather in front, where it is seen, than behind.
    return 2 - aside / half - 0.5 * std::max(0.0, seat.centre.y() - on_line.y()) / half;
  };
  // What stays below the outline gives others a hold that reach it later.
  for (const double share : {1.0, 0.96, 0.9, 0.8, 0.65, 0.5})
    if (auto seat = on_two(near, radius, side, side.dot(on_line) + gap.side * (share * half - radius), rating))
      return seat;
  return std::nullopt;
}

std::optional<Seat> Filling::before(const BarePlace& bare, std::size_t size) const {
  const double radius = radius_of(size), half = request_.thickness_at(bare.at / line_.length_m()) / 2;
  const Vec3 tangent = line_.tangent(bare.at);
  std::vector<Near> near;
  gather(bare.place, 2 * radius + 0.5 * half, near);
  return on_two(near, radius, tangent, tangent.dot(bare.place), [&](Seat& seat) {
    if (seat.centre.y() >= bare.place.y()) return 0.0;
    const double x = seat.centre.x() - bare.place.x(), z = seat.centre.z() - bare.place.z();
    const double aside2 = (x * x + z * z) / (radius * radius);
    seat.along = nearest_along(seat.centre, line_, bare.at, half);
    if (aside2 > 0.8 || !is_allowed(seat.centre, radius, seat.along, 1.6)) return 0.0;
    // The nearer to the line the better it sits in the crowd.
    return 2 - aside2 - 0.3 * (bare.place.y() - seat.centre.y()) / half;
  });
}

bool Filling::covers_place(const BarePlace& bare) const {
  // Only balls near the line in depth too are looked at: those that were put before it.
  return grid_.near(bare.place, [&](std::uint32_t j) { return covers(balls_[j], bare.place); });
}

bool Filling::add(const Seat& seat, std::size_t size) {
  const double radius = radius_of(size);
  if (!is_free(seat.centre, radius)) return false;
  Ball ball;
  ball.centre = to_nanometre(seat.centre);
  ball.neck = to_nanometre(seat.glue);
  ball.radius = radius;
  ball.at = seat.along;
  locate(ball, line_);
  ball.at = ball.along;
  ball.size = size;
  ball.role = Role::filler;
  grid_.insert(ball.centre, static_cast<std::uint32_t>(balls_.size()));
  balls_.push_back(ball);
  return true;
}

}  // namespace quadrille::garland
