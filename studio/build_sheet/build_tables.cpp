#include "studio/build_sheet/build_tables.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "sdk/pattern.hpp"
#include "studio/build_sheet/build_chart.hpp"
#include "studio/build_sheet/build_picture.hpp"
#include "studio/build_sheet/build_rows.hpp"
#include "studio/drawing/dimension.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/making/spine_place.hpp"
#include "studio/model/lengths.hpp"
#include "studio/model/one_unit.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/piece_key.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/standing/checklist.hpp"
#include "studio/takeoff/placing.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

/// The number of a piece in its ring, and its name beside it.
Row name_row(const BuildPiece& piece, bool numbered, double width) {
  const std::string number = numbered ? std::to_string(piece.number) : "";
  const double indent = number.empty() ? 0 : std::max(6.0, 2 * ring_half_width(number) + 1.6);
  const std::string area = piece.area->name.empty() ? "Unnamed area" : piece.area->name;
  const std::string text = piece.name() + ", " + area;
  const double height = wrapped(text, table_bold, width - indent);
  return {height + below(height), [=](Marks& marks, const Rect& at) {
            if (!number.empty())
              add_ring(marks, Part::key, {at.x + ring_half_width(number), at.y + capital_middle(table_bold)}, number);
            marks.push_back(text_mark(Part::key, {at.x + indent, at.y, at.width - indent, height}, text, table_bold));
          }};
}

/// How one finds what the burst balloon was. `only_way`: on all these sheets; `start`: where lines are counted from.
std::string finding_step(const BuildSubject& subject, bool only_way, const std::string& start) {
  if (subject.chart.rings)
    return std::string(only_way ? "Find" : "Where the piece's sheet has a cluster chart, find") +
           " the number of the balloon's cluster on the picture \"Clusters\": count on from the nearest number. The "
           "cluster chart has its colours by place, the balloons beside it tell which one is missing.";
  return std::string(only_way ? "Find" : "Where the piece's sheet goes stretch by stretch, find") +
         " the balloon's stretch by measuring along the line from " + start +
         ", and its name on the picture of that stretch, which ends in its colour. The list beneath has its size.";
}

}  // namespace

Block pieces_block(const BuildSubject& subject, const Setting& setting, double width) {
  const std::size_t count = subject.pieces.size();
  const LengthStyle lengths = lengths_in(setting.units);
  Block block =
      table_block(count == 1 ? "What is made by this sheet" : "Make " + std::to_string(count) + " of these", {}, width);
  for (const BuildPiece& piece : subject.pieces)
    block.rows.push_back(name_row(piece, piece.area->pieces.size() > 1, width));
  const Box& box = subject.built->box;
  std::string text = print_length(box.width_m(), lengths) + " wide, " + print_length(box.most.z(), lengths) +
                     " high over the floor, " + print_length(box.depth_m(), lengths) + " deep";
  if (const PieceCount* counted = subject.pieces.front().count; counted != nullptr) {
    if (counted->clusters > 0) text += ", " + std::to_string(counted->clusters) + "\u00a0clusters";
    text += ", " + std::to_string(counted->balloons) + "\u00a0balloons";
  }
  block.rows.push_back(text_row(text + (count > 1 ? " each." : "."), width));
  const std::string& note = subject.placed().note;
  if (!note.empty()) block.rows.push_back(paragraph(Part::key, note, table_quiet, width, 1.2));
  return block;
}

std::vector<Block> part_blocks(const BuildSubject& subject, const Setting& setting, double width) {
  const PieceCount* counted = subject.pieces.front().count;
  if (counted == nullptr || counted->supplies.empty()) return {};
  const LengthStyle lengths = lengths_in(setting.units);
  Block block = table_block(subject.pieces.size() > 1 ? "Parts for each" : "Parts", {}, width);
  block.may_split = true;
  const auto find = [&](std::string_view key) {
    const auto found = std::ranges::find(counted->supplies, key, &SupplyLine::key);
    return found == counted->supplies.end() ? nullptr : &*found;
  };
  // The ballast, its containers and what fills them are one thing.
  const SupplyLine* const containers = find(ballast_container_key);
  const auto fills = [](const SupplyLine& supply) {
    return supply.key == "ballast-water" || supply.key == "ballast-sand";
  };
  for (const SupplyLine& supply : counted->supplies) {
    if (containers != nullptr && (supply.key == ballast_key || fills(supply))) continue;
    std::string name = supply.name.empty() ? supply.key : in_one_unit(supply.name, setting.units);
    if (&supply == containers) {
      for (const SupplyLine& filling : counted->supplies)
        if (fills(filling))
          name += ", in all filled with " + print_quantity(filling, lengths) +
                  (filling.unit == "l" ? " of water" : " of sand");
      if (const SupplyLine* mass = find(ballast_key)) name += " (" + print_quantity(*mass, lengths) + " of ballast)";
    }
    block.rows.push_back(cells_row({{name}, {print_quantity(supply, lengths), 22, Across::right}}, width));
  }
  return {block};
}

std::vector<Block> caution_blocks(const BuildSubject& subject, const Setting& setting, double width) {
  Block block = table_block("Mind this", {}, width);
  block.may_split = true;
  std::set<std::string> said;
  const auto say = [&](const std::string& text) {
    if (said.insert(text).second) block.rows.push_back(text_row(in_one_unit(text, setting.units), width));
  };
  for (const Message& message : subject.piece().messages)
    if (message.severity == Severity::warning) say(message.text);
  for (const AnchoringRule& rule : subject.piece().anchoring)
    if (holds(rule.when, subject.area())) {
      const std::string undrawn = lines_not_drawn(rule, subject.placed(), subject.piece());
      say(rule.text + (undrawn.empty() ? "" : " " + undrawn) + " " + rule.reason);
    }
  if (block.rows.empty()) return {};
  return {block};
}

Block sizes_block(const BuildSubject& subject, const Setting& setting, double width) {
  const LengthStyle lengths = lengths_in(setting.units);
  const SheetInput& input = setting.input;
  const std::vector<RowCell> captions{{"", 9},
                                      {"Colour"},
                                      {"Size", 11, Across::right},
                                      {"Blow to", 14, Across::right},
                                      {subject.pieces.size() > 1 ? "Each" : "Count", 8, Across::right},
                                      {"Spares", 11, Across::right}};
  Block block = table_block("Balloons and sizes", captions, width);
  std::set<std::pair<std::string, double>> bags;
  for (const LastBuilt::Count& count : subject.counts) {
    const Colour* colour = slot_colour(subject.placed(), count.slot, input.palettes);
    const ColourReference reference =
        count.slot < subject.placed().colours.size() ? subject.placed().colours[count.slot] : ColourReference{};
    const auto bag = std::ranges::find_if(input.count.bags, [&](const BalloonBag& b) {
      return b.colour == reference && b.nominal_in == count.nominal_in;
    });
    std::string spares = bag == input.count.bags.end() ? "–" : std::to_string(bag->spares);
    if (!bags.insert({reference.palette + "/" + reference.colour, count.nominal_in}).second) spares = "\"";
    const std::string letter = letter_of(count.slot);
    Row row = cells_row({{"", 9},
                         {colour ? colour->name : "no colour"},
                         {print_nominal(count.nominal_in), 11, Across::right},
                         {print_sizer(subject, count.nominal_in, count.inflated_m, lengths), 14, Across::right},
                         {std::to_string(count.balloons), 8, Across::right},
                         {spares, 11, Across::right}},
                        width);
    const auto text = row.draw;
    row.draw = [text, colour, letter](Marks& marks, const Rect& at) {
      add_swatch(marks, Part::key, at.x, at.y, colour);
      marks.push_back(text_mark(Part::key, {at.x + 5, at.y, 4, line_height}, letter, table_bold));
      text(marks, at);
    };
    block.rows.push_back(std::move(row));
  }
  block.rows.push_back(
      text_row("Spares are those of the whole event in that colour and size: they travel in the common "
               "box. \"Blow to\" is the sizer's figure; the gauge at the end of these sheets checks the "
               "sizer.",
               width, 1.2, ink_quiet));
  block.rows.back().with_before = true;
  std::string there;
  for (const SizerLine& size : subject.sizes) {
    const std::string blown = print_inflated(size.sizer_m, lengths),
                      measures = print_inflated(size.inflated_m, lengths);
    const std::string both = measures + " where blown to " + blown;
    if (blown != measures && there.find(both) == std::string::npos) there += (there.empty() ? "" : ", ") + both;
  }
  if (!there.empty())
    block.rows.push_back(text_row("At the event's temperature balloons measure " + there + ".", width, 1.2, ink_quiet));
  return block;
}

Block mending_block(std::span<const BuildSubject> subjects, Units units, double width) {
  Block block =
      table_block(std::string("A balloon has burst") + (subjects.size() > 1 ? ", in any piece" : ""), {}, width);
  int number = 0;
  const auto step = [&](const std::string& text) { block.rows.push_back(step_row(++number, text, width)); };
  const std::string start = subjects.size() == 1 ? print_start(subjects.front()) : "the end that the sheet names";
  const auto has_chart = [](const BuildSubject& subject) { return subject.chart.rings; };
  for (const bool chart : {true, false}) {
    const auto first = std::ranges::find(subjects, chart, has_chart);
    if (first == subjects.end()) continue;
    const bool only_way = std::ranges::count(subjects, chart, has_chart) == std::ssize(subjects);
    step(finding_step(*first, only_way, start));
  }
  step(
      "Take one of that colour and size from the common box and blow it to the sizer's figure in \"Balloons and "
      "sizes\", or in \"Sizes of the clusters\" where the piece has that list.");
  step(
      "Pull the scraps of the burst one out of its cluster and leave its neck twisted in if it sits fast: it holds the "
      "others. Pocket every scrap: children choke on latex.");
  step(
      "Ease the new one in between its neighbours from the front, tail first, stretch its neck round the twisted necks "
      "on the rod or line twice and tuck it under the turn. Where fingers do not reach, tie a thin balloon or " +
      std::string(units == Units::feet ? "a foot" : "30 cm") +
      " of line to the neck beforehand and knot that round the cluster.");
  if (std::ranges::any_of(subjects, [](const BuildSubject& subject) { return !subject.loose.empty(); }))
    step(
        "Fillers, toppers and collars: two glue dots where it touches its neighbours, or its neck under a "
        "neighbour's.");
  step("Turn it till it sits in its crease, and look from the front whether the colours run on.");
  return block;
}

}  // namespace quadrille
