// Lines, feet and outlet; levels stand in safety_levels.cpp, what is ticked and signed in safety_checks.cpp.
#include "studio/sheets/safety_blocks.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include "sdk/number.hpp"
#include "studio/build_sheet/build_rows.hpp"
#include "studio/model/capital.hpp"
#include "studio/model/lengths.hpp"
#include "studio/paper/piece_key.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/sheets/distance.hpp"
#include "studio/standing/ballast.hpp"
#include "studio/standing/checks.hpp"
#include "studio/standing/level_words.hpp"
#include "studio/standing/site_words.hpp"
#include "studio/standing/wind.hpp"
#include "studio/takeoff/placing.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

std::vector<RowCell> line_cells(const std::string& line, const std::string& way, const std::string& length,
                                const std::string& angle, const std::string& pull, const std::string& without) {
  return {{line, 13, Across::left, Face::bold},
          {way},
          {length, 21, Across::right},
          {angle, 11, Across::right},
          {pull, 16, Across::right},
          {"", 1.5},
          {without, 36}};
}

/// "Left leg to a stake 1.60 m in front of the left foot and 0.95 m to its left".
std::string way_of(const SafetyPiece& piece, const AnchoredLine& laid, const Area& area, LengthStyle lengths) {
  constexpr double least_m = 0.005;
  const SecuringLine& asked = piece.placed->lines[laid.line];
  // What a tie point is for is told after a comma; where the line goes says that here.
  std::string tie = piece.piece->tie_points[laid.run.tie_point].label;
  tie = with_capital(tie.substr(0, tie.find(',')));
  if (asked.anchor == AnchorKind::structure) return tie + " to " + print_anchor(asked, area, lengths);
  const std::string foot = laid.foot.empty() ? "the piece's place" : "the " + laid.foot;
  const bool away = std::abs(laid.away_m) >= least_m, aside = std::abs(laid.right_m) >= least_m;
  const std::string side = laid.right_m < 0 ? "left" : "right";
  std::string place = " at " + foot;
  if (away)
    place = " " + print_length(std::abs(laid.away_m), lengths) + (laid.away_m < 0 ? " in front of " : " behind ") +
            foot + (aside ? " and " + print_length(std::abs(laid.right_m), lengths) + " to its " + side : "");
  else if (aside)
    place = " " + print_length(std::abs(laid.right_m), lengths) + " to the " + side + " of " + foot;
  return tie + " to a " + print_anchor(asked, area, lengths) + place;
}

/// What a line is called where several pieces alike share its row: "L2" for "1-L2".
std::string own_label(const std::string& label) { return label.substr(label.find('-') + 1); }

std::vector<RowCell> cells_of_line(const SafetyPiece& piece, const SafetyLine& line, const SafetySubject& subject,
                                   const Setting& setting, const std::string& label) {
  const LengthStyle lengths = lengths_in(setting.units);
  const auto& forecast = subject.area->site.gust_m_s;
  std::string without = "–";
  if (line.without_m_s)
    without = short_level_words(*line.without_m_s, setting.units) +
              (forecast && *line.without_m_s < *forecast ? ": less than is forecast" : "");
  auto cells =
      line_cells(label, way_of(piece, line.laid, *subject.area, lengths), print_length(line.laid.length_m, lengths),
                 print_fixed(line.laid.to_ground_rad * 180 / pi, 0) + "°",
                 line.pull_n ? print_pull(*line.pull_n, setting.units) : "–", without);
  if (line.without_m_s && forecast && *line.without_m_s < *forecast) cells.back().face = Face::bold;
  return cells;
}

/// "L2" for the line that the answer calls "line side-1 (2)"; as the answer calls it where lines that do not count were
/// left out of its numbers.
std::string label_of(const SafetyPiece& piece, const std::string& where) {
  if (piece.answer->not_counted.empty())
    for (const SafetyLine& line : piece.lines)
      if (name_of_line(piece.placed->lines, line.laid.line) == where) return line.label;
  return where;
}

/// The line that is pulled most, the anchor that is nearest to giving way, and what the answer says of lines that the table
/// could not give a force; each line as `label` has it.
std::vector<std::string> line_notes(const SafetyPiece& piece, const Setting& setting,
                                    const std::function<std::string(const std::string&)>& label) {
  std::vector<std::string> notes;
  for (const StandingCheck& check : piece.answer->checks)
    if (check.code == "line" || check.code == "anchor")
      notes.push_back((check.code == "line" ? "Most pulled: " : "Anchor nearest to giving way: ") +
                      label(label_of(piece, check.where)) + ", " +
                      print_amount(check.value, check.unit, setting.units) + " of the " +
                      print_amount(check.limit, check.unit, setting.units) + " that it bears, in wind " +
                      wind_words(check.direction_deg) + ".");
  for (const std::string& sentence : piece.answer->not_counted) notes.push_back(sentence);
  for (const std::string& sentence : piece.answer->faults) notes.push_back(sentence);
  if (std::ranges::all_of(piece.lines, [](const SafetyLine& line) { return line.pull_n.has_value(); })) return notes;
  for (const ForceInLine& force : piece.answer->lines)
    notes.push_back("A line from " + force.from + " to " + force.to + " pulls at most " +
                    print_pull(force.greatest_n, setting.units) + ".");
  for (const WithoutLine& lost : piece.answer->without)
    notes.push_back("Without the line " + lost.line + " it bears " +
                    short_level_words(lost.limit_gust_m_s, setting.units) + ".");
  return notes;
}

/// All that the table says of a piece's lines but for the piece's number.
std::string lines_in_words(const SafetyPiece& piece, const SafetySubject& subject, const Setting& setting) {
  std::string text;
  for (const SafetyLine& line : piece.lines)
    for (const RowCell& cell : cells_of_line(piece, line, subject, setting, own_label(line.label)))
      text += cell.text + "\n";
  if (piece.answer != nullptr)
    for (const std::string& note : line_notes(piece, setting, own_label)) text += note + "\n";
  return text;
}

Block lines_block(const SafetySubject& subject, const Setting& setting, double width) {
  Block block = table_block(
      "Lines", line_cells("Line", "Way", "Length", "To ground", "Pull", "If it is lost, the piece bears"), width);
  bool pulls = false;
  for (const auto& group :
       told_together(subject, [&](const SafetyPiece& piece) { return lines_in_words(piece, subject, setting); })) {
    const SafetyPiece& piece = *group.front();
    if (piece.lines.empty()) continue;
    const bool several = group.size() > 1;
    if (subject.pieces.size() > 1)
      block.rows.push_back(cells_row(
          {{numbered_names(group, subject) + (several ? ", each" : ""), 0, Across::left, Face::bold}}, width));
    const auto label = [&](const std::string& whole) { return several ? own_label(whole) : whole; };
    for (const SafetyLine& line : piece.lines)
      block.rows.push_back(cells_row(cells_of_line(piece, line, subject, setting, label(line.label)), width));
    if (piece.answer == nullptr) continue;
    pulls = pulls || (piece.answer->gust_m_s > 0 && !piece.answer->lines.empty());
    for (const std::string& note : line_notes(piece, setting, label))
      block.rows.push_back(text_row(note, width, 0.8, ink_quiet));
  }
  if (pulls)
    block.rows.push_back(
        text_row("Each pull is the greatest of its line in the gust that is forecast, whatever side it "
                 "comes from.",
                 width, 0.8, ink_quiet));
  return block;
}

Block feet_block(const SafetySubject& subject, const Setting& setting, double width) {
  Block block =
      table_block("Feet and ballast",
                  {{"Piece"}, {"Foot", 34}, {"Plate", 24, Across::right}, {"Ballast on it", 26, Across::right}}, width);
  const MassStyle masses = masses_in(setting.units);
  const auto cells_of = [&](const SafetyPiece& piece) {
    std::vector<std::vector<RowCell>> rows;
    for (const NamedSupport& support : piece.supports)
      if (const Support& what = piece.piece->supports[support.support]; what.kind == SupportKind::plate)
        rows.push_back({{""},
                        {support.name, 34},
                        {print_mass(what.own_mass_kg, masses), 24, Across::right},
                        {print_mass(what.ballast_kg, masses), 26, Across::right, Face::bold}});
    return rows;
  };
  const auto said = [&](const SafetyPiece& piece) {
    std::string text;
    for (const auto& row : cells_of(piece))
      for (const RowCell& cell : row) text += cell.text + "\n";
    return text;
  };
  for (const auto& group : told_together(subject, said)) {
    auto rows = cells_of(*group.front());
    if (!rows.empty()) rows.front().front().text = numbered_names(group, subject) + (group.size() > 1 ? ", each" : "");
    for (const auto& row : rows) block.rows.push_back(cells_row(row, width));
  }
  // What is to be done alike is said once.
  std::vector<std::pair<std::string, std::vector<std::size_t>>> advice;
  for (const SafetyPiece& piece : subject.pieces) {
    if (piece.answer == nullptr) continue;
    const double container = setting.input.house != nullptr ? container_kg(*setting.input.house) : 0;
    const std::string words = ballast_in_words(*piece.answer, setting.units, container);
    auto same = std::ranges::find(advice, words, &std::pair<std::string, std::vector<std::size_t>>::first);
    if (same == advice.end()) same = advice.insert(advice.end(), {words, {}});
    same->second.push_back(piece.number);
  }
  for (const auto& [words, numbers] : advice)
    if (!words.empty())
      block.rows.push_back(text_row(
          (subject.pieces.size() > 1 ? (numbers.size() > 1 ? "Pieces " : "Piece ") + print_numbers(numbers) + ": "
                                     : "") +
              words,
          width));
  return block;
}

}  // namespace

std::vector<Block> securing_blocks(const SafetySubject& subject, const Setting& setting, double width) {
  std::vector<Block> blocks;
  if (subject.has_lines()) blocks.push_back(lines_block(subject, setting, width));
  if (Block feet = feet_block(subject, setting, width); !feet.rows.empty()) blocks.push_back(std::move(feet));
  return blocks;
}

std::vector<Block> outlet_blocks(const SafetySubject& subject, const Setting& setting, double width) {
  Block block = table_block("Outlet and cord", {}, width);
  const auto& outlet = subject.area->site.outlet_m;
  std::string text = "How far the outlet is, is not known.";
  if (outlet)
    text = "The outlet is " + print_distance(*outlet, setting.units) + " away" +
           (subject.has_pictures() ? "; mark on the plan where it is." : ".");
  if (setting.input.power == nullptr) {
    text += " Cords and power were not reckoned.";
  } else {
    const auto power = std::ranges::find(*setting.input.power, subject.area->id, &AreaPower::area);
    if (power != setting.input.power->end()) {
      if (has_cord(*power))
        text += " Cord: " + print_cord(*power, setting.units) + " of " + print_gauges(*power, setting.units) + ".";
      else
        text += " No cord serves: bring " + print_own_power(*power) + ".";
    }
  }
  text += subject.outdoors() ? " Plug it into a ground-fault device. Keep it off the walkways and out of the wet."
                             : " Keep it off the walkways.";
  block.rows.push_back(text_row(text, width));
  return {block};
}

}  // namespace quadrille
