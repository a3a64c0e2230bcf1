// A garland by stretches: each drawn straight, balloon by balloon, and listed.
#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>
#include <utility>

#include "studio/build_sheet/build_chart.hpp"
#include "studio/build_sheet/build_layout.hpp"
#include "studio/build_sheet/build_picture.hpp"
#include "studio/build_sheet/build_rows.hpp"
#include "studio/build_sheet/straight_pile.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

using Piles = std::vector<StraightPile>;

/// Of all piles of a garland: the largest scale at which each goes into the narrowest column with room for names beside
/// it, and is no higher than `highest` [mm].
double scale_of(const Piles& piles, double highest) {
  constexpr double names_mm = 18;  // mm
  double wide_m = 0.02, high_m = 0.02;
  for (const StraightPile& pile : piles) {
    double left = pile.from_m, right = pile.to_m, top = 0, bottom = 0;
    for (const StraightBalloon& one : pile.balloons) {
      left = std::min(left, one.along_m - one.radius_m), right = std::max(right, one.along_m + one.radius_m);
      top = std::max(top, one.off_m + one.radius_m), bottom = std::min(bottom, one.off_m - one.radius_m);
    }
    wide_m = std::max(wide_m, right - left), high_m = std::max(high_m, top - bottom);
  }
  double scale = 6;
  for (const double wanted : {6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 25.0, 30.0, 40.0, 50.0}) {
    scale = wanted;
    if (wide_m * 1000 / scale <= build_column - names_mm && high_m * 1000 / scale <= highest) break;
  }
  return scale;
}

/// "16 in D*": nominal size, colour, and a star for an accent.
std::string describe(const Balloon& balloon) {
  return print_nominal(balloon.nominal_in) + " " + letter_of(balloon.slot) + (balloon.role == Role::accent ? "*" : "");
}

/// With blanks at which no line ends.
std::string unbroken(std::string text) {
  for (std::size_t at = text.find(' '); at != std::string::npos; at = text.find(' ', at)) text.replace(at, 1, "\u00a0");
  return text;
}

/// A line of a list: what stands at its left, and what of it.
struct ListLine {
  std::string of, what;
};

/// "#5", "16 in B, 11 in B, 11 in C; behind 11 in B".
ListLine cluster_line(const BuildSubject& subject, const StraightPile& pile, const std::string& name) {
  std::string seen, hidden;
  for (std::size_t i = 0; i < subject.piece().balloons.size(); ++i) {
    const auto here = std::ranges::find_if(
        pile.balloons, [&](const StraightBalloon& one) { return one.balloon == i && one.name == name; });
    if (here == pile.balloons.end()) continue;
    std::string& text = here->seen ? seen : hidden;
    text += (text.empty() ? "" : ", ") + unbroken(describe(subject.piece().balloons[i]));
  }
  if (!hidden.empty()) seen += (seen.empty() ? "behind " : "; behind ") + hidden;
  return {name, seen};
}

/// "f1, f2, f8", and of three or more on end "f3–f5"; the numbers rise.
std::string print_names_of(char initial, const std::vector<int>& numbers) {
  std::string text;
  for (std::size_t from = 0; from < numbers.size();) {
    std::size_t to = from;
    while (to + 1 < numbers.size() && numbers[to + 1] == numbers[to] + 1) ++to;
    if (to - from == 1) to = from;
    text += (text.empty() ? "" : ", ") + std::string(1, initial) + std::to_string(numbers[from]);
    if (to > from) text += "–" + std::string(1, initial) + std::to_string(numbers[to]);
    from = to + 1;
  }
  return text;
}

/// "5 in B", "f1, f2, f8 front; f3 above": fillers alike in one line, the smaller ones first.
std::vector<ListLine> filler_lines(const BuildSubject& subject, const StraightPile& pile) {
  std::map<std::tuple<char, double, std::uint32_t, std::string>, std::map<std::string, std::vector<int>>> alike;
  for (const StraightBalloon& one : pile.balloons) {
    const Balloon& balloon = subject.piece().balloons[one.balloon];
    if (balloon.cluster != 0) continue;
    alike[{one.name.front(), balloon.nominal_in, balloon.slot, describe(balloon)}][one.side].push_back(
        std::stoi(one.name.substr(1)));
  }
  std::vector<ListLine> lines;
  for (auto& [key, sides] : alike) {
    std::vector<std::pair<std::vector<int>, std::string>> in_order;
    for (auto& [side, numbers] : sides) {
      std::ranges::sort(numbers);
      in_order.emplace_back(std::move(numbers), side);
    }
    std::ranges::sort(in_order);
    ListLine line{std::get<3>(key), ""};
    for (const auto& [numbers, side] : in_order)
      line.what += (line.what.empty() ? "" : "; ") + print_names_of(std::get<0>(key), numbers) + unbroken(" " + side);
    lines.push_back(std::move(line));
  }
  return lines;
}

Row list_row(const ListLine& line, double width) {
  constexpr double of_width = 13, closer = 0.3;  // mm
  Row row = cells_row({{line.of, of_width, Across::left, Face::bold}, {line.what}}, width);
  row.height -= closer;
  return row;
}

/// Clusters, then fillers, as one list; in a wide column the one beside the other. As many rows at any width.
std::vector<Row> list_rows(const BuildSubject& subject, const MakingStretch& stretch, const StraightPile& pile,
                           double width) {
  constexpr double highest = 60, gap = 6, narrowest = 58;  // mm
  std::vector<ListLine> clusters;
  for (const std::size_t index : stretch.clusters)
    clusters.push_back(cluster_line(subject, pile, cluster_name(subject, subject.chart.clusters[index].number)));
  const auto rows_of = [](const std::vector<ListLine>& lines, double wide) {
    std::vector<Row> rows;
    for (const ListLine& line : lines) rows.push_back(list_row(line, wide));
    return rows;
  };
  const auto height_of = [](const std::vector<Row>& rows) {
    double height = 0;
    for (const Row& row : rows) height += row.height;
    return height;
  };
  const std::vector<ListLine> fillers = filler_lines(subject, pile);
  std::vector<Row> first = rows_of(clusters, width), second = rows_of(fillers, width);
  const bool beside = width >= 2 * narrowest + gap;
  if (height_of(rows_of(clusters, build_column)) + height_of(rows_of(fillers, build_column)) > highest) {
    std::ranges::move(second, std::back_inserter(first));
    return first;
  }
  constexpr double share = 0.55;  // of the clusters, whose lines are the longer ones
  if (beside) first = rows_of(clusters, (width - gap) * share), second = rows_of(fillers, (width - gap) * (1 - share));
  const double high = height_of(first);
  const auto draw = [=](Marks& marks, const Rect& at) {
    const auto run = [&](const std::vector<Row>& rows, double x, double y, double wide) {
      for (const Row& row : rows) {
        row.draw(marks, {x, y, wide, row.height});
        y += row.height;
      }
    };
    const double left = beside ? (at.width - gap) * share : at.width;
    run(first, at.x, at.y, left);
    if (beside)
      run(second, at.x + left + gap, at.y, at.width - gap - left);
    else
      run(second, at.x, at.y + high, at.width);
  };
  return {{beside ? std::max(high, height_of(second)) : high + height_of(second), draw}};
}

/// From where to where a stretch goes, over its picture, or in a corner of it that is free.
Row picture_row_of(const StraightPile& pile, const PilePicture& picture, const BuildSubject& subject,
                   const Setting& setting, double scale) {
  constexpr double above = 2, below_it = 1, step = 0.5;  // mm
  const LengthStyle lengths = lengths_in(setting.units);
  const std::string name = print_length(pile.from_m, lengths) + " to " + print_length(pile.to_m, lengths);
  const Rect heading{0, 0, text_width(name, table_bold), line_height};
  double lift = 0;
  const auto goes_up = [&](double by) {
    return is_clear(pile, picture, scale, {-1, by - line_height, heading.width + 2, line_height});
  };
  while (lift + step <= line_height && goes_up(lift + step)) lift += step;
  const double down = above + line_height - lift;
  return picture_row(down + picture.height + below_it, [=, &subject, &setting](Marks& marks, const Rect& at) {
    marks.push_back(text_mark(Part::key, {at.x, at.y + above, heading.width + 0.5, line_height}, name, table_bold));
    const double x = at.x + std::max(0.0, at.width - picture.width) / 2;
    add_pile(marks, pile, picture, subject, setting, scale, {x, at.y + down});
  });
}

/// Whether the line runs steeply somewhere, so that above it as it is drawn is aside of it as it hangs.
bool is_steep_somewhere(const Piece& piece) {
  for (std::size_t i = 1; i < piece.spine.size(); ++i) {
    const Vec3 run = piece.spine[i].point - piece.spine[i - 1].point;
    if (std::abs(run.z()) > 0.7 * run.norm()) return true;
  }
  return false;
}

Block how_block(const BuildSubject& subject, double scale, double width) {
  Block how = table_block("How the stretches go", {}, width);
  how.rows.push_back(text_row(
      "Counted from " + print_start(subject) +
          ". Each stretch is drawn straight, its beginning at the left, seen from the front, at about 1:" +
          print_number(scale) +
          ", with what belongs to it alone. Each balloon that is seen has its name: #5 B is one of cluster 5 in colour "
          "B, f3 A the third of the stretch's fillers, in colour A. A star is an accent.",
      width));
  how.rows.push_back(
      text_row("Beneath stand the clusters with their balloons, then the fillers: 11 in B is an eleven-inch balloon in "
               "colour B. Front, above and below are sides of the line as it is drawn; behind is what is not "
               "seen from the front.",
               width));
  if (is_steep_somewhere(subject.piece()))
    how.rows.push_back(
        text_row("Where the line rises, above it as drawn is its left side as it hangs; where it falls, "
                 "its right side.",
                 width));
  return how;
}

}  // namespace

std::vector<Block> stretch_blocks(const BuildSubject& subject, const Setting& setting, double width,
                                  double pile_height) {
  if (subject.chart.rings || (subject.chart.clusters.empty() && subject.loose.empty())) return {};
  const std::vector<MakingStretch> stretches =
      stretches_of(subject.piece(), subject.chart, subject.loose, running_step_m(setting.units));
  const Piles piles = straight_piles(subject, stretches);
  const double scale = scale_of(piles, pile_height);
  Block block = table_block("Stretch by stretch", {}, width);
  block.head_again.clear();  // each stretch has a heading of its own
  for (std::size_t s = 0; s < stretches.size(); ++s) {
    const MakingStretch& stretch = stretches[s];
    if (stretch.clusters.empty() && stretch.loose.empty()) continue;
    const PilePicture picture = picture_of(piles[s], subject, setting, scale, build_column);
    const std::size_t first = block.rows.size();
    block.rows.push_back(picture_row_of(piles[s], picture, subject, setting, scale));
    std::ranges::move(list_rows(subject, stretch, piles[s], width), std::back_inserter(block.rows));
    // The names on the picture are read together with what is told of them, as far as a column of any paper holds it.
    constexpr double most_together = 110;
    double together = 0;
    for (std::size_t i = first; i < block.rows.size(); ++i) {
      together += block.rows[i].height;
      block.rows[i].with_before = i > first && together <= most_together;
    }
  }
  return {how_block(subject, scale, width), block};
}

}  // namespace quadrille
