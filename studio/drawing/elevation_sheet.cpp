// The elevation sheet: one page per area with its drawing and key, and the tables of the whole event.
#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "studio/drawing/area_layout.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/drawing/elevation_panel.hpp"
#include "studio/drawing/flow.hpp"
#include "studio/drawing/page_frame.hpp"
#include "studio/drawing/scale.hpp"
#include "studio/drawing/sheet.hpp"
#include "studio/drawing/sheet_style.hpp"

namespace quadrille {
namespace {

/// A page whose title block is still to come, when the number of sheets is known.
struct Draft {
  Page page;
  FrameText text;
};

/// The pages made so far, all turned the same way.
struct Document {
  const Setting& setting;
  bool landscape = true;
  std::vector<Draft> drafts = {};
  Page blank() const { return blank_page(setting.paper, landscape); }
  Rect content() const { return content_of(blank(), setting.input.event); }
};

std::string name_of(const Area& area) { return area.name.empty() ? "Unnamed area" : area.name; }

bool is_drawable(const Scene& scene) {
  constexpr double most_m = 1e5;
  const Extent& e = scene.extent;
  return std::abs(e.left) < most_m && std::abs(e.right) < most_m && std::abs(e.floor) < most_m &&
         std::abs(e.top) < most_m;
}

/// Full pages of tables, from `place` on.
void add_table_pages(Document& document, const std::vector<Block>& blocks, FlowPlace place, std::size_t columns,
                     const std::string& name, FrameText text) {
  text.scale.clear();
  while (place.block < blocks.size()) {
    Draft draft{document.blank(), text};
    draft.page.name = name;
    const FlowPlace next = flow(blocks, place, columns_in(document.content(), columns), &draft.page.marks);
    document.drafts.push_back(std::move(draft));
    if (next.block == place.block && next.row == place.row) return;
    place = next;
  }
}

std::size_t columns_for(const Document& document, double width) {
  return std::max<std::size_t>(1, static_cast<std::size_t>((document.content().width + 8) / (width + 8) + 1e-6));
}

void add_note_page(Document& document, const std::string& heading, const std::string& note) {
  Draft draft{document.blank(), {heading, heading, "", 1, 1}};
  const Rect content = document.content();
  const Rect box{content.x + content.width * 0.15, content.y + content.height * 0.4, content.width * 0.7, 16};
  draft.page.name = heading;
  draft.page.marks.push_back(
      text_mark(Part::note, box, note, type(pt_heading, ink_quiet, Face::regular, Across::centre, Down::middle)));
  document.drafts.push_back(std::move(draft));
}

void add_drawing(Document& document, const DrawnArea& drawn) {
  const Setting& setting = document.setting;
  Layout layout = layout_of(setting, drawn, document.landscape);
  const std::string name = name_of(drawn.area);
  Draft draft{std::move(layout.page), {name, name, print_scale(layout.plan.scale, setting.units), 1, 1}};
  draft.page.name = name;
  draft.page.scale = layout.plan.scale;
  draft.page.marks = panel_marks(drawn.scene, layout.plan, setting.options.letters);
  const FlowPlace rest = flow(layout.blocks, {}, layout.columns, &draft.page.marks);
  document.drafts.push_back(std::move(draft));
  const std::size_t columns = columns_for(document, layout.columns.front().width);
  add_table_pages(document, layout.blocks, rest, columns, name, {name + ", continued", name, "", 1, 1});
}

void add_area(Document& document, const Area& area, const std::vector<DrawnArea>& drawn) {
  const auto found = std::ranges::find(drawn, &area, [](const DrawnArea& d) { return &d.area; });
  if (found != drawn.end()) return add_drawing(document, *found);
  const bool empty = std::ranges::all_of(area.pieces, [](const auto& piece) { return piece->hidden; });
  add_note_page(document, name_of(area),
                empty ? "There are no pieces in this area yet."
                      : "A piece of this area stands more than 100 km away, or is larger than that: it cannot be "
                        "drawn. Check places and sizes.");
}

std::vector<Page> finished(Document document) {
  std::vector<Page> pages;
  const int sheets = static_cast<int>(document.drafts.size());
  for (Draft& draft : document.drafts) {
    draft.text.sheet = static_cast<int>(pages.size()) + 1, draft.text.sheets = sheets;
    add_frame(draft.page, document.setting.input.event, draft.text);
    pages.push_back(std::move(draft.page));
  }
  return pages;
}

}  // namespace

std::vector<Page> elevation_sheet(const SheetInput& input, const SheetOptions& options) {
  const Event& event = input.event;
  const Setting setting{input, options, options.units.value_or(event.units),
                        options.paper.value_or(usual_paper(event.units))};
  std::vector<const Area*> wanted;
  for (const auto& area : event.areas)
    if (!options.area || *options.area == area->id || *options.area == area->name) wanted.push_back(&*area);
  std::vector<DrawnArea> drawn;
  for (const Area* area : wanted) {
    Scene scene = scene_of(*area, input.built, input.palettes);
    if (!scene.pieces.empty() && is_drawable(scene)) drawn.push_back({*area, std::move(scene)});
  }
  Document document{setting, is_better_lying(setting, drawn)};
  if (event.areas.empty() && !options.area) add_note_page(document, "No areas", "This event has no areas yet.");
  for (const Area* area : wanted) add_area(document, *area, drawn);
  if (event.areas.size() > 1 && !options.area && input.count.total_balloons > 0) {
    const std::size_t columns = columns_for(document, 72);
    const double width = columns_in(document.content(), columns).front().width;
    add_table_pages(document, whole_event(setting, width, " in all areas"), {}, columns, "All areas",
                    {"All areas", "All areas", "", 1, 1});
  }
  return finished(std::move(document));
}

}  // namespace quadrille
