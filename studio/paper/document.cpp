#include "studio/paper/document.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "studio/drawing/elevation.hpp"
#include "studio/drawing/scale.hpp"
#include "studio/paint/style.hpp"
#include "studio/paper/elevation_panel.hpp"

namespace quadrille {
namespace {

std::string name_of(const Area& area) { return area.name.empty() ? "Unnamed area" : area.name; }

bool is_drawable(const Scene& scene) {
  constexpr double most_m = 1e5;
  const Extent& e = scene.extent;
  return std::abs(e.left) < most_m && std::abs(e.right) < most_m && std::abs(e.floor) < most_m &&
         std::abs(e.top) < most_m;
}

void add_note_page(SheetDocument& document, const std::string& heading, const std::string& note) {
  SheetDraft draft{document.blank(), {heading, heading, "", 1, 1, document.kind}};
  const Rect content = document.content();
  const Rect box{content.x + content.width * 0.15, content.y + content.height * 0.4, content.width * 0.7, 16};
  draft.page.name = heading;
  draft.page.marks.push_back(
      text_mark(Part::note, box, note, type(pt_heading, ink_quiet, Face::regular, Across::centre, Down::middle)));
  document.drafts.push_back(std::move(draft));
}

void add_drawing(SheetDocument& document, const DrawnArea& drawn) {
  const Setting& setting = document.setting;
  Layout layout = layout_of(setting, drawn, document.landscape);
  const std::string name = name_of(drawn.area);
  SheetDraft draft{std::move(layout.page),
                   {name, name, print_scale(layout.plan.scale, setting.units), 1, 1, document.kind}};
  draft.page.name = name;
  draft.page.scale = layout.plan.scale;
  draft.page.marks = panel_marks(drawn.scene, layout.plan, setting.options.letters);
  const FlowPlace rest = flow(layout.blocks, {}, layout.columns, &draft.page.marks);
  document.drafts.push_back(std::move(draft));
  const std::size_t columns = columns_for(document, layout.columns.front().width);
  add_table_pages(document, layout.blocks, rest, columns, name, {name + ", continued", name, "", 1, 1});
}

void add_area(SheetDocument& document, const Area& area, const std::vector<DrawnArea>& drawn) {
  const auto found = std::ranges::find(drawn, &area, [](const DrawnArea& d) { return &d.area; });
  if (found != drawn.end()) return add_drawing(document, *found);
  const bool empty = std::ranges::all_of(area.pieces, [](const auto& piece) { return piece->hidden; });
  add_note_page(document, name_of(area),
                empty ? "There are no pieces in this area yet."
                      : "A piece of this area stands more than 100 km away, or is larger than that: it cannot be "
                        "drawn. Check places and sizes.");
}

}  // namespace

std::vector<const Area*> wanted_areas(const Setting& setting) {
  const auto& only = setting.options.area;
  std::vector<const Area*> wanted;
  for (const auto& area : setting.input.event.areas)
    if (!only || *only == area->id || *only == area->name) wanted.push_back(&*area);
  return wanted;
}

void add_table_pages(SheetDocument& document, const std::vector<Block>& blocks, FlowPlace place, std::size_t columns,
                     const std::string& name, FrameText text) {
  text.scale.clear(), text.kind = document.kind;
  while (place.block < blocks.size()) {
    SheetDraft draft{document.blank(), text};
    draft.page.name = name;
    const FlowPlace next = flow(blocks, place, columns_in(document.content(), columns), &draft.page.marks);
    document.drafts.push_back(std::move(draft));
    if (next.block == place.block && next.row == place.row) return;
    place = next;
  }
}

std::size_t columns_for(const SheetDocument& document, double width) {
  return std::max<std::size_t>(1, static_cast<std::size_t>((document.content().width + 8) / (width + 8) + 1e-6));
}

SheetDocument area_document(const Setting& setting, std::string kind) {
  const std::vector<const Area*> wanted = wanted_areas(setting);
  std::vector<DrawnArea> drawn;
  for (const Area* area : wanted) {
    Scene scene = scene_of(*area, setting.input.built, setting.input.palettes);
    if (!scene.pieces.empty() && is_drawable(scene)) drawn.push_back({*area, std::move(scene)});
  }
  SheetDocument document{setting, std::move(kind), is_better_lying(setting, drawn)};
  if (setting.input.event.areas.empty() && !setting.options.area)
    add_note_page(document, "No areas", "This event has no areas yet.");
  for (const Area* area : wanted) add_area(document, *area, drawn);
  return document;
}

std::vector<Page> finished(SheetDocument document) {
  std::vector<Page> pages;
  const int sheets = static_cast<int>(document.drafts.size());
  for (SheetDraft& draft : document.drafts) {
    draft.text.sheet = static_cast<int>(pages.size()) + 1, draft.text.sheets = sheets;
    add_frame(draft.page, document.setting.input.event, draft.text);
    pages.push_back(std::move(draft.page));
  }
  return pages;
}

}  // namespace quadrille
