// What each piece of an area bears, in words and levels.
#include <algorithm>

#include "studio/build_sheet/build_rows.hpp"
#include "studio/model/capital.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/sheets/safety_blocks.hpp"
#include "studio/sheets/tick_row.hpp"
#include "studio/standing/checks.hpp"
#include "studio/standing/level_words.hpp"
#include "studio/standing/site_words.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {
namespace {

constexpr double name_room = 34, level_room = 32;

std::vector<RowCell> level_cells(const std::string& piece, const std::string& limit, const std::string& watch,
                                 const std::string& down, const std::string& fails) {
  return {{piece, name_room},
          {limit, level_room},
          {watch, level_room},
          {down, level_room, Across::left, Face::bold},
          {fails}};
}

/// "A base plate tips, at the left foot, in wind from the front".
std::string failure_words(const StandingCheck& check, bool at_rest) {
  std::string text = with_capital(failure_of(check.code));
  if (!check.where.empty()) text += ", at the " + check.where;
  return text + (at_rest ? ", without any wind" : ", in wind " + wind_words(check.direction_deg));
}

std::string in_forecast(const PieceStanding& answer) {
  if (!answer.forecast_known) return "";
  switch (answer.verdict) {
    case Verdict::fine:
      return " In the gust that is forecast: fine.";
    case Verdict::watch:
      return " In the gust that is forecast: watch it.";
    case Verdict::no:
      return " In the gust that is forecast: it does not stay up.";
    case Verdict::unknown:
      break;
  }
  return "";
}

/// What the levels of a piece say, beneath the captions; the first cell is for its name.
std::vector<RowCell> outdoor_cells(const SafetyPiece& piece, Units units) {
  const std::string name;
  if (piece.answer == nullptr) return level_cells(name, "–", "–", "–", "Not reckoned.");
  const PieceStanding& answer = *piece.answer;
  if (answer.checks.empty())
    return level_cells(name, "not known", "not known", "not known",
                       answer.reason.empty() ? "It could not be reckoned." : answer.reason);
  if (answer.fails_at_rest)
    return level_cells(name, "does not stand", "–", "do not put it up", failure_words(answer.governing, true) + ".");
  const std::string fails = answer.governing.code.empty() ? "Nothing fails up to the highest gust that was looked at."
                                                          : failure_words(answer.governing, false) + ".";
  return level_cells(name, (answer.limit_beyond ? "more than " : "") + level_words(answer.limit_gust_m_s, units),
                     level_words(answer.watch_m_s, units), level_words(answer.take_down_m_s, units),
                     fails + in_forecast(answer));
}

/// How a piece, or each of several, bears whoever leans on it.
std::string push_words(const PieceStanding& answer, bool several, Units units) {
  const std::string asked = print_force(answer.push_n, units);
  const bool enough = answer.bears_push_n >= answer.push_n;
  return (several ? " Each bears a push of " : " It bears a push of ") + print_force(answer.bears_push_n, units) +
         " at hand height; somebody who leans on it pushes with " + asked +
         (enough ? ": that is enough." : ": keep people away from it.");
}

std::vector<RowCell> indoor_cells(const SafetyPiece& piece, bool several, const Setting& setting) {
  std::string text = "Not reckoned.";
  if (piece.answer != nullptr) {
    const PieceStanding& answer = *piece.answer;
    if (answer.checks.empty()) {
      text = answer.reason.empty() ? "It could not be reckoned." : with_capital(answer.reason);
    } else if (answer.verdict == Verdict::no) {
      const StandingCheck* const worst = worst_of(answer.checks);
      text = (several ? "They do not stand: " : "It does not stand: ") +
             std::string(worst != nullptr ? failure_of(worst->code) : "a check fails") + ".";
    } else {
      text = answer.hangs ? (several ? "They hang." : "It hangs.") : several ? "They stand." : "It stands.";
      if (answer.push_asked)
        text += push_words(answer, several, setting.units);
      else if (answer.verdict == Verdict::watch)
        text += several ? " Keep people away from them." : " Keep people away from it.";
    }
  }
  return {{"", 60}, {text}};
}

std::string text_of(const std::vector<RowCell>& cells) {
  std::string text;
  for (const RowCell& cell : cells) text += cell.text + "\n";
  return text;
}

void add_levels(Block& block, const SafetySubject& subject, const Setting& setting, double width) {
  const auto cells_of = [&](const SafetyPiece& piece, bool several) {
    return subject.outdoors() ? outdoor_cells(piece, setting.units) : indoor_cells(piece, several, setting);
  };
  const auto said = [&](const SafetyPiece& piece) { return text_of(cells_of(piece, false)); };
  for (const auto& group : told_together(subject, said)) {
    std::vector<RowCell> cells = cells_of(*group.front(), group.size() > 1);
    cells.front().text = numbered_names(group, subject);
    block.rows.push_back(cells_row(cells, width));
  }
}

Row planning_aid_row(double width) { return cells_row({{planning_aid, 0, Across::left, Face::bold}}, width); }

}  // namespace

std::vector<Block> level_blocks(const SafetySubject& subject, const Setting& setting, double width) {
  Block block =
      subject.outdoors()
          ? table_block("Wind levels",
                        level_cells("Piece", "It bears gusts of", "Watch it from", "Take it down at", "First to fail"),
                        width)
          : table_block("How it stands", {}, width);
  if (setting.input.standing == nullptr)
    block.rows.push_back(text_row("How the pieces stand was not reckoned: there are no levels on this sheet.", width));
  else
    add_levels(block, subject, setting, width);
  for (const std::string& sentence : subject.left_out) block.rows.push_back(text_row(sentence, width));
  if (subject.pieces.empty() && subject.left_out.empty())
    block.rows.push_back(text_row("There are no pieces in this area yet.", width));
  if (subject.outdoors()) {
    const auto& gust = subject.area->site.gust_m_s;
    block.rows.push_back(text_row(
        (gust ? "The forecast that this was reckoned with: gusts of " + forecast_words(*gust, setting.units) + "."
              : std::string("No forecast is known: get it, and reckon again.")) +
            " Whatever was reckoned, nothing is left up above " + short_level_words(beaufort_5_top_m_s, setting.units) +
            ". Gusts count, not the mean wind; Beaufort numbers are those of the same "
            "speed.",
        width));
  }
  block.rows.push_back(planning_aid_row(width));
  return {block};
}

std::vector<Block> watch_blocks(const SafetySubject& subject, double width) {
  if (!subject.outdoors()) return {};
  Block block = table_block("Who watches", {}, width);
  constexpr double label = 52;
  block.rows.push_back(fill_in_row("Watches and reads the wind", width, label));
  block.rows.push_back(fill_in_row("Where, from when to when", width, label));
  block.rows.push_back(fill_in_row("Decides to take down, telephone", width, label));
  return {block};
}

}  // namespace quadrille
