#include "plugins/garland/fillers.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "plugins/garland/filling.hpp"
#include "plugins/garland/sizes.hpp"

namespace quadrille::garland {
namespace {

/// In which order to take seats: the best of every stretch of the line, then the second best of every stretch, and so on.
std::vector<std::uint32_t> even_order(const std::vector<Seat>& seats, double stretch_m) {
  std::vector<long> stretch;
  for (const Seat& seat : seats) stretch.push_back(static_cast<long>(seat.along / stretch_m));
  std::vector<std::uint32_t> order(seats.size());
  std::iota(order.begin(), order.end(), 0u);
  std::ranges::stable_sort(order, [&](std::uint32_t a, std::uint32_t b) {
    return stretch[a] != stretch[b] ? stretch[a] < stretch[b] : seats[a].score > seats[b].score;
  });
  std::vector<std::uint32_t> rank(seats.size());
  for (std::size_t i = 1; i < order.size(); ++i)
    rank[order[i]] = stretch[order[i]] == stretch[order[i - 1]] ? rank[order[i - 1]] + 1 : 0;
  std::ranges::stable_sort(order, {}, [&](std::uint32_t i) { return rank[i]; });
  return order;
}

/// The sizes in the order in which they are tried: those that the mix wants as fillers, smallest first, then the others.
std::vector<std::size_t> smallest_first(const std::vector<double>& shares) {
  std::vector<std::size_t> sizes;
  for (std::size_t size = shares.size(); size-- > 0;)
    if (shares[size] > 0) sizes.push_back(size);
  for (std::size_t size = shares.size(); size-- > 0;)
    if (shares[size] <= 0) sizes.push_back(size);
  return sizes;
}

/// Fillers before the line at the places where it is bare; those that still are afterwards. A size that the mix has no
/// filler for serves too where no other covers the place; a few of them do not change its shares.
std::vector<BarePlace> hide_line(std::vector<Ball>& balls, Filling& filling, std::vector<long>& wanted,
                                 const std::vector<std::size_t>& sizes, const std::vector<BarePlace>& bare) {
  std::vector<bool> covered(bare.size());
  for (std::size_t first = 0; first < bare.size(); ++first) {
    if (covered[first]) continue;
    std::size_t last = first;
    while (last + 1 < bare.size() && !covered[last + 1] && bare[last + 1].at - bare[last].at < 0.015) ++last;
    for (const std::size_t size : sizes) {
      const auto seat = filling.before(bare[first + std::min(last - first, std::size_t{6}) / 2], size);
      if (!seat || !filling.add(*seat, size)) continue;
      --wanted[size];
      for (std::size_t i = first; i < bare.size() && bare[i].at - bare[first].at < 4 * balls.back().radius; ++i)
        if (covers(balls.back(), bare[i].place)) covered[i] = true;
      if (covered[first]) break;
    }
  }
  std::vector<BarePlace> left;
  for (std::size_t i = 0; i < bare.size(); ++i)
    if (!covered[i]) left.push_back(bare[i]);
  return left;
}

/// Where the garland falls short of its thickness on one side, fillers there that carry the outline; false where none
/// could be added.
bool fill_outline(std::vector<Ball>& balls, Filling& filling, std::vector<long>& wanted,
                  const std::vector<std::size_t>& sizes, const Request& request, const Curve& line) {
  const std::size_t before = balls.size();
  double filled[2] = {-1e9, -1e9};
  for (const Shortfall& gap : shortfalls(balls, request, line)) {
    // The one before may serve this place too.
    double& here = filled[gap.side > 0 ? 0 : 1];
    if (gap.at - here < 0.4 * request.thickness_at(gap.at / line.length_m())) continue;
    for (const std::size_t size : sizes) {
      const auto seat = filling.at_outline(gap, size);
      if (!seat || !filling.add(*seat, size)) continue;
      --wanted[size];
      here = balls.back().along;
      break;
    }
  }
  return balls.size() > before;
}

/// Fillers into creases of three until all that are wanted are in; where those run out, on top of two.
void fill_creases(std::vector<Ball>& balls, Filling& filling, std::vector<long>& wanted, const Request& request) {
  for (const bool of_three : {true, false}) {
    std::uint32_t since = 0;
    for (int round = 0; round < 3; ++round) {
      const auto before = static_cast<std::uint32_t>(balls.size());
      // Largest first: small ones still find room beside them.
      for (std::size_t size = 0; size < wanted.size(); ++size) {
        // A few are not worth looking everywhere.
        if (wanted[size] <= static_cast<long>(balls.size() / 200)) continue;
        const std::vector<Seat> seats = of_three ? filling.in_creases(size, since) : filling.on_pairs(size, since);
        for (const std::uint32_t i : even_order(seats, request.thickness_at(0.5))) {
          if (wanted[size] <= 0) break;
          if (filling.add(seats[i], size)) --wanted[size];
        }
      }
      // What is new brings creases of its own.
      since = before;
      if (balls.size() == before) break;
    }
  }
}

}  // namespace

std::vector<Ball> add_fillers(Core core, const Request& request, const Curve& line) {
  std::vector<Ball> balls = std::move(core.balls);
  const std::vector<double> shares = filler_shares(request);
  double filled = 0;
  for (const double share : shares) filled += share;
  if (filled <= 0) return balls;
  auto laid = static_cast<double>(balls.size());
  for (const long left_out : core.left_out) laid += static_cast<double>(left_out);
  std::vector<long> wanted;
  for (std::size_t size = 0; size < shares.size(); ++size)
    wanted.push_back(std::lround(laid * shares[size] / (1 - filled)) + core.left_out[size]);
  Filling filling(balls, request, line);
  const std::vector<std::size_t> sizes = smallest_first(shares);
  fill_outline(balls, filling, wanted, sizes, request, line);
  std::vector<BarePlace> bare = hide_line(balls, filling, wanted, sizes, bare_stations(balls, line));
  fill_creases(balls, filling, wanted, request);
  // Fillers give others a hold, where there was none before.
  for (int round = 0; round < 3; ++round)
    if (!fill_outline(balls, filling, wanted, sizes, request, line)) break;
  std::erase_if(bare, [&](const BarePlace& place) { return filling.covers_place(place); });
  hide_line(balls, filling, wanted, sizes, bare);
  return balls;
}

}  // namespace quadrille::garland
