// Entries are compared as they would be printed, so that no measure can be lost by sharing.
#include "studio/paper/piece_key.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <utility>

#include "sdk/pattern.hpp"
#include "studio/drawing/anchor_marks.hpp"
#include "studio/drawing/dimension.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/piece_groups.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

/// Columns of a row of the key behind its swatch: letter, colour, count.
constexpr double letter_room = 6, count_room = 19;

struct SlotLine {
  std::string letter, name;
  const Colour* colour = nullptr;
  std::int64_t balloons = 0;
  bool operator==(const SlotLine&) const = default;
};

/// What is printed of a piece besides its name and number; each text may be empty.
struct Description {
  std::string size, counts, opening, beneath, depth, note;
  std::vector<SlotLine> slots;
  bool operator==(const Description&) const = default;
};

/// Pieces that share an entry.
struct Entry {
  std::vector<std::size_t> numbers;
  std::vector<std::string> names;
  Description text;
  bool shared = false;  ///< whether others may join
};

std::string plural(std::int64_t count, const char* one, const char* many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string describe(const Opening& opening, LengthStyle lengths) {
  std::string text = "Opening " + print_length(opening.width_m(), lengths) + " wide";
  if (opening.between_plates_m() < opening.width_m() - 0.005)
    text += " (" + print_length(opening.between_plates_m(), lengths) + " between plates)";
  if (opening.height_m) text += ", " + print_length(*opening.height_m, lengths) + " high";
  return text;
}

SlotLine slot_line(const PlacedPiece& placed, std::size_t slot, std::int64_t balloons, const TableInput& input) {
  const Colour* colour = slot_colour(placed, slot, input.palettes);
  std::string name = colour ? colour->name : "no colour";
  if (!colour && slot < placed.colours.size() && !placed.colours[slot].colour.empty())
    name = "unknown colour \"" + placed.colours[slot].colour + "\"";
  // A slot beyond the alphabet comes only out of a damaged file and has no letter.
  return {slot < 26 ? std::string(1, slot_letter(static_cast<std::uint32_t>(slot))) : "", name, colour, balloons};
}

Description describe(const PlacedPiece& placed, const ScenePiece& shown, const TableInput& input) {
  const auto& pieces = input.count.pieces;
  const auto found = std::ranges::find(pieces, placed.id, &PieceCount::id);
  const bool counted = found != pieces.end() && shown.shown != Shown::refused;
  Description text;
  if (shown.shown != Shown::built) text.note = shown.note;
  if (shown.size_known) {
    text.size = print_length(shown.extent.width(), input.lengths) + " wide, ";
    if (shown.plates_stand_out()) text.size += print_length(shown.standing().width(), input.lengths) + " with plates, ";
    text.size += shown.hangs() ? "top at " + print_length(shown.extent.top, input.lengths)
                               : print_length(shown.extent.height(), input.lengths) + " high";
    if (shown.hangs()) text.beneath = print_length(shown.underside_m, input.lengths) + " free beneath it";
    if (shown.opening) text.opening = describe(*shown.opening, input.lengths);
    if (counted && found->clusters > 0) text.counts = plural(found->clusters, "cluster", "clusters") + ", ";
    if (counted) text.counts += plural(found->balloons, "balloon", "balloons");
  }
  for (std::size_t slot = 0; counted && slot < found->by_slot.size(); ++slot)
    if (found->by_slot[slot] > 0) text.slots.push_back(slot_line(placed, slot, found->by_slot[slot], input));
  return text;
}

/// Whether the ring with the entry's numbers and one more leaves room for names.
bool has_room_for(const Entry& entry, std::size_t number, double width) {
  std::vector<std::size_t> numbers = entry.numbers;
  numbers.push_back(number);
  return 2 * ring_half_width(print_numbers(numbers)) <= width / 3;
}

/// How deep a piece stands that would hide another in the drawing, or be hidden; empty for all others.
std::string depth_of(const Scene& scene, std::size_t index, LengthStyle lengths) {
  const ScenePiece& piece = scene.pieces[index];
  const bool hides = std::ranges::any_of(scene.pieces, [&](const ScenePiece& other) {
    return &other != &piece && lie_together(other, piece) && std::abs(other.depth_m - piece.depth_m) > 0.005;
  });
  if (!hides) return "";
  if (std::abs(piece.depth_m) < 0.005) return "on the front line, others before or behind it";
  return print_length(std::abs(piece.depth_m), lengths) +
         (piece.depth_m < 0 ? " before the front line" : " behind the front line");
}

std::vector<Entry> entries_in(const Area& area, const Scene& scene, const TableInput& input) {
  std::vector<Entry> entries;
  std::size_t index = 0;
  for (const auto& placed : area.pieces) {
    if (placed->hidden) continue;
    const ScenePiece& shown = scene.pieces[index++];
    Description text = describe(*placed, shown, input);
    text.depth = depth_of(scene, index - 1, input.lengths);
    const bool shared = shown.shown == Shown::built;
    auto entry = std::ranges::find_if(entries, [&](const Entry& e) {
      return shared && e.shared && e.text == text && has_room_for(e, index, input.width);
    });
    if (entry == entries.end()) entry = entries.insert(entry, Entry{{}, {}, std::move(text), shared});
    entry->numbers.push_back(index);
    entry->names.push_back(placed->name.empty() ? "Unnamed piece" : placed->name);
  }
  return entries;
}

/// All names where they go on two lines, or differ in their number alone; else the first and how many more.
std::string names_of(const Entry& entry, double width) {
  const auto is_like_first = [&](const std::string& name) { return differ_in_number(entry.names.front(), name); };
  if (entry.names.size() > 1 && std::ranges::all_of(entry.names, is_like_first)) return print_names(entry.names);
  std::string all = entry.names.front();
  for (std::size_t i = 1; i < entry.names.size(); ++i) all += "; " + entry.names[i];  // names have commas
  if (entry.names.size() < 3 || text_height(all, table_bold, width, 3) <= text_height("A\nA", table_bold, width) + 0.01)
    return all;
  return entry.names.front() + " and " + std::to_string(entry.names.size() - 1) + " more alike";
}

Row name_row(const std::string& name, const std::string& number, double indent, double width) {
  const double height = wrapped(name, table_bold, width - indent);
  return {height + 0.4, [=](Marks& marks, const Rect& at) {
            if (!number.empty())
              add_ring(marks, Part::key, {at.x + ring_half_width(number), at.y + capital_middle(table_bold)}, number);
            marks.push_back(text_mark(Part::key, {at.x + indent, at.y, at.width - indent, height}, name, table_bold));
          }};
}

/// Size and counts on one line where both go on it, otherwise on two; the opening on its own.
std::vector<Row> description_rows(const Description& text, bool of_several, double width) {
  std::vector<std::string> lines{text.size};
  const std::string both = text.size + ", " + text.counts + (of_several ? " each" : "");
  if (!text.counts.empty()) {
    if (text_width(both, table_quiet) <= width)
      lines.back() = both;
    else
      lines.push_back(text.counts + (of_several ? " each" : ""));
  }
  for (const std::string& line : {text.opening, text.beneath, text.depth})
    if (!line.empty()) lines.push_back(line);
  std::vector<Row> rows;
  for (const std::string& line : lines)
    if (!line.empty()) rows.push_back(paragraph(Part::key, line, table_quiet, width, &line == &lines.back() ? 1 : 0.4));
  return rows;
}

Row slot_row(const SlotLine& line, std::size_t pieces, double width) {
  constexpr double before = swatch_room + letter_room;
  const double height = wrapped(line.name, table_body, width - before - count_room);
  const std::string count = (pieces > 1 ? std::to_string(pieces) + " × " : "") + std::to_string(line.balloons);
  return {height + below(height), [=](Marks& marks, const Rect& at) {
            const double x = at.x + swatch_room, room = at.width - before - count_room;
            add_swatch(marks, Part::key, at.x, at.y, line.colour);
            marks.push_back(text_mark(Part::key, {x, at.y, letter_room, line_height}, line.letter, table_bold));
            marks.push_back(text_mark(Part::key, {x + letter_room, at.y, room, height}, line.name, table_body));
            const Rect at_right{at.right() - count_room, at.y, count_room, line_height};
            marks.push_back(text_mark(Part::key, at_right, count, table_figures));
          }};
}

Block block_of(const Entry& entry, bool numbered, double width) {
  const std::string number = numbered ? print_numbers(entry.numbers) : "";
  const double indent = number.empty() ? 0 : std::max(swatch_room, 2 * ring_half_width(number) + 1.6);
  const std::string names = names_of(entry, width - indent);
  Block block;
  block.head.push_back(name_row(names, number, indent, width));
  for (Row& row : description_rows(entry.text, entry.names.size() > 1, width)) block.head.push_back(std::move(row));
  block.head.push_back(rule(Part::key, 0.6, 1.8));
  block.head_again = {name_row(names + continued, number, indent, width), rule(Part::key, 0.6, 1.8)};
  for (const SlotLine& line : entry.text.slots) block.rows.push_back(slot_row(line, entry.names.size(), width));
  if (!entry.text.note.empty()) block.rows.push_back(paragraph(Part::key, entry.text.note, table_quiet, width, 1.2));
  return block;
}

}  // namespace

std::string print_numbers(const std::vector<std::size_t>& numbers) {
  std::string text;
  for (std::size_t i = 0; i < numbers.size();) {
    std::size_t last = i;
    while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
    if (last < i + 2) last = i;  // two are no range
    text += (text.empty() ? "" : ", ") + std::to_string(numbers[i]);
    if (last > i) text += "–" + std::to_string(numbers[last]);
    i = last + 1;
  }
  return text;
}

std::vector<Block> key_blocks(const Area& area, const Scene& scene, const TableInput& input) {
  std::vector<Block> blocks;
  for (const Entry& entry : entries_in(area, scene, input))
    blocks.push_back(block_of(entry, scene.pieces.size() > 1, input.width));
  return blocks;
}

Block anchor_block(const Scene& scene, double width) {
  constexpr std::pair<AnchorKind, const char*> kinds[] = {{AnchorKind::stake, "stake"},
                                                          {AnchorKind::dead_weight, "dead weight"},
                                                          {AnchorKind::structure, "tied to what stands there"}};
  Block block{{}, {}, {}, 5, false};
  bool leaves = false;
  for (const auto& [kind, name] : kinds) {
    std::size_t lines = 0;
    for (const SceneItem& item : scene.items)
      if (const auto* line = std::get_if<SceneLine>(&item.shape); line != nullptr && line->anchor == kind)
        ++lines, leaves = leaves || !line->in_plane;
    if (lines == 0) continue;
    block.rows.push_back({line_height + 1.2, [=, k = kind, text = std::string(name)](Marks& marks, const Rect& at) {
                            add_anchor_mark(marks, k, {at.x + 1.9, at.y + capital_middle(table_body)});
                            const Rect box{at.x + swatch_room, at.y, at.width - swatch_room, line_height};
                            marks.push_back(text_mark(Part::key, box, text, table_body));
                          }});
  }
  if (block.rows.empty()) return block;
  block.head = {paragraph(Part::key, "Securing lines", table_bold, width, 0.4)};
  if (leaves)
    block.head.push_back(paragraph(Part::key, "dashed: they run out in front or behind", table_quiet, width, 1));
  block.head.push_back(rule(Part::key, 0.6, 1.8));
  block.head_again = block.head;
  return block;
}

Block far_off_block(const Scene& scene, const TableInput& input) {
  Block block{{}, {}, {}, 7, false};
  const auto head = [&](const std::string& text) {
    return std::vector<Row>{heading_row(Part::key, text, input.width), rule(Part::key, 0.2, 1.8)};
  };
  block.head = head("Beyond this drawing"), block.head_again = head("Beyond this drawing" + std::string(continued));
  for (const SceneFarOff& thing : scene.far_off) {
    const std::string text = (thing.name.empty() ? "Unnamed structure or walkway" : thing.name) + ": " +
                             print_length(std::abs(thing.beyond_m), input.lengths) + " further to the " +
                             (thing.beyond_m < 0 ? "left" : "right");
    block.rows.push_back(paragraph(Part::key, text, table_quiet, input.width, 1.2));
  }
  return block;
}

}  // namespace quadrille
