// Both ways to lay an area on paper, and which is better for a document.
#include "studio/drawing/area_layout.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

#include "studio/drawing/page_frame.hpp"
#include "studio/drawing/piece_key.hpp"

namespace quadrille {
namespace {

/// What stands beside or beneath an area's drawing. The tables of the whole event are among it where this is all of it.
std::vector<Block> blocks_of(const Setting& setting, const DrawnArea& drawn, double width) {
  std::vector<Block> blocks = key_blocks(drawn.area, drawn.scene, setting.table(width));
  if (!drawn.scene.far_off.empty()) blocks.push_back(far_off_block(drawn.scene, setting.table(width)));
  if (setting.input.event.areas.size() == 1 && setting.input.count.total_balloons > 0)
    for (Block& block : whole_event(setting, width, "")) blocks.push_back(std::move(block));
  return blocks;
}

Layout landscape_layout(const Setting& setting, const DrawnArea& drawn) {
  Layout layout{blank_page(setting.paper, true), {}, {}, {}};
  const Rect content = content_of(layout.page, setting.input.event);
  const double column = std::max(72.0, content.width * 0.26);
  layout.blocks = blocks_of(setting, drawn, column);
  layout.columns = {{content.right() - column, content.y, column, content.height}};
  layout.plan =
      plan_panel(drawn.scene, {content.x, content.y, content.width - column - 5, content.height}, setting.units);
  return layout;
}

Layout portrait_layout(const Setting& setting, const DrawnArea& drawn) {
  Layout layout{blank_page(setting.paper, false), {}, {}, {}};
  const Rect content = content_of(layout.page, setting.input.event);
  layout.blocks = blocks_of(setting, drawn, columns_in(content, 2).front().width);
  const double tables = layout.blocks.empty() ? 0 : flow_height(layout.blocks, {}, 2, content.height * 0.45);
  const double gap = tables > 0 ? 6 : 0;
  layout.columns = columns_in({content.x, content.bottom() - tables, content.width, tables}, 2);
  layout.plan =
      plan_panel(drawn.scene, {content.x, content.y, content.width, content.height - tables - gap}, setting.units);
  return layout;
}

bool fits(const Layout& layout) {
  return flow(layout.blocks, {}, layout.columns, nullptr).block == layout.blocks.size();
}

}  // namespace

std::vector<Block> whole_event(const Setting& setting, double width, const std::string& where) {
  std::vector<Block> blocks{balloon_block("Balloons" + where, setting.table(width))};
  if (!setting.input.count.supplies.empty()) {
    blocks.push_back(supply_block("Supplies" + where, setting.table(width)));
    blocks.back().begins_column = !where.empty();  // a page of its own has room for both side by side
  }
  return blocks;
}

Layout layout_of(const Setting& setting, const DrawnArea& drawn, bool landscape) {
  return landscape ? landscape_layout(setting, drawn) : portrait_layout(setting, drawn);
}

bool is_better_lying(const Setting& setting, std::span<const DrawnArea> areas) {
  double lying_scale = 0, upright_scale = 0;
  std::ptrdiff_t fitting = 0, wide = 0;  // lying less upright
  for (const DrawnArea& drawn : areas) {
    const Layout lying = layout_of(setting, drawn, true), upright = layout_of(setting, drawn, false);
    lying_scale += std::log(lying.plan.scale), upright_scale += std::log(upright.plan.scale);
    fitting += (fits(lying) ? 1 : 0) - (fits(upright) ? 1 : 0);
    wide += drawn.scene.extent.width() >= drawn.scene.extent.height() ? 1 : -1;
  }
  if (std::abs(lying_scale - upright_scale) > 1e-9) return lying_scale < upright_scale;
  return fitting != 0 ? fitting > 0 : wide >= 0;
}

}  // namespace quadrille
