#include "plugins/garland/fillers.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "plugins/garland/filling.hpp"
#include "plugins/garland/sizes.hpp"
#include "plugins/garland/surplus.hpp"

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

/// How many fillers of each size are still wanted; below 0 where there are too many.
class Stock {
 public:
  Stock(std::vector<long> wanted, std::vector<double> shares)
      : left_(std::move(wanted)), first_(left_), shares_(std::move(shares)) {}

  const std::vector<long>& left() const { return left_; }
  long& left(std::size_t size) { return left_[size]; }

  /// The line is gone along from its beginning: what is left is to be given out evenly.
  void begin() { first_ = left_; }

  /// In which order the sizes are tried at a share of the line: those of which some are due, largest first, as small ones
  /// still find room beside them; then those that the mix has as fillers, smallest first; then the others.
  std::vector<std::size_t> order(double share) const {
    std::vector<std::size_t> sizes;
    std::vector<bool> listed(left_.size());
    const auto list = [&](std::size_t size) {
      if (!listed[size]) sizes.push_back(size);
      listed[size] = true;
    };
    for (std::size_t size = 0; size < left_.size(); ++size)
      if (left_[size] > 0 &&
          static_cast<double>(first_[size] - left_[size]) < share * static_cast<double>(first_[size]))
        list(size);
    for (std::size_t size = left_.size(); size-- > 0;)
      if (shares_[size] > 0) list(size);
    for (std::size_t size = left_.size(); size-- > 0;) list(size);
    return sizes;
  }

 private:
  std::vector<long> left_, first_;
  std::vector<double> shares_;
};

/// Fillers before the line at the places where it is bare; those that still are afterwards. A size that is not wanted
/// serves too where no other covers the place.
std::vector<BarePlace> hide_line(std::vector<Ball>& balls, Filling& filling, Stock& stock,
                                 const std::vector<BarePlace>& bare, double length_m) {
  stock.begin();
  std::vector<bool> covered(bare.size());
  for (std::size_t first = 0; first < bare.size(); ++first) {
    if (covered[first]) continue;
    std::size_t last = first;
    while (last + 1 < bare.size() && !covered[last + 1] && bare[last + 1].at - bare[last].at < 0.015) ++last;
    for (const std::size_t size : stock.order(bare[first].at / length_m)) {
      const auto seat = filling.before(bare[first + std::min(last - first, std::size_t{6}) / 2], size);
      if (!seat || !filling.add(*seat, size)) continue;
      --stock.left(size);
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
bool fill_outline(std::vector<Ball>& balls, Filling& filling, Stock& stock, const Request& request, const Curve& line) {
  stock.begin();
  const std::size_t before = balls.size();
  double filled[2] = {-1e9, -1e9};
  for (const Shortfall& gap : shortfalls(balls, request, line)) {
    // The one before may serve this place too.
    double& here = filled[gap.side > 0 ? 0 : 1];
    if (gap.at - here < 0.4 * request.thickness_at(gap.at / line.length_m())) continue;
    for (const std::size_t size : stock.order(gap.at / line.length_m())) {
      const auto seat = filling.at_outline(gap, size);
      if (!seat || !filling.add(*seat, size)) continue;
      --stock.left(size);
      here = balls.back().along;
      break;
    }
  }
  return balls.size() > before;
}

/// Fillers into creases of three until all that are wanted are in; where those run out, on top of two.
void fill_creases(std::vector<Ball>& balls, Filling& filling, Stock& stock, const Request& request) {
  for (const bool of_three : {true, false}) {
    std::uint32_t since = 0;
    for (int round = 0; round < 3; ++round) {
      const auto before = static_cast<std::uint32_t>(balls.size());
      // Largest first: small ones still find room beside them.
      for (std::size_t size = 0; size < stock.left().size(); ++size) {
        // A few are not worth looking everywhere.
        if (stock.left(size) <= static_cast<long>(balls.size() / 400)) continue;
        const std::vector<Seat> seats = of_three ? filling.in_creases(size, since) : filling.on_pairs(size, since);
        for (const std::uint32_t i : even_order(seats, request.thickness_at(0.5))) {
          if (stock.left(size) <= 0) break;
          if (filling.add(seats[i], size)) --stock.left(size);
        }
      }
      // What is new brings creases of its own.
      since = before;
      if (balls.size() == before) break;
    }
  }
}

}  // namespace

std::vector<long> counts_with_fillers(const Core& core, const Request& request) {
  const std::vector<double> shares = filler_shares(request);
  const double filled = std::accumulate(shares.begin(), shares.end(), 0.0);
  std::vector<long> counts = core.left_out;
  for (const Ball& ball : core.balls) ++counts[ball.size];
  const auto laid = static_cast<double>(std::accumulate(counts.begin(), counts.end(), 0L));
  for (std::size_t size = 0; size < shares.size(); ++size)
    counts[size] += std::lround(laid * shares[size] / (1 - filled));
  return counts;
}

std::vector<Ball> add_fillers(std::vector<Ball> core, const std::vector<long>& first, const std::vector<long>& counts,
                              const Request& request, const Curve& line) {
  std::vector<Ball> balls = std::move(core);
  if (request.filler <= 0) return balls;
  std::vector<long> wanted = first;
  for (const Ball& ball : balls) --wanted[ball.size];
  Stock stock(std::move(wanted), filler_shares(request));
  Filling filling(balls, request, line);
  fill_outline(balls, filling, stock, request, line);
  std::vector<BarePlace> bare = hide_line(balls, filling, stock, bare_stations(balls, line), line.length_m());
  fill_creases(balls, filling, stock, request);
  // Fillers give others a hold, where there was none before.
  for (int round = 0; round < 3; ++round)
    if (!fill_outline(balls, filling, stock, request, line)) break;
  std::erase_if(bare, [&](const BarePlace& place) { return filling.covers_place(place); });
  hide_line(balls, filling, stock, bare, line.length_m());
  for (std::size_t size = 0; size < counts.size(); ++size) stock.left(size) += counts[size] - first[size];
  if (counts != first) fill_creases(balls, filling, stock, request);
  std::vector<long> surplus;
  for (const long left : stock.left()) surplus.push_back(-left);
  take_out(balls, surplus, request, line);
  return balls;
}

}  // namespace quadrille::garland
