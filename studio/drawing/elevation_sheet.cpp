// The elevation sheet: one page per area with its drawing and key, and the tables of the whole event.
#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "studio/drawing/elevation.hpp"
#include "studio/drawing/elevation_panel.hpp"
#include "studio/drawing/flow.hpp"
#include "studio/drawing/page_frame.hpp"
#include "studio/drawing/scale.hpp"
#include "studio/drawing/sheet.hpp"
#include "studio/drawing/sheet_style.hpp"
#include "studio/drawing/tables.hpp"

namespace quadrille {
namespace {

struct Setting {
  const SheetInput& input;
  const SheetOptions& options;
  Units units;
  LengthStyle lengths() const { return units == Units::feet ? LengthStyle::feet_inches : LengthStyle::metres; }
  TableInput table(double width) const { return {input.count, input.palettes, lengths(), width}; }
};

/// A page whose title block is still to come, when the number of sheets is known.
struct Draft {
  Page page;
  FrameText text;
};

std::string name_of(const Area& area) { return area.name.empty() ? "Unnamed area" : area.name; }

bool is_drawable(const Scene& scene) {
  constexpr double most_m = 1e5;
  const Extent& e = scene.extent;
  return std::abs(e.left) < most_m && std::abs(e.right) < most_m && std::abs(e.floor) < most_m &&
         std::abs(e.top) < most_m;
}

std::vector<Block> whole_event(const Setting& setting, double width, const std::string& where) {
  std::vector<Block> blocks{balloon_block("Balloons" + where, setting.table(width))};
  if (!setting.input.count.supplies.empty()) {
    blocks.push_back(supply_block("Supplies" + where, setting.table(width)));
    blocks.back().begins_column = !where.empty();  // a page of its own has room for both side by side
  }
  return blocks;
}

/// What stands beside or beneath an area's drawing. The tables of the whole event are among it where this is all of it.
std::vector<Block> blocks_of(const Setting& setting, const Area& area, const Scene& scene, double width) {
  std::vector<Block> blocks;
  std::size_t index = 0;
  for (const auto& piece : area.pieces) {
    if (piece->hidden) continue;
    blocks.push_back(key_block(*piece, scene.pieces[index], piece_number(scene, index), setting.table(width)));
    ++index;
  }
  if (setting.input.event.areas.size() == 1 && setting.input.count.total_balloons > 0)
    for (Block& block : whole_event(setting, width, "")) blocks.push_back(std::move(block));
  return blocks;
}

/// One way to lay an area on paper.
struct Layout {
  Page page;
  std::vector<Block> blocks;
  std::vector<Rect> columns;
  PanelPlan plan;
};

Layout landscape_layout(const Setting& setting, const Area& area, const Scene& scene) {
  Layout layout{blank_page(setting.options.paper, true), {}, {}, {}};
  const Rect content = content_of(layout.page, setting.input.event);
  const double column = std::max(72.0, content.width * 0.26);
  layout.blocks = blocks_of(setting, area, scene, column);
  layout.columns = {{content.right() - column, content.y, column, content.height}};
  layout.plan = plan_panel(scene, {content.x, content.y, content.width - column - 5, content.height}, setting.units);
  return layout;
}

Layout portrait_layout(const Setting& setting, const Area& area, const Scene& scene) {
  Layout layout{blank_page(setting.options.paper, false), {}, {}, {}};
  const Rect content = content_of(layout.page, setting.input.event);
  layout.blocks = blocks_of(setting, area, scene, columns_in(content, 2).front().width);
  const double tables = layout.blocks.empty() ? 0 : flow_height(layout.blocks, {}, 2, content.height * 0.45);
  const double gap = tables > 0 ? 6 : 0;
  layout.columns = columns_in({content.x, content.bottom() - tables, content.width, tables}, 2);
  layout.plan = plan_panel(scene, {content.x, content.y, content.width, content.height - tables - gap}, setting.units);
  return layout;
}

bool fits(const Layout& layout) {
  return flow(layout.blocks, {}, layout.columns, nullptr).block == layout.blocks.size();
}

/// The larger drawing wins; then the one that needs no second page; then the paper that is turned as the scene is.
Layout best_layout(const Setting& setting, const Area& area, const Scene& scene) {
  Layout landscape = landscape_layout(setting, area, scene), portrait = portrait_layout(setting, area, scene);
  if (landscape.plan.scale != portrait.plan.scale)
    return landscape.plan.scale < portrait.plan.scale ? std::move(landscape) : std::move(portrait);
  if (fits(landscape) != fits(portrait)) return fits(landscape) ? std::move(landscape) : std::move(portrait);
  return scene.extent.width() >= scene.extent.height() ? std::move(landscape) : std::move(portrait);
}

/// Full pages of tables, from `place` on.
void add_table_pages(const Setting& setting, const std::vector<Block>& blocks, FlowPlace place, std::size_t count,
                     const Page& like, const FrameText& text, std::vector<Draft>& drafts) {
  while (place.block < blocks.size()) {
    Draft draft{like, text};
    draft.page.marks.clear();
    draft.page.scale = 0;
    draft.text.scale.clear();
    const FlowPlace next =
        flow(blocks, place, columns_in(content_of(draft.page, setting.input.event), count), &draft.page.marks);
    drafts.push_back(std::move(draft));
    if (next.block == place.block && next.row == place.row) return;
    place = next;
  }
}

std::size_t columns_for(const Page& page, double width) {
  const double room = page.width - 2 * page.margin;
  return std::max<std::size_t>(1, static_cast<std::size_t>((room + 8) / (width + 8) + 1e-6));
}

void add_note_page(const Setting& setting, const std::string& heading, const std::string& note,
                   std::vector<Draft>& drafts) {
  Draft draft{blank_page(setting.options.paper, true), {heading, heading, "", 1, 1}};
  const Rect content = content_of(draft.page, setting.input.event);
  const Rect box{content.x + content.width * 0.15, content.y + content.height * 0.4, content.width * 0.7, 16};
  draft.page.name = heading;
  draft.page.marks.push_back(
      text_mark(Part::note, box, note, type(pt_heading, ink_quiet, Face::regular, Across::centre, Down::middle)));
  drafts.push_back(std::move(draft));
}

void add_area(const Setting& setting, const Area& area, std::vector<Draft>& drafts) {
  const Scene scene = scene_of(area, setting.input.built, setting.input.palettes);
  if (scene.pieces.empty()) {
    add_note_page(setting, name_of(area), "There are no pieces in this area yet.", drafts);
    return;
  }
  if (!is_drawable(scene)) {
    add_note_page(setting, name_of(area),
                  "A piece of this area stands more than 100 km away, or is larger than that: it cannot be drawn. "
                  "Check places and sizes.",
                  drafts);
    return;
  }
  Layout layout = best_layout(setting, area, scene);
  Draft draft{std::move(layout.page),
              {name_of(area), name_of(area), print_scale(layout.plan.scale, setting.units), 1, 1}};
  draft.page.name = name_of(area);
  draft.page.scale = layout.plan.scale;
  draft.page.marks = panel_marks(scene, layout.plan, setting.options.letters);
  const FlowPlace rest = flow(layout.blocks, {}, layout.columns, &draft.page.marks);
  const Page like = draft.page;
  FrameText text = draft.text;
  drafts.push_back(std::move(draft));
  text.heading += ", continued";
  const double width = layout.columns.front().width;
  add_table_pages(setting, layout.blocks, rest, columns_for(like, width), like, text, drafts);
}

bool is_wanted(const SheetOptions& options, const Area& area) {
  return !options.area || *options.area == area.id || *options.area == area.name;
}

std::vector<Page> finished(const Setting& setting, std::vector<Draft> drafts) {
  std::vector<Page> pages;
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    drafts[i].text.sheet = static_cast<int>(i + 1), drafts[i].text.sheets = static_cast<int>(drafts.size());
    add_frame(drafts[i].page, setting.input.event, drafts[i].text);
    pages.push_back(std::move(drafts[i].page));
  }
  return pages;
}

}  // namespace

std::vector<Page> elevation_sheet(const SheetInput& input, const SheetOptions& options) {
  const Setting setting{input, options, options.units.value_or(input.event.units)};
  std::vector<Draft> drafts;
  if (input.event.areas.empty() && !options.area)
    add_note_page(setting, "No areas", "This event has no areas yet.", drafts);
  for (const auto& area : input.event.areas)
    if (is_wanted(options, *area)) add_area(setting, *area, drafts);
  if (input.event.areas.size() > 1 && !options.area && input.count.total_balloons > 0) {
    Page page = blank_page(options.paper, true);
    page.name = "All areas";
    const double width = 72.0;
    const std::size_t count = columns_for(page, width);
    const double column = columns_in(content_of(page, input.event), count).front().width;
    add_table_pages(setting, whole_event(setting, column, " in all areas"), {}, count, page,
                    {"All areas", "All areas", "", 1, 1}, drafts);
  }
  return finished(setting, std::move(drafts));
}

}  // namespace quadrille
