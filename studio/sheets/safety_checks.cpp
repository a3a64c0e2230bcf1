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

/// The sheet says it once, below everything.
std::string without_planning_aid(const std::string& source) {
  return source.substr(0, source.find(std::string("; ") + planning_aid));
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
  tick.detail = line.reason + " (" + without_planning_aid(line.source) + ")";
  tick.ticked = line.done;
  return tick;
}

/// What is to be done alike at several pieces is said once, with where. Of pieces that are hidden nothing is.
Block pieces_block(const SafetySubject& subject, const std::vector<ChecklistLine>& lines, double width) {
  Block block = tick_block("Checklist: " + subject.name() + ", the pieces", width);
  std::set<std::pair<std::string, bool>> said;
  for (const ChecklistLine& line : lines) {
    if (said.contains({line.text, line.done})) continue;
    std::vector<const SafetyPiece*> at;
    for (const ChecklistLine& other : lines)
      if (other.text == line.text && other.done == line.done)
        for (const SafetyPiece& piece : subject.pieces)
          if (piece.placed->id == other.piece) at.push_back(&piece);
    if (at.empty()) continue;
    said.insert({line.text, line.done});
    TickLine tick = tick_of(line);
    tick.where = where_of(at, subject, width);
    block.rows.push_back(tick_row(tick, width));
  }
  return block;
}

/// Of an area, or with an empty id of the whole event.
Block place_block(const std::string& heading, const std::string& area, const std::vector<ChecklistLine>& lines,
                  double width) {
  Block block = tick_block(heading, width);
  for (const ChecklistLine& line : lines)
    if (line.area == area && line.piece.empty()) block.rows.push_back(tick_row(tick_of(line), width));
  return block;
}

}  // namespace

std::vector<Block> check_blocks(const SafetySubject& subject, const Setting& setting, double width) {
  if (setting.input.checklist == nullptr) {
    Block block = table_block("Checklist", {}, width);
    block.rows.push_back(text_row("The checklist was not made: it is missing here.", width));
    return {block};
  }
  const std::vector<ChecklistLine>& lines = *setting.input.checklist;
  std::vector<Block> blocks{place_block("Checklist: " + subject.name() + ", the place", subject.area->id, lines, width),
                            pieces_block(subject, lines, width)};
  std::erase_if(blocks, [](const Block& block) { return block.rows.empty(); });
  return blocks;
}

std::vector<Block> caution_check_blocks(const Setting& setting, double width) {
  if (setting.input.checklist == nullptr) return {};
  Block block = place_block("Checklist: everywhere", "", *setting.input.checklist, width);
  if (block.rows.empty()) return {};
  return {block};
}

std::vector<Block> signature_blocks(const SafetySubject& subject, double width) {
  std::vector<Block> blocks;
  if (subject.outdoors()) {
    constexpr double time = 22, gust = 34, by = 40, row = 7.2;
    Block block = table_block("Wind read on the spot",
                              {{"Time", time}, {"Gust", gust}, {"Read by", by}, {"What was done"}}, width);
    block.with_before = true;
    for (int i = 0; i < 5; ++i)
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
         const double third = at.width / 3, y = at.y + 8.6;
         const char* const labels[] = {"Date and time", "Name", "Signature"};
         for (int i = 0; i < 3; ++i) {
           const double x = at.x + i * third;
           marks.push_back(line_mark(Part::key, {x, y}, {x + third - 5, y}, mm_line));
           marks.push_back(text_mark(Part::key, {x, y + 0.6, third - 5, 3.8}, labels[i], type(pt_caption, ink_quiet)));
         }
       }});
  blocks.push_back(std::move(block));
  return blocks;
}

}  // namespace quadrille
