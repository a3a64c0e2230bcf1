// Both ways to lay an area on paper, and which is better for a document.
#include "studio/paper/area_layout.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

#include "studio/paper/page_frame.hpp"
#include "studio/paper/piece_key.hpp"

namespace quadrille {
namespace {

/// What stands beside or beneath an area's drawing. The tables of the whole event are among it where this is all of it.
std::vector<Block> blocks_of(const Setting& setting, const DrawnArea& drawn, double width) {
  std::vector<Block> blocks = key_blocks(drawn.area, drawn.scene, setting.table(width));
  if (Block anchors = anchor_block(drawn.scene, width); !anchors.rows.empty()) blocks.push_back(std::move(anchors));
  if (!drawn.scene.far_off.empty()) blocks.push_back(far_off_block(drawn.scene, setting.table(width)));
  if (setting.with_order && setting.input.event.areas.size() == 1 && setting.input.count.total_balloons > 0)
    for (Block& block : whole_event(setting, width, "")) blocks.push_back(std::move(block));
  return blocks;
}

constexpr double between_columns = 8, over_tables = 6;

/// As many columns as three tables of a usual width need on a lying page, two on an upright one.
Layout tables_below(const Setting& setting, const DrawnArea& drawn, bool landscape) {
  Layout layout{blank_page(setting.paper, landscape), {}, {}, {}};
  const Rect content = content_of(layout.page, setting.input.event);
  const std::size_t columns =
      landscape ? std::max<std::size_t>(2, static_cast<std::size_t>((content.width + between_columns) / 80)) : 2;
  layout.blocks = blocks_of(setting, drawn, columns_in(content, columns).front().width);
  const double most = content.height * 0.45;
  const double tables = layout.blocks.empty() ? 0 : flow_height(layout.blocks, {}, columns, most);
  const double gap = tables > 0 ? over_tables : 0;
  layout.columns = columns_in({content.x, content.bottom() - tables, content.width, tables}, columns);
  layout.plan =
      plan_panel(drawn.scene, {content.x, content.y, content.width, content.height - tables - gap}, setting.units);
  return layout;
}

Layout tables_beside(const Setting& setting, const DrawnArea& drawn) {
  Layout layout{blank_page(setting.paper, true), {}, {}, {}};
  const Rect content = content_of(layout.page, setting.input.event);
  const double column = std::max(72.0, content.width * 0.26);
  layout.blocks = blocks_of(setting, drawn, column);
  layout.columns = {{content.right() - column, content.y, column, content.height}};
  layout.plan =
      plan_panel(drawn.scene, {content.x, content.y, content.width - column - 5, content.height}, setting.units);
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
  Layout below = tables_below(setting, drawn, landscape);
  if (!landscape) return below;
  // A wide scene is larger over its tables, a high one beside them.
  Layout beside = tables_beside(setting, drawn);
  if (below.plan.scale != beside.plan.scale) return below.plan.scale < beside.plan.scale ? below : beside;
  return fits(beside) || !fits(below) ? beside : below;
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
