#include "studio/sheets/safety_front.hpp"

#include <algorithm>
#include <cstddef>

namespace quadrille {
namespace {

bool is_same_place(const Point2& a, const Point2& b) {
  constexpr double same_mm = 0.4;
  return std::hypot(a.x - b.x, a.y - b.y) < same_mm;
}

}  // namespace

std::vector<FrontLine> seen_from_front(const std::vector<FrontLine>& lines) {
  std::vector<FrontLine> seen;
  std::vector<std::vector<const FrontLine*>> alike;  // of each that is seen, all that fall on it
  for (const FrontLine& line : lines) {
    const auto same = std::ranges::find_if(seen, [&](const FrontLine& other) {
      return is_same_place(other.from, line.from) && is_same_place(other.to, line.to);
    });
    const auto at = static_cast<std::size_t>(same - seen.begin());
    if (same == seen.end()) seen.push_back(line), alike.emplace_back();
    alike[at].push_back(&line);
  }
  for (std::size_t i = 0; i < seen.size(); ++i) {
    if (alike[i].size() < 2) continue;
    seen[i].label.clear();
    for (const FrontLine* line : alike[i]) {
      seen[i].label += (seen[i].label.empty() ? "" : ", ") + line->label;
      if (is_out_of_plane(line->run)) seen[i].label += line->run.y() < 0 ? " front" : " back";
    }
  }
  std::ranges::stable_sort(seen, {}, [](const FrontLine& line) { return line.to.x; });
  return seen;
}

}  // namespace quadrille
