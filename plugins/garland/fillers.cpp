#include "plugins/garland/fillers.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "plugins/garland/core.hpp"
#include "plugins/garland/grid.hpp"
#include "plugins/garland/measure.hpp"
#include "sdk/random.hpp"

namespace quadrille::garland {
namespace {

constexpr double glued = 0.04;  ///< how deep a filler is pressed into the three it is glued to, share of its diameter

/// The point at the given distances from three others, of the two the one farther from `from`; nothing where the
/// distances do not reach. Source: trilateration, any book of geometry.
std::optional<Vec3> seat_on(const Vec3& a, double ra, const Vec3& b, double rb, const Vec3& c, double rc,
                            const Vec3& from) {
  const double ab = (b - a).norm();
  const Vec3 x = (b - a) / ab;
  const double along = x.dot(c - a);
  const Vec3 off = (c - a) - along * x;
  const double across = off.norm();
  if (ab < 1e-9 || across < 1e-9) return std::nullopt;
  const Vec3 y = off / across, z = x.cross(y);
  const double u = (ra * ra - rb * rb + ab * ab) / (2 * ab);
  const double v = (ra * ra - rc * rc + along * along + across * across - 2 * along * u) / (2 * across);
  const double w2 = ra * ra - u * u - v * v;
  if (w2 < 0) return std::nullopt;
  const double w = std::sqrt(w2);
  const Vec3 one = a + u * x + v * y + w * z, other = a + u * x + v * y - w * z;
  return (one - from).squaredNorm() > (other - from).squaredNorm() ? one : other;
}

struct Seat {
  Vec3 centre;
  Vec3 glue;         ///< where the neck goes: between the three
  double at = 0;     ///< arc length on the line
  double score = 0;  ///< the higher the sooner
};

class Filling {
 public:
  Filling(std::vector<Ball>& balls, const Request& request, const Curve& line)
      : balls_(balls),
        request_(request),
        line_(line),
        chance_(request.seed + 0x9E3779B9u),
        grid_(request.largest() * 1.01) {
    for (std::uint32_t i = 0; i < balls_.size(); ++i) grid_.insert(balls_[i].centre, i);
  }

  /// Seats for a filler of this size among the balls from index `since` on and their neighbours, best first.
  std::vector<Seat> seats(std::size_t size, std::uint32_t since) {
    const double radius = request_.mix[size].inflated_m / 2;
    std::vector<Seat> found;
    std::vector<std::uint32_t> around;
    for (std::uint32_t i = since; i < balls_.size(); ++i) {
      around.clear();
      grid_.near(balls_[i].centre, [&](std::uint32_t j) {
        // Each three is looked at once: by its youngest.
        const double reach = balls_[i].radius + balls_[j].radius + 2 * radius * (1 - glued);
        if (j < i && (balls_[i].centre - balls_[j].centre).squaredNorm() < reach * reach) around.push_back(j);
      });
      for (std::size_t k = 0; k < around.size(); ++k)
        for (std::size_t m = k + 1; m < around.size(); ++m)
          if (auto seat = seat_of(balls_[i], balls_[around[k]], balls_[around[m]], radius)) found.push_back(*seat);
    }
    return found;
  }

  /// Where a filler comes to rest when it is pushed in from the front over a place of the line; it must touch two others.
  std::optional<Seat> pushed_in(const Vec3& place, double at, std::size_t size) const {
    const double radius = request_.mix[size].inflated_m / 2;
    double y = 1e300;
    Vec3 glue = place;
    grid_.near(place, [&](std::uint32_t j) {
      const Ball& ball = balls_[j];
      const double reach = ball.radius + radius - 2 * glued * std::min(ball.radius, radius);
      const double x = ball.centre.x() - place.x(), z = ball.centre.z() - place.z(),
                   left = reach * reach - x * x - z * z;
      if (left <= 0) return;
      if (const double stop = ball.centre.y() - std::sqrt(left); stop < y) {
        y = stop;
        glue = ball.centre;
      }
    });
    if (y > place.y()) return std::nullopt;  // nothing stops it before the line
    const Vec3 centre(place.x(), y, place.z());
    int touched = 0;
    grid_.near(centre, [&](std::uint32_t j) {
      const double reach = balls_[j].radius + radius;
      touched += (balls_[j].centre - centre).squaredNorm() < reach * reach;
    });
    if (touched < 2 || y > place.y() || !is_allowed(centre, radius, at) || !is_free(centre, radius))
      return std::nullopt;
    return Seat{centre, glue, at, 0};
  }

  bool add(const Seat& seat, std::size_t size) {
    const double radius = request_.mix[size].inflated_m / 2;
    if (!is_free(seat.centre, radius)) return false;
    Ball ball;
    ball.centre = to_nanometre(seat.centre);
    ball.neck = to_nanometre(seat.glue);
    ball.radius = radius;
    ball.at = seat.at;
    ball.size = size;
    ball.role = Role::filler;
    grid_.insert(ball.centre, static_cast<std::uint32_t>(balls_.size()));
    balls_.push_back(ball);
    return true;
  }

 private:
  std::optional<Seat> seat_of(const Ball& a, const Ball& b, const Ball& c, double radius) {
    const double at = (a.at + b.at + c.at) / 3;
    const Vec3 on_line = line_.point(at);
    const double inward = 2 * glued * radius;
    const auto centre = seat_on(a.centre, a.radius + radius - inward, b.centre, b.radius + radius - inward, c.centre,
                                c.radius + radius - inward, on_line);
    if (!centre || !is_allowed(*centre, radius, at) || !is_free(*centre, radius)) return std::nullopt;
    const Vec3 out = *centre - on_line;
    const double away = out.norm();
    const double facing = away > 1e-9 ? -out.y() / away : 1;
    if (facing < -0.15) return std::nullopt;  // behind: nobody sees it
    const double limit = request_.thickness_at(at / line_.length_m()) / 2;
    const Vec3 glue = (a.centre + b.centre + c.centre) / 3;
    return Seat{*centre, glue, at, facing - 0.8 * away / limit + 0.5 * chance_.unit()};
  }

  bool is_allowed(const Vec3& centre, double radius, double at) const {
    if (request_.wall && centre.y() + radius > request_.wall_y) return false;
    if (centre.z() < radius || at < 0 || at > line_.length_m()) return false;
    const Vec3 out = centre - line_.point(at);
    return out.norm() + radius <= 1.06 * request_.thickness_at(at / line_.length_m()) / 2;
  }

  bool is_free(const Vec3& centre, double radius) const {
    bool free = true;
    grid_.near(centre, [&](std::uint32_t j) {
      const double least = balls_[j].radius + radius - 2 * deepest_filler * std::min(balls_[j].radius, radius);
      free = free && (centre - balls_[j].centre).squaredNorm() >= least * least;
    });
    return free;
  }

  std::vector<Ball>& balls_;
  const Request& request_;
  const Curve& line_;
  Random chance_;
  Grid grid_;
};

/// Evenly along the line: the best seat of every stretch, then the second best of every stretch, and so on.
void order_evenly(std::vector<Seat>& seats, double stretch_m) {
  const auto stretch = [stretch_m](const Seat& seat) { return static_cast<long>(std::floor(seat.at / stretch_m)); };
  std::ranges::stable_sort(seats, [&](const Seat& a, const Seat& b) {
    return stretch(a) != stretch(b) ? stretch(a) < stretch(b) : a.score > b.score;
  });
  std::vector<std::pair<std::size_t, std::size_t>> ranks;
  std::size_t rank = 0;
  for (std::size_t i = 0; i < seats.size(); ++i) {
    rank = i > 0 && stretch(seats[i]) == stretch(seats[i - 1]) ? rank + 1 : 0;
    ranks.emplace_back(rank, i);
  }
  std::ranges::stable_sort(ranks, {}, &std::pair<std::size_t, std::size_t>::first);
  std::vector<Seat> ordered;
  ordered.reserve(seats.size());
  for (const auto& [unused, index] : ranks) ordered.push_back(seats[index]);
  seats = std::move(ordered);
}

/// Before anything else, fillers where the line shows: each time the seat that covers most of it. A size that the mix has
/// no filler for serves too where no other covers the place; a few of them do not change its shares.
void hide_line(std::vector<Ball>& balls, Filling& filling, std::vector<long>& wanted, const Request& request,
               const Curve& line) {
  for (std::size_t size = request.mix.size(); size-- > 0;)
    for (int round = 0; round < 5; ++round) {
      const std::vector<BarePlace> bare = bare_stations(balls, line);
      if (bare.empty()) return;
      const double radius = request.mix[size].inflated_m / 2;
      Grid grid(2 * radius);
      for (std::uint32_t i = 0; i < bare.size(); ++i) grid.insert(Vec3(bare[i].place.x(), 0, bare[i].place.z()), i);
      std::vector<Seat> covering;
      for (Seat& seat : filling.seats(size, 0)) {
        seat.score = 0;
        grid.near(Vec3(seat.centre.x(), 0, seat.centre.z()), [&](std::uint32_t i) {
          const double x = bare[i].place.x() - seat.centre.x(), z = bare[i].place.z() - seat.centre.z();
          seat.score += x * x + z * z < 0.98 * radius * radius && seat.centre.y() < bare[i].place.y() ? 1 : 0;
        });
        if (seat.score > 0) covering.push_back(seat);
      }
      std::ranges::stable_sort(covering, [](const Seat& a, const Seat& b) { return a.score > b.score; });
      // One beside another would cover the same place twice: the next round sees what is left.
      Grid taken(2 * radius);
      std::uint32_t added = 0;
      for (const Seat& seat : covering) {
        bool near = false;
        taken.near(seat.centre, [&](std::uint32_t) { near = true; });
        if (near || !filling.add(seat, size)) continue;
        taken.insert(seat.centre, added++);
        --wanted[size];
      }
      if (added == 0) break;
    }
  // What no crease covers is covered from the front.
  for (const BarePlace& bare : bare_stations(balls, line))
    for (std::size_t size = request.mix.size(); size-- > 0;)
      if (const auto seat = filling.pushed_in(bare.place, bare.at, size); seat && filling.add(*seat, size)) {
        --wanted[size];
        break;
      }
}

/// Where the garland falls short of its thickness on one side, one filler there that carries the outline.
void fill_outline(std::vector<Ball>& balls, Filling& filling, std::vector<long>& wanted, const Request& request,
                  const Curve& line) {
  for (std::size_t size = 0; size < request.mix.size(); ++size) {
    std::vector<Shortfall> missing = shortfalls(balls, request, line);
    if (missing.empty()) return;
    std::vector<Seat> seats = filling.seats(size, 0);
    std::ranges::stable_sort(seats, {}, &Seat::at);
    const double radius = request.mix[size].inflated_m / 2;
    for (const Shortfall& gap : missing) {
      const double half = request.thickness_at(gap.at / line.length_m()) / 2;
      const Seat* best = nullptr;
      double nearest = 0.09 * half;
      auto from = std::ranges::lower_bound(seats, gap.at - 0.6 * half, {}, &Seat::at);
      for (; from != seats.end() && from->at < gap.at + 0.6 * half; ++from) {
        const double outside = gap.side * side_of_line(from->centre, line, from->at) + radius;
        if (std::abs(outside - half) >= nearest) continue;
        nearest = std::abs(outside - half);
        best = &*from;
      }
      if (best != nullptr && filling.add(*best, size)) --wanted[size];
    }
  }
}

}  // namespace

void add_fillers(std::vector<Ball>& balls, const Request& request, const Curve& line) {
  const std::vector<double> shares = filler_shares(request);
  double filled = 0;
  for (const double share : shares) filled += share;
  if (filled <= 0) return;
  const auto core = static_cast<double>(balls.size());
  std::vector<long> wanted;
  for (const double share : shares) wanted.push_back(std::lround(core * share / (1 - filled)));
  Filling filling(balls, request, line);
  fill_outline(balls, filling, wanted, request, line);
  hide_line(balls, filling, wanted, request, line);
  std::uint32_t since = 0;
  for (int round = 0; round < 4; ++round) {
    const auto before = static_cast<std::uint32_t>(balls.size());
    // Largest first: small ones still find room beside them.
    for (std::size_t size = 0; size < shares.size(); ++size) {
      if (wanted[size] <= 0) continue;
      std::vector<Seat> seats = filling.seats(size, since);
      order_evenly(seats, request.thickness_at(0.5));
      for (const Seat& seat : seats) {
        if (wanted[size] <= 0) break;
        if (filling.add(seat, size)) --wanted[size];
      }
    }
    // What is new brings creases of its own.
    since = before;
    if (balls.size() == before) break;
  }
}

}  // namespace quadrille::garland
