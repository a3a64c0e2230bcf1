// Arrows on the clusters along the runs of one colour.
#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>

#include "sdk/cluster.hpp"
#include "studio/build_sheet/build_picture.hpp"
#include "studio/drawing/room.hpp"
#include "studio/making/hand.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

constexpr double shaft = 0.5, halo = 1.1, head_length = 2.4, head_half = 0.95;  // mm
constexpr double shortest = 6;                                                  // mm: head and shaft are seen

struct Arrow {
  Point2 tail, tip;
  double length() const { return std::hypot(tip.x - tail.x, tip.y - tail.y); }
  Point2 along(double mm) const {
    const double share = mm / length();
    return {tail.x + (tip.x - tail.x) * share, tail.y + (tip.y - tail.y) * share};
  }
};

/// Balloons by cluster number, with the angle at which each stands about its axis, from the front.
struct RingBalloon {
  const Balloon* balloon = nullptr;
  double angle = 0;
};
using Rings = std::map<std::uint32_t, std::vector<RingBalloon>>;

Rings rings_of(const Piece& piece) {
  std::map<std::uint32_t, const Cluster*> clusters;
  for (const Cluster& cluster : piece.clusters) clusters.emplace(cluster.number, &cluster);
  Rings rings;
  for (const Balloon& balloon : piece.balloons) {
    const auto found = clusters.find(balloon.cluster);
    if (found == clusters.end()) continue;
    const Vec3 out = balloon.centre - found->second->centre, &axis = found->second->axis;
    rings[balloon.cluster].push_back(
        {&balloon, std::atan2(out.dot(direction_about(axis, pi / 2)), out.dot(direction_about(axis, 0)))});
  }
  return rings;
}

bool is_in_front(const RingBalloon& balloon) { return std::cos(balloon.angle) > 0.3; }

/// From `first` on, in front and of its colour, balloons to which the runs from `run` on lead, five at most.
std::vector<const Balloon*> chain_from(const Rings& rings, const std::vector<FrontRun>& runs, std::size_t run,
                                       const RingBalloon& first) {
  constexpr std::size_t most = 5;
  std::vector<const Balloon*> chain{first.balloon};
  RingBalloon last = first;
  for (std::size_t i = run; i < runs.size() && chain.size() < most && runs[i].steps == runs[run].steps; ++i) {
    const std::vector<RingBalloon>& next = rings.at(runs[i].to);
    const double wanted = last.angle + runs[i].steps * pi / static_cast<double>(next.size());
    const auto found = std::ranges::find_if(next, [&](const RingBalloon& one) {
      return std::cos(one.angle - wanted) > 0.99 && one.balloon->slot == first.balloon->slot && is_in_front(one);
    });
    if (found == next.end()) break;
    last = *found;
    chain.push_back(last.balloon);
  }
  return chain;
}

/// Boxes of the letters on the balloons among the marks.
std::vector<Rect> letters_among(const Marks& marks) {
  std::vector<Rect> letters;
  for (const Mark& mark : marks)
    if (const auto* balloon = std::get_if<BalloonMark>(&mark.shape); balloon != nullptr && balloon->letter != 0) {
      const double half = balloon->radius * balloon->letter_share / 2;
      letters.push_back({balloon->centre.x - half, balloon->centre.y - half, 2 * half, 2 * half});
    }
  return letters;
}

bool is_clear(const Arrow& arrow, const std::vector<Rect>& letters, const std::vector<Arrow>& others) {
  constexpr double step = 0.4;
  const double length = arrow.length();
  for (double at = 0; at <= length; at += step) {
    const Point2 p = arrow.along(at);
    const double half = (at > length - head_length ? head_half : halo / 2) + 0.2;
    if (meets_any({p.x - half, p.y - half, 2 * half, 2 * half}, letters)) return false;
    for (const Arrow& other : others)
      for (double there = 0; there <= other.length(); there += step)
        if (const Point2 q = other.along(there); std::hypot(p.x - q.x, p.y - q.y) < 4) return false;
  }
  return true;
}

/// Beside the chain's middles in one of its creases, pointing up; nothing where it would run over a letter or another.
std::optional<Arrow> arrow_along(const std::vector<const Balloon*>& chain, const BuildPicture& picture,
                                 const std::vector<Rect>& letters, const std::vector<Arrow>& others) {
  const auto at = [&](const Balloon& b) { return picture.placement.on_page(b.centre.x(), b.centre.z()); };
  Point2 from = at(*chain.front()), to = at(*chain.back());
  if (from.y < to.y - 0.1) std::swap(from, to);
  const double length = std::hypot(to.x - from.x, to.y - from.y);
  if (length < shortest) return std::nullopt;
  const double radius = picture.placement.length(chain.front()->diameter_m / 2);
  const Point2 across{-(to.y - from.y) / length, (to.x - from.x) / length};
  for (const double share : std::array{0.6, -0.6, 0.5, -0.5, 0.7, -0.7}) {
    const double x = across.x * share * radius, y = across.y * share * radius;
    const Arrow arrow{{from.x + x, from.y + y}, {to.x + x, to.y + y}};
    if (is_clear(arrow, letters, others)) return arrow;
  }
  return std::nullopt;
}

/// White about a dark line, so that it is seen on any colour.
void add_arrow(Marks& marks, const Arrow& arrow) {
  const double size = arrow.length(), dx = (arrow.tip.x - arrow.tail.x) / size,
               dy = (arrow.tip.y - arrow.tail.y) / size;
  const Point2 neck = arrow.along(size - head_length);
  const std::vector<Point2> head{arrow.tip,
                                 {neck.x - dy * head_half, neck.y + dx * head_half},
                                 {neck.x + dy * head_half, neck.y - dx * head_half}};
  Mark line = stroked_mark(Part::drawing, line_path(arrow.tail, neck), {ink_paper, halo, {}, false});
  std::get<PathMark>(line.shape).stroke.push_back({ink_text, shaft, {}, false});
  Mark point = shape_mark(Part::drawing, polygon_path(head), ink_text, {ink_paper, 0.3, {}, false});
  marks.push_back(std::move(line));
  marks.push_back(std::move(point));
}

/// Where arrows are wanted: in the middle of each stretch in which colours run on to one side, twelve at most; of a long
/// stretch a place near either end.
struct RunStretch {
  std::size_t from = 0, to = 0, middle = 0;  ///< runs
};
std::vector<RunStretch> run_stretches(const std::vector<FrontRun>& runs) {
  constexpr std::size_t most = 12, is_long = 12;
  std::vector<RunStretch> stretches;
  for (std::size_t from = 0; from < runs.size() && stretches.size() < most;) {
    std::size_t to = from;
    while (to + 1 < runs.size() && runs[to + 1].steps == runs[from].steps) ++to;
    const std::size_t count = to - from + 1;
    if (runs[from].steps != 0 && count >= is_long) {
      stretches.push_back({from, to, from + count / 5});
      stretches.push_back({from, to, to - count / 5});
    } else if (runs[from].steps != 0) {
      stretches.push_back({from, to, from + count / 2});
    }
    from = to + 1;
  }
  return stretches;
}

std::optional<Arrow> arrow_in(const RunStretch& stretch, const Rings& rings, const std::vector<FrontRun>& runs,
                              const BuildPicture& picture, const std::vector<Rect>& letters,
                              const std::vector<Arrow>& others) {
  // Nearest to the stretch's middle first; those over more clusters tell more.
  struct Candidate {
    std::vector<const Balloon*> chain;
    double away = 0;
  };
  std::vector<Candidate> candidates;
  for (std::size_t run = stretch.from; run <= stretch.to; ++run)
    for (const RingBalloon& first : rings.at(runs[run].from)) {
      if (!is_in_front(first)) continue;
      std::vector<const Balloon*> chain = chain_from(rings, runs, run, first);
      if (chain.size() < 2) continue;
      const double middle = static_cast<double>(run) + static_cast<double>(chain.size() - 1) / 2;
      const double away =
          std::abs(middle - static_cast<double>(stretch.middle)) - 2.0 * static_cast<double>(chain.size());
      candidates.push_back({std::move(chain), away});
    }
  std::ranges::stable_sort(candidates, {}, &Candidate::away);
  for (const Candidate& candidate : candidates)
    if (const auto arrow = arrow_along(candidate.chain, picture, letters, others)) return arrow;
  return std::nullopt;
}

}  // namespace

void add_run_arrows(Marks& marks, const BuildSubject& subject, const BuildPicture& picture, std::vector<Rect>& taken) {
  if (side_matters(subject.chart) != SideMatters::each) return;
  const std::vector<FrontRun> runs = front_runs(subject.piece(), subject.chart);
  const Rings rings = rings_of(subject.piece());
  const std::vector<Rect> letters = letters_among(marks);
  std::vector<Arrow> arrows;
  for (const RunStretch& stretch : run_stretches(runs))
    if (const auto arrow = arrow_in(stretch, rings, runs, picture, letters, arrows)) arrows.push_back(*arrow);
  if (arrows.empty()) return;
  for (const Arrow& arrow : arrows) {
    add_arrow(marks, arrow);
    taken.push_back({std::min(arrow.tail.x, arrow.tip.x), std::min(arrow.tail.y, arrow.tip.y),
                     std::abs(arrow.tip.x - arrow.tail.x), std::abs(arrow.tip.y - arrow.tail.y)});
  }
  const double lowest = picture.room.bottom() - 4.2;
  const double y = picture.shows_floor ? std::min(picture.placement.origin.y + 3, lowest) : lowest;
  const Rect told{picture.room.x + 4, y, picture.room.width - 6, 3.8};
  taken.push_back(told);
  marks.push_back(text_mark(Part::dimension, told, "Arrows: how one colour runs on from cluster to cluster",
                            type(pt_caption, ink_quiet)));
}

}  // namespace quadrille
