// How an area's drawing and tables share a page, upright or lying.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "studio/drawing/elevation.hpp"
#include "studio/paint/display_list.hpp"
#include "studio/paper/elevation_panel.hpp"
#include "studio/paper/flow.hpp"
#include "studio/paper/sheet.hpp"
#include "studio/paper/tables.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {

/// What holds for all pages of a document.
struct Setting {
  const SheetInput& input;
  const SheetOptions& options;
  Units units;
  Paper paper;
  bool with_order = true;  ///< whether the tables of all balloons and supplies belong to it
  TableInput table(double width) const { return {input.count, input.palettes, lengths_in(units), width}; }
};

/// An area that can be drawn.
struct DrawnArea {
  const Area& area;
  Scene scene;
};

struct Layout {
  Page page;  ///< still empty
  std::vector<Block> blocks;
  std::vector<Rect> columns;
  PanelPlan plan;
};

/// The drawing over the tables; on a lying page beside them where it is then no smaller.
Layout layout_of(const Setting& setting, const DrawnArea& drawn, bool landscape);

/// Whether the pages of a document should lie: the larger drawings win, over all areas together; then what needs fewer
/// further pages; then the way that most of the scenes are turned. True where there is nothing to draw.
bool is_better_lying(const Setting& setting, std::span<const DrawnArea> areas);

/// The tables of the whole event, each heading followed by `where`.
std::vector<Block> whole_event(const Setting& setting, double width, const std::string& where);

}  // namespace quadrille
