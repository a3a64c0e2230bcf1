// The frame in tables: sections, feet, hooks, tie points, securing lines.
#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <string_view>

#include "studio/build_sheet/build_chart.hpp"
#include "studio/build_sheet/build_picture.hpp"
#include "studio/build_sheet/build_rows.hpp"
#include "studio/build_sheet/build_tables.hpp"
#include "studio/build_sheet/hung.hpp"
#include "studio/making/spine_place.hpp"
#include "studio/model/capital.hpp"
#include "studio/model/lengths.hpp"
#include "studio/paper/table_rows.hpp"

namespace quadrille {
namespace {

/// A quarter circle or nearly: a corner that comes bent, and is cut from nothing.
bool is_bent_corner(const FrameSection& section) {
  constexpr double least_turn = 1.2;  // rad
  const double straight_m = section.straight_before_m + section.straight_after_m;
  return section.bent && section.radius_m > 0 && section.length_m - straight_m > least_turn * section.radius_m;
}

/// "bent to a radius of 1.80 m, straight for 1.10 m at its start", "bent as in the picture, 0.21 m deep over a chord of
/// 1.42 m".
std::string describe_shape(const FrameSection& section, LengthStyle lengths) {
  constexpr double least_straight = 0.02;
  if (section.springs) return "straight; bends when raised";
  if (!section.bent) return "straight";
  if (!(section.radius_m > 0))
    return "bent as in the picture, " + print_length(section.rise_m, lengths) + " deep over a chord of " +
           print_length(section.chord_m, lengths);
  std::string text = is_bent_corner(section) ? "bent corner, radius " : "bent to a radius of ";
  text += print_length(section.radius_m, lengths);
  const auto straight = [&](double length_m, const char* end) {
    if (length_m > least_straight) text += ", straight for " + print_length(length_m, lengths) + " at " + end;
  };
  straight(section.straight_before_m, "its start");
  straight(section.straight_after_m, "its end");
  return text;
}

Block sections_block(const BuildSubject& subject, const Setting& setting, double width) {
  const LengthStyle lengths = lengths_in(setting.units);
  Block block =
      table_block("Frame sections",
                  {{"Section", 11}, {"Length", 16, Across::right}, {"", 1.5}, {"Rod or tube, and its shape"}}, width);
  bool any_start = false, any_depth = false;
  for (std::size_t i = 0; i < subject.frame.sections.size(); ++i) {
    const FrameSection& section = subject.frame.sections[i];
    const double stock = stock_length_m(subject.piece(), subject.frame, section);
    std::string text = print_tube(section) + ", " + describe_shape(section, lengths);
    if (section.length_m < stock - 0.005 && !is_bent_corner(section))
      text += "; cut from " + print_length(stock, lengths);
    any_start = any_start || section.straight_before_m + section.straight_after_m > 0;
    any_depth = any_depth || (section.bent && !(section.radius_m > 0));
    block.rows.push_back(cells_row({{section_name(i), 11, Across::left, Face::bold},
                                    {print_length(section.length_m, lengths), 16, Across::right},
                                    {"", 1.5},
                                    {text}},
                                   width));
  }
  if (any_start)
    block.rows.push_back(text_row("A section's start is the end nearer to " + print_start(subject) + ".", width));
  if (any_depth)
    block.rows.push_back(
        text_row("Depth is measured from the chord, the straight line between a section's ends.", width));
  const auto count = [&](Joint kind) { return std::ranges::count(subject.frame.joints, kind, &FrameNodeJoint::kind); };
  if (count(Joint::sleeve) > 0)
    block.rows.push_back(text_row("Black squares: sleeves or fittings. Push both ends home and tape them.", width));
  if (count(Joint::hinge) > 0) block.rows.push_back(text_row("Open rings: hinges.", width));
  return block;
}

std::string describe(const BuildSubject& subject, const Support& support, const Setting& setting) {
  const LengthStyle lengths = lengths_in(setting.units);
  const MassStyle masses = masses_in(setting.units);
  if (support.kind == SupportKind::socket) return "socket in the ground";
  if (support.kind == SupportKind::surface) return "rests on what is there";
  const std::string width = print_length(support.width_m, lengths), depth = print_length(support.depth_m, lengths);
  std::string text =
      "plate " + width + (width == depth ? " square" : " × " + depth) + ", " + print_mass(support.own_mass_kg, masses);
  if (!(support.ballast_kg > 0)) return text;
  std::string ballast = "ballast " + print_mass(support.ballast_kg, masses);
  if (const std::int64_t containers = containers_on(subject, support); containers > 0)
    ballast += " in " + std::to_string(containers) + (containers == 1 ? " container" : " containers");
  for (std::size_t at = 0; (at = ballast.find(' ', at)) != std::string::npos;) ballast.replace(at, 1, "\u00a0");
  return text + "; " + ballast;
}

void add_feet(std::vector<Block>& blocks, const BuildSubject& subject, const Setting& setting, double width) {
  Block feet = table_block("Feet", {}, width);
  for (const NamedSupport& named : subject.supports) {
    const Support& support = subject.piece().supports[named.support];
    if (!named.is_foot) continue;
    feet.rows.push_back(cells_row(
        {{with_capital(named.name), 18, Across::left, Face::bold}, {describe(subject, support, setting)}}, width));
  }
  if (!feet.rows.empty()) blocks.push_back(std::move(feet));
  std::ranges::move(hung_blocks(subject, setting, width), std::back_inserter(blocks));
}

/// "top, to the front, back and left" of "top, to the front", "top, to the back" and "top, to the left"; others one after
/// the other.
std::string joined_labels(const std::vector<std::string>& labels) {
  constexpr std::string_view way = ", to the ";
  const std::size_t at = labels.front().find(way);
  const std::string start = at == std::string::npos ? "" : labels.front().substr(0, at + way.size());
  const bool alike = !start.empty() && std::ranges::all_of(labels, [&](const auto& l) { return l.starts_with(start); });
  std::string text = labels.front();
  for (std::size_t i = 1; i < labels.size(); ++i)
    text += (!alike                  ? "; "
             : i + 1 < labels.size() ? ", "
                                     : " and ") +
            (alike ? labels[i].substr(start.size()) : labels[i]);
  return text;
}

Block tie_points_block(const BuildSubject& subject, const Setting& setting, double width) {
  const LengthStyle lengths = lengths_in(setting.units);
  Block block = table_block("Tie points (open circles)",
                            {{"Where"}, {"Along", 16, Across::right}, {"Up", 16, Across::right}}, width);
  // Those at one place in one row: "Top, to the front, back, left and right".
  std::vector<TiePoint> ties;
  std::ranges::copy_if(subject.piece().tie_points, std::back_inserter(ties),
                       [&](const TiePoint& tie) { return has_own_place(subject, tie); });
  for (std::size_t from = 0; from < ties.size();) {
    std::vector<std::string> labels{ties[from].label};
    for (std::size_t next = from + 1; next < ties.size() && (ties[next].point - ties[from].point).norm() < 0.005;
         ++next)
      labels.push_back(ties[next].label);
    block.rows.push_back(
        cells_row({{with_capital(joined_labels(labels))},
                   {print_length(place_along(subject.piece(), ties[from].point).at_m, lengths), 16, Across::right},
                   {print_length(ties[from].point.z(), lengths), 16, Across::right}},
                  width));
    from += labels.size();
  }
  return block;
}

std::string print_degrees(double radians) { return print_fixed(radians * 180 / pi, 0) + "°"; }

/// "The stake stands 1.20 m out in front, 0.40 m to the left of the left foot".
std::string where_it_stands(const AnchoredLine& line, const LengthStyle lengths) {
  const std::string from = line.foot.empty() ? "the piece's place" : "the " + line.foot;
  const std::string way = print_way(line.right_m, line.away_m, lengths);
  return "The anchor stands " + way + (way == "right there" ? ", at " : ", seen from ") + from + ".";
}

Block lines_block(const BuildSubject& subject, const Setting& setting, double width) {
  const LengthStyle lengths = lengths_in(setting.units);
  Block block = table_block("Securing lines", {}, width);
  for (std::size_t i = 0; i < subject.lines.size(); ++i) {
    const AnchoredLine& line = subject.lines[i];
    const SecuringLine& wanted = subject.placed().lines[line.line];
    const Cord* cord = find_cord(wanted.cord);
    // "To the side" is what the point is meant for: where the line goes is told beside it.
    std::string tie = subject.piece().tie_points[line.run.tie_point].label;
    if (constexpr std::string_view meant = ", to the side"; tie.ends_with(meant)) tie.resize(tie.size() - meant.size());
    block.rows.push_back(cells_row(
        {{line_name(i), 8, Across::left, Face::bold},
         {with_capital(tie) + ", to: " + print_anchor(wanted, subject.area(), lengths), 0, Across::left, Face::bold}},
        width));
    const std::string text = print_length(line.length_m, lengths) + " long (cut " + print_length(line.cut_m, lengths) +
                             "), " + print_degrees(line.to_ground_rad) + " to the ground. " +
                             where_it_stands(line, lengths) + (cord ? " " + std::string(cord->label) + "." : "");
    block.rows.push_back(cells_row({{"", 8}, {text}}, width));
    block.rows.back().with_before = true;
  }
  for (std::size_t i = 0; i < subject.placed().lines.size(); ++i) {
    const auto run = run_of(subject.placed().lines[i], subject.placed(), subject.piece(), subject.area());
    if (!run) block.rows.push_back(text_row("A line cannot be laid: " + run.error, width));
  }
  block.rows.push_back(
      text_row("On the frame's picture: unbroken beside the piece, long dashes to the front, short ones "
               "to the back. Cross: stake; square: dead weight; diamond: structure.",
               width, 1.2, ink_quiet));
  return block;
}

}  // namespace

std::vector<Block> frame_blocks(const BuildSubject& subject, const Setting& setting, double width) {
  std::vector<Block> blocks;
  if (!subject.frame.sections.empty()) blocks.push_back(sections_block(subject, setting, width));
  add_feet(blocks, subject, setting, width);
  const auto is_apart = [&](const TiePoint& tie) { return has_own_place(subject, tie); };
  if (std::ranges::any_of(subject.piece().tie_points, is_apart))
    blocks.push_back(tie_points_block(subject, setting, width));
  if (!subject.placed().lines.empty()) blocks.push_back(lines_block(subject, setting, width));
  const Units units = setting.units;
  if (const double height = plan_height(subject, width, units); height > 0) {
    Block plan;
    plan.gap = 6;
    plan.rows.push_back(
        picture_row(height, [&subject, units](Marks& marks, const Rect& at) { add_plan(marks, subject, at, units); }));
    blocks.push_back(std::move(plan));
  }
  return blocks;
}

}  // namespace quadrille
