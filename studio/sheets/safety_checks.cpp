// What is ticked, filled in and signed on a safety sheet.
#include <algorithm>
#include <set>
#include <utility>

#include "studio/build_sheet/build_rows.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/piece_key.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/sheets/alike_names.hpp"
#include "studio/sheets/safety_blocks.hpp"
#include "studio/sheets/tick_row.hpp"
#include "studio/standing/checklist.hpp"

namespace quadrille {
namespace {

/// Who says so, where somebody does who can be read: " (16 CFR 1500.19)". What is common practice or told from memory has
/// none; the sheet says that once.
std::string cited(const std::string& source) {
  const std::string own = source.substr(0, source.find(std::string("; ") + planning_aid));
  for (const char* unread : {"common practice", "practice of", "from memory"})
    if (own.find(unread) != std::string::npos) return "";
  return own.empty() ? "" : " (" + own + ")";
}

/// Beneath a list, a little off its last rule.
Row sources_row(double width) {
  constexpr double above = 1.4;
  const Row row = text_row("Items without a source are common practice.", width, 0.8, ink_quiet);
  return {row.height + above,
          [row](Marks& marks, const Rect& at) {
            row.draw(marks, {at.x, at.y + above, at.width, at.height - above});
          },
          true};
}

/// Where it is to be done: by name, or where those do not go into three lines by the numbers that the pictures and the
/// levels have. Empty where the area has one piece alone.
std::string where_of(const std::vector<const SafetyPiece*>& at, const SafetySubject& subject, double width) {
  if (at.empty() || subject.pieces.size() < 2) return "";
  std::vector<std::string> all;
  std::vector<std::size_t> numbers;
  for (const SafetyPiece* piece : at) all.push_back(piece->name()), numbers.push_back(piece->number);
  const std::string names = "At: " + print_list(all);
  const bool fits = text_width(names, type(pt_caption, ink_text, Face::bold)) < 3 * (width - 12);
  return fits ? names : "At pieces " + print_numbers(numbers);
}

TickLine tick_of(const ChecklistLine& line) {
  TickLine tick{line.text};
  // The sheet says beside the levels and where it is signed what all of it is.
  if (line.reason != planning_aid) tick.detail = line.reason + cited(line.source);
  tick.ticked = line.done;
  return tick;
}

bool is_of_a_line(const ChecklistLine& line) { return line.key.find("/line-") != std::string::npos; }

/// The lines of a piece, which the plan and the table tell one by one: "Lines 1-L1 to 1-L4 as on the plan". Ticked where
/// all of them are.
TickLine lines_tick(const SafetyPiece& piece, const std::vector<ChecklistLine>& lines) {
  const std::string& first = piece.lines.front().label;
  TickLine tick{(piece.lines.size() > 1 ? "Lines " + first + " to " + piece.lines.back().label : "Line " + first) +
                " as on the plan and in the table, hand-tight, marked at eye height."};
  tick.ticked = std::ranges::all_of(lines, [&](const ChecklistLine& line) {
    return line.piece != piece.placed->id || !is_of_a_line(line) || line.done;
  });
  return tick;
}

/// The pieces of which the checklist says just what this line says.
std::vector<const SafetyPiece*> pieces_told(const ChecklistLine& line, const SafetySubject& subject,
                                            const std::vector<ChecklistLine>& lines) {
  std::vector<const SafetyPiece*> at;
  for (const ChecklistLine& other : lines)
    if (other.text == line.text && other.done == line.done)
      for (const SafetyPiece& piece : subject.pieces)
        if (piece.placed->id == other.piece) at.push_back(&piece);
  return at;
}

/// What is to be done alike at several pieces is said once, with where. Of pieces that are hidden nothing is, and of what
/// is still to be decided neither.
Block pieces_block(const SafetySubject& subject, const std::vector<ChecklistLine>& lines, double width) {
  Block block = tick_block("Checklist: " + subject.name() + ", the pieces", width);
  std::set<std::pair<std::string, bool>> said;
  std::set<std::string> lines_told;
  for (const ChecklistLine& line : lines) {
    if (line.open) continue;
    if (is_of_a_line(line)) {
      const auto piece = std::ranges::find_if(
          subject.pieces, [&](const SafetyPiece& own) { return own.placed->id == line.piece && !own.lines.empty(); });
      if (piece == subject.pieces.end() || !lines_told.insert(line.piece).second) continue;
      TickLine tick = lines_tick(*piece, lines);
      tick.where = where_of({&*piece}, subject, width), tick.detail = line.reason;
      block.rows.push_back(tick_row(tick, width));
      continue;
    }
    if (said.contains({line.text, line.done})) continue;
    const std::vector<const SafetyPiece*> at = pieces_told(line, subject, lines);
    if (at.empty()) continue;
    said.insert({line.text, line.done});
    TickLine tick = tick_of(line);
    tick.where = where_of(at, subject, width);
    block.rows.push_back(tick_row(tick, width));
  }
  return block;
}

/// Of an area, or with an empty id of the whole event.
Block place_block(const std::string& heading, const std::string& area, const Setting& setting, double width) {
  const House* const house = setting.input.house;
  const bool sand = house != nullptr && house->ballast_fill == BallastFill::sand;
  Block block = tick_block(heading, width);
  for (const ChecklistLine& line : *setting.input.checklist) {
    if (line.area != area || !line.piece.empty() || (sand && line.key.ends_with("/ballast-water"))) continue;
    block.rows.push_back(tick_row(tick_of(line), width));
  }
  return block;
}

}  // namespace

std::vector<Block> open_blocks(const SafetySubject& subject, const Setting& setting, double width) {
  if (setting.input.checklist == nullptr) return {};
  const std::vector<ChecklistLine>& lines = *setting.input.checklist;
  Block block = table_block("To decide before the day", {}, width);
  std::set<std::string> said;
  for (const ChecklistLine& line : lines) {
    if (!line.open || line.done || said.contains(line.text)) continue;
    const std::vector<const SafetyPiece*> at = pieces_told(line, subject, lines);
    if (at.empty()) continue;
    said.insert(line.text);
    std::vector<std::string> names;
    for (const SafetyPiece* piece : at) names.push_back(piece->name());
    block.rows.push_back(text_row(print_list(names) + ": " + line.text + " " + line.reason, width));
  }
  if (block.rows.empty()) return {};
  block.rows.push_back(fill_in_row("Decided", width, 20));
  return {block};
}

std::vector<Block> check_blocks(const SafetySubject& subject, const Setting& setting, double width) {
  if (setting.input.checklist == nullptr) {
    Block block = table_block("Checklist", {}, width);
    block.rows.push_back(text_row("The checklist was not made: it is missing here.", width));
    return {block};
  }
  const std::vector<ChecklistLine>& lines = *setting.input.checklist;
  std::vector<Block> blocks{
      place_block("Checklist: " + subject.name() + ", the place", subject.area->id, setting, width),
      pieces_block(subject, lines, width)};
  std::erase_if(blocks, [](const Block& block) { return block.rows.empty(); });
  if (!blocks.empty()) blocks.back().rows.push_back(sources_row(width));
  return blocks;
}

std::vector<Block> caution_check_blocks(const Setting& setting, double width) {
  if (setting.input.checklist == nullptr) return {};
  Block block = place_block("Checklist: every area", "", setting, width);
  if (block.rows.empty()) return {};
  block.rows.push_back(sources_row(width));
  return {block};
}

std::vector<Block> signature_blocks(const SafetySubject& subject, double width, int readings) {
  std::vector<Block> blocks;
  if (subject.outdoors()) {
    constexpr double time = 22, gust = 34, by = 40, row = 7.2;
    Block block = table_block("Wind read on the spot",
                              {{"Time", time}, {"Gust", gust}, {"Read by", by}, {"What was done"}}, width);
    block.with_before = true;
    for (int i = 0; i < readings; ++i)
      block.rows.push_back(
          {row, [](Marks& marks, const Rect& at) {
             const double y = at.bottom();
             marks.push_back(line_mark(Part::key, {at.x, y}, {at.right(), y}, mm_hair));
             for (double x : {time, time + gust + 1.6, time + gust + by + 3.2})
               marks.push_back(line_mark(Part::key, {at.x + x, at.y + 1.4}, {at.x + x, y}, mm_hair, ink_rule));
           }});
    blocks.push_back(std::move(block));
  }
  Block block = table_block("Checked", {}, width);
  block.with_before = true;
  block.rows.push_back(text_row(planning_aid, width));
  block.rows.push_back(
      {13, [](Marks& marks, const Rect& at) {
         constexpr double gap = 5;
         const double each = (at.width - 2 * gap) / 3, y = at.y + 8.6;
         const char* const labels[] = {"Date and time", "Name", "Signature"};
         for (int i = 0; i < 3; ++i) {
           const double x = at.x + i * (each + gap);
           marks.push_back(line_mark(Part::key, {x, y}, {x + each, y}, mm_line));
           marks.push_back(text_mark(Part::key, {x, y + 0.6, each, 3.8}, labels[i], type(pt_caption, ink_quiet)));
         }
       }});
  blocks.push_back(std::move(block));
  return blocks;
}

}  // namespace quadrille
