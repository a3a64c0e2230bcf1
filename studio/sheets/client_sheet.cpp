#include "studio/sheets/client_sheet.hpp"

#include <algorithm>
#include <iterator>
#include <sstream>
#include <string>
#include <utility>

#include "studio/build_sheet/build_rows.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/paint/style.hpp"
#include "studio/paper/document.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/sheets/alike_names.hpp"
#include "studio/sheets/client_needs.hpp"
#include "studio/sheets/client_price.hpp"
#include "studio/sheets/client_rows.hpp"
#include "studio/takeoff/colour_totals.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

constexpr double least_column = 72, count_room = 16;

/// Who makes it: the house's name and how it is reached, line by line.
std::vector<Block> maker_blocks(const SheetInput& input, double width) {
  if (input.house == nullptr || input.house->name.empty()) return {};
  Block block = titled_block("Your decorator", width);
  block.rows.push_back(cells_row({{input.house->name, 0, Across::left, Face::bold}}, width));
  std::istringstream lines(input.house->contact);
  for (std::string line; std::getline(lines, line);)
    if (!line.empty() && line != input.house->name) block.rows.push_back(cells_row({{line, 0}}, width));
  return {std::move(block)};
}

/// All balloons by colour.
Block colours_block(const SheetInput& input, double width) {
  Block block = titled_block("Colours", width);
  for (const ColourTotal& total : colour_totals(input.count))
    block.rows.push_back(
        colour_row(find_colour(input.palettes, total.colour), total.name, std::to_string(total.used), width));
  return block;
}

std::string name_of(const PieceCount& piece) { return piece.name.empty() ? "Unnamed piece" : piece.name; }

/// Whether a client reads of both in one row: "Column 1, 2" with "2 × 37" balloons.
bool share_a_row(const PieceCount& one, const PieceCount& other) {
  return one.area == other.area && one.type == other.type && one.balloons == other.balloons &&
         print_state(one) == print_state(other) && differ_in_number(name_of(one), name_of(other));
}

/// Every piece that is drawn with its balloons, by area, and the sum; neighbours alike in one row.
Block pieces_block(const SheetInput& input, double width) {
  const auto row = [&](const std::string& text, const std::string& count, Face face) {
    return cells_row({{text, 0, Across::left, face}, {count, count_room, Across::right, face}}, width);
  };
  Block block = table_block("What you get", {{"", 0}, {"Balloons", count_room, Across::right}}, width);
  for (const auto& area : input.event.areas) {
    bool first = input.event.areas.size() > 1, under_name = false;
    const auto& pieces = input.count.pieces;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      const PieceCount& piece = pieces[i];
      if (piece.area != area->id) continue;
      if (std::exchange(first, false)) {
        block.rows.push_back(
            cells_row({{area->name.empty() ? "Unnamed area" : area->name, 0, Across::left, Face::bold}}, width));
        under_name = true;
      }
      std::vector<std::string> names{name_of(piece)};
      for (; i + 1 < pieces.size() && share_a_row(piece, pieces[i + 1]); ++i) names.push_back(name_of(pieces[i + 1]));
      const std::string state = print_state(piece),
                        times = names.size() > 1 ? std::to_string(names.size()) + " × " : "";
      block.rows.push_back(row(print_names(names) + (state.empty() ? "" : ", " + state),
                               times + std::to_string(piece.balloons), Face::regular));
      block.rows.back().with_before = std::exchange(under_name, false);
    }
  }
  block.rows.push_back(rule(Part::key, 0.4, 1.4));
  block.rows.back().with_before = true;
  block.rows.push_back(row("All balloons", std::to_string(input.count.total_balloons), Face::bold));
  block.rows.back().with_before = true;
  return block;
}

/// Lines to sign on.
Block agreed_block(const Event& event, double width) {
  Block block = titled_block("Agreed", width);
  block.with_before = true;
  block.rows.push_back(text_row(event.issued ? "As drawn and quoted here." : "As drawn here.", width));
  const std::string client = event.client.empty() ? "Client" : event.client;
  for (const std::string& caption : {client + ", date and signature", std::string("Decorator, date and signature")}) {
    block.rows.push_back(
        {17, [=](Marks& marks, const Rect& at) {
           const double y = at.y + 11;
           marks.push_back(line_mark(Part::key, {at.x, y}, {at.right(), y}, mm_line, ink_text));
           marks.push_back(text_mark(Part::key, {at.x, y + 1, at.width, 3.8}, caption, type(pt_caption, ink_quiet)));
         }});
    block.rows.back().with_before = true;
  }
  return block;
}

std::vector<Block> closing_blocks(const Setting& setting, const std::vector<const Area*>& areas, double width) {
  const SheetInput& input = setting.input;
  std::vector<Block> blocks;
  const auto append = [&](std::vector<Block> more) { std::move(more.begin(), more.end(), std::back_inserter(blocks)); };
  const bool whole = !setting.options.area;
  if (whole) append(maker_blocks(input, width));
  if (whole) append(price_blocks(input.event, width));
  if (whole && !input.count.pieces.empty()) blocks.push_back(pieces_block(input, width));
  if (whole && input.count.total_balloons > 0) blocks.push_back(colours_block(input, width));
  blocks.push_back(need_block(setting, areas, width));
  blocks.push_back(caution_block(setting, areas, width));
  if (whole) blocks.push_back(agreed_block(input.event, width));
  return blocks;
}

}  // namespace

std::vector<Page> client_sheet(const SheetInput& input, const SheetOptions& options) {
  const Setting setting{input, options, options.units.value_or(input.event.units),
                        options.paper.value_or(usual_paper(input.event.units)), false};
  const std::vector<const Area*> areas = wanted_areas(setting);
  if (areas.empty() && options.area) return {};
  SheetDocument document = area_document(setting, "Client sheet");
  const std::size_t columns = columns_for(document, least_column);
  const double width = columns_in(document.content(), columns).front().width;
  const std::string name = input.event.issued ? "Quote and agreement" : "What we agree";
  add_table_pages(document, closing_blocks(setting, areas, width), {}, columns, name,
                  {name, options.area ? areas.front()->name : "All areas", "", 1, 1});
  return finished(std::move(document));
}

}  // namespace quadrille
