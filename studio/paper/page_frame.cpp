// Heading, title block, caution.
#include "studio/paper/page_frame.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "sdk/number.hpp"
#include "studio/model/calendar.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

constexpr double block_height = 14.5, foot_height = 4.6, gap = 4;
constexpr const char* caution =
    "Planning drawing. Wind and anchoring must be checked for the place and the day before anything is put up.";

double title_width(const Page& page) { return (page.width - 2 * page.margin) * 0.68; }

std::string title_of(const Event& event) { return event.title.empty() ? "Untitled event" : event.title; }

TextStyle title_style() { return type(pt_title, ink_text, Face::bold, Across::left, Down::bottom); }

double heading_height(const Page& page, const Event& event) {
  return std::max(8.5, text_height(title_of(event), title_style(), title_width(page), 2));
}

void add_heading(Page& page, const Event& event, const std::string& heading) {
  const double height = heading_height(page, event), width = page.width - 2 * page.margin;
  const double left = std::min(title_width(page), text_width(title_of(event), title_style())), y = page.margin;
  page.marks.push_back(text_mark(Part::heading, {page.margin, y, left, height}, title_of(event), title_style()));
  const TextStyle style = type(pt_heading, ink_quiet, Face::regular, Across::right, Down::bottom);
  const double beside = width - left - 4;
  const double own = std::min(text_height(heading, style, beside, 2), height);
  page.marks.push_back(text_mark(
      Part::heading, {page.margin + left + 4, std::max(y, y + height - own - 0.7), beside, own}, heading, style));
  page.marks.push_back(line_mark(Part::heading, {page.margin, y + height + 1.6},
                                 {page.width - page.margin, y + height + 1.6}, mm_strong));
}

struct Cell {
  std::string caption;
  std::string text;
  double share;
};

void add_cell(Page& page, const Cell& cell, double x, double y, double width) {
  page.marks.push_back(
      text_mark(Part::title_block, {x, y + 1.7, width, 3.6}, cell.caption, type(pt_caption, ink_quiet)));
  page.marks.push_back(text_mark(Part::title_block, {x, y + 5.3, width, block_height - 5.6},
                                 cell.text.empty() ? "–" : cell.text, type(pt_body, ink_text)));
}

void add_title_block(Page& page, const Event& event, const FrameText& text) {
  const double top = page.height - page.margin - foot_height - block_height, width = page.width - 2 * page.margin;
  const std::array<Cell, 6> cells{
      {{"Client", event.client, 0.20},
       {"Venue", event.venue, 0.21},
       {"Date", print_date(event.date), 0.17},
       {"Area", text.area, 0.17},
       {"Scale", text.scale.empty() ? "no drawing" : text.scale, 0.15},
       {text.kind, std::to_string(text.sheet) + " of " + std::to_string(text.sheets), 0.10}}};
  page.marks.push_back(line_mark(Part::title_block, {page.margin, top}, {page.width - page.margin, top}, mm_strong));
  double x = page.margin;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const double room = cells[i].share * width, indent = i == 0 ? 0 : 2.2;
    if (i > 0)
      page.marks.push_back(
          line_mark(Part::title_block, {x, top + 2}, {x, top + block_height - 1.6}, mm_hair, ink_rule));
    add_cell(page, cells[i], x + indent, top, room - indent - 2);
    x += room;
  }
  const double foot = top + block_height;
  page.marks.push_back(
      line_mark(Part::title_block, {page.margin, foot}, {page.width - page.margin, foot}, mm_hair, ink_rule));
  const double credit = 36, line = foot_height - 0.8;
  page.marks.push_back(
      text_mark(Part::note, {page.margin, foot + 0.8, width - credit - 4, line}, caution, type(pt_caption, ink_quiet)));
  page.marks.push_back(text_mark(Part::note, {page.width - page.margin - credit, foot + 0.8, credit, line},
                                 "Drawn with Quadrille", type(pt_caption, ink_quiet, Face::regular, Across::right)));
}

}  // namespace

Page blank_page(Paper paper, bool landscape) {
  std::pair<double, double> size{210, 297};
  if (paper == Paper::letter) size = {215.9, 279.4};
  if (paper == Paper::a3) size = {297, 420};
  if (paper == Paper::tabloid) size = {279.4, 431.8};
  if (landscape) std::swap(size.first, size.second);
  Page page;
  page.width = size.first, page.height = size.second;
  page.margin = paper == Paper::a3 || paper == Paper::tabloid ? 15 : 12;
  return page;
}

Rect content_of(const Page& page, const Event& event) {
  const double top = page.margin + heading_height(page, event) + 1.6 + gap;
  const double bottom = page.height - page.margin - foot_height - block_height - gap;
  return {page.margin, top, page.width - 2 * page.margin, bottom - top};
}

void add_frame(Page& page, const Event& event, const FrameText& text) {
  add_heading(page, event, text.heading);
  add_title_block(page, event, text);
}

}  // namespace quadrille
