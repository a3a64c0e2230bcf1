// Placing widths: in rows beneath the floor.
#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "studio/paper/panel_dimensions.hpp"
#include "studio/paper/piece_groups.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

constexpr std::size_t most_rows = 6, most_clear_rows = 2, most_floor_rows = 2;
constexpr double least_clear_width = 5.0;  // on paper; smaller openings are stated in the key alone

std::string length_text(double metres, Units units) { return print_length(metres, lengths_in(units)); }

/// The places at which one measure may be stated: at any of the pieces that share it.
using Choices = std::vector<WidthLine>;

/// What the line takes of its row with its figure.
Span taken_by(const WidthLine& line, const PanelPlan& plan) {
  const Span ends{plan.placement.on_page(line.from_m, 0).x, plan.placement.on_page(line.to_m, 0).x};
  const Span label =
      label_span(ends.from, ends.to, label_width(line.label), plan.room.x, plan.room.right(), line.leftwards);
  return {std::min(ends.from, label.from) - 1.6, std::max(ends.to, label.to) + 1.6};
}

/// Rows of one kind of width, each with what is taken of it.
struct Rows {
  const PanelPlan& plan;
  std::vector<std::vector<Span>> taken;

  /// The first row in which the span is free; as many as there are where it is in none.
  std::size_t row_for(const Span& span) const {
    const auto is_free = [&](const std::vector<Span>& row) {
      return std::ranges::none_of(row, [&](const Span& s) { return s.from < span.to && span.from < s.to; });
    };
    return static_cast<std::size_t>(std::ranges::find_if(taken, is_free) - taken.begin());
  }

  /// The choice that comes into the lowest row; false where none finds one.
  bool place(const Choices& choices, WidthLine& placed) {
    std::size_t best = taken.size();
    for (const WidthLine& choice : choices) {
      const std::size_t row = row_for(taken_by(choice, plan));
      if (row >= best) continue;
      best = row, placed = choice;
    }
    if (best == taken.size()) return false;
    taken[best].push_back(taken_by(placed, plan));
    placed.row = best;
    return true;
  }
};

/// Gives the measures rows from `all.rows` on, at most `most` of them, and takes those over that found one: first those
/// that can stand in one place only, from the left.
void assign_rows(std::vector<Choices> measures, std::size_t most, const PanelPlan& plan, WidthLines& all) {
  Rows rows{plan, std::vector<std::vector<Span>>(most)};
  const std::size_t first = all.rows;
  std::stable_sort(measures.begin(), measures.end(), [](const Choices& a, const Choices& b) {
    return std::pair(a.size() > 1, a.front().from_m) < std::pair(b.size() > 1, b.front().from_m);
  });
  for (const Choices& choices : measures) {
    WidthLine line;
    if (!rows.place(choices, line)) continue;
    line.row += first;
    all.rows = std::max(all.rows, line.row + 1);
    all.lines.push_back(std::move(line));
  }
}

/// A measure of each group, which is stated once for all that are alike. `ends` gives left and right of it at a piece.
template <class Ends, class What>
std::vector<Choices> measures_of(const Scene& scene, const std::vector<PieceGroup>& groups, What what, Ends ends) {
  std::vector<Choices> measures;
  for (const PieceGroup& group : groups) {
    Choices choices;
    for (const std::size_t index : group.pieces) {
      const ScenePiece& piece = scene.pieces[index];
      const auto [left, right] = ends(piece);
      choices.push_back({left, right, {group.text + what(piece), group.ring}, 0, faces_left(scene, piece.extent)});
      if (lie_together(piece, scene.pieces[group.pieces.back()])) break;
    }
    measures.push_back(std::move(choices));
  }
  return measures;
}

}  // namespace

WidthLines width_lines(const Scene& scene, const PanelPlan& plan) {
  WidthLines all;
  const auto clear = [&](const ScenePiece& piece) {
    const double width = piece.opening ? piece.opening->between_plates_m() : 0;
    return plan.placement.length(width) < least_clear_width ? 0 : width;
  };
  std::vector<PieceGroup> openings = groups_by(scene, plan.units, false, clear);
  // Beneath the only opening there is no number is needed, and the figure goes between the ticks more often.
  if (openings.size() == 1 && openings.front().pieces.size() == 1) openings.front().ring.clear();
  assign_rows(measures_of(
                  scene, openings,
                  [](const ScenePiece& p) {
                    const bool narrower = p.opening->between_plates_m() < p.opening->width_m() - 0.005;
                    return narrower ? " clear between plates" : " clear";
                  },
                  [](const ScenePiece& p) { return std::pair(p.opening->plates_left_m, p.opening->plates_right_m); }),
              most_clear_rows, plan, all);
  const auto width = [](const ScenePiece& piece) { return piece.extent.width(); };
  assign_rows(measures_of(
                  scene, groups_by(scene, plan.units, true, width), [](const ScenePiece&) { return ""; },
                  [](const ScenePiece& p) { return std::pair(p.extent.left, p.extent.right); }),
              most_rows, plan, all);
  // Less more than the piece itself is stated in the key alone.
  constexpr double least_more_m = 0.05;
  const auto on_floor = [&](const ScenePiece& p) {
    const bool stands_out = p.plates_stand_out() && p.standing().width() - p.extent.width() >= least_more_m;
    return plan.floor_widths && stands_out ? p.standing().width() : 0;
  };
  assign_rows(
      measures_of(
          scene, groups_by(scene, plan.units, false, on_floor), [](const ScenePiece&) { return " with plates"; },
          [](const ScenePiece& p) { return std::pair(p.standing().left, p.standing().right); }),
      most_floor_rows, plan, all);
  const auto add_whole = [&](const Extent& e, const char* what) {
    all.lines.push_back({e.left, e.right, {length_text(e.width(), plan.units) + what, ""}, all.rows++, false});
  };
  // One piece as wide as all of them says so already.
  const bool is_stated = scene.pieces_extent && std::ranges::any_of(all.lines, [&](const WidthLine& line) {
                           constexpr double same_m = 0.005;
                           return std::abs(line.from_m - scene.pieces_extent->left) < same_m &&
                                  std::abs(line.to_m - scene.pieces_extent->right) < same_m;
                         });
  if (!is_stated && std::ranges::count(scene.pieces, true, &ScenePiece::size_known) > 1)
    add_whole(*scene.pieces_extent, " overall");
  if (scene.wall) add_whole(*scene.wall, " wall");
  return all;
}

}  // namespace quadrille
