#include "studio/standing/counted_lines.hpp"

#include <algorithm>
#include <numeric>
#include <optional>
#include <utility>

namespace quadrille {
namespace {

/// The line, by its place in the lines of `its` piece, that the check is about.
std::optional<std::size_t> line_of(const StandingCheck& check, const StandingCase& its,
                                   const std::vector<SecuringLine>& lines) {
  if (check.code != "line" && check.code != "anchor") return std::nullopt;
  for (std::size_t i = 0; i < its.lines().size(); ++i)
    if (check.where == name_of_line(lines, its.number_of_line(i))) return its.number_of_line(i);
  return std::nullopt;
}

}  // namespace

Secured secured(const Event& event, const Area& area, const PlacedPiece& placed, const Piece& piece,
                const std::shared_ptr<const PieceLoads>& loads) {
  Secured best{placed, {}, {}};
  PlacedPiece tried = placed;
  std::vector<LineNotCounted> gone;
  std::vector<std::size_t> numbers(placed.lines.size());  // of the lines of `tried` in `placed`
  std::iota(numbers.begin(), numbers.end(), std::size_t{0});
  for (bool first = true;; first = false) {
    StandingCase its(event, area, tried, piece, loads);
    const GustLimit limit =
        first ? limit_of(its) : limit_above(its, best.limit.gust_m_s, best.limit.governing.direction_deg);
    if (first || limit.gust_m_s > best.limit.gust_m_s) best = {tried, limit, gone};
    const auto line = line_of(limit.governing, its, tried.lines);
    if (!line) return best;
    const auto at = static_cast<std::ptrdiff_t>(*line);
    gone.push_back({numbers[*line], std::max(limit.gust_m_s, best.limit.gust_m_s)});
    tried.lines.erase(tried.lines.begin() + at);
    numbers.erase(numbers.begin() + at);
  }
}

}  // namespace quadrille
