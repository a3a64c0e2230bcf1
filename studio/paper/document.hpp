// A document of area pages in the making: drawings with their keys, tables that flow on, notes; numbered at the end.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "studio/model/event.hpp"
#include "studio/paint/display_list.hpp"
#include "studio/paper/area_layout.hpp"
#include "studio/paper/flow.hpp"
#include "studio/paper/page_frame.hpp"
#include "studio/paper/sheet.hpp"

namespace quadrille {

/// A page whose title block is still to come, when the number of sheets is known.
struct SheetDraft {
  Page page;
  FrameText text;
};

/// The pages made so far, all turned the same way.
struct SheetDocument {
  const Setting& setting;
  std::string kind = "Sheet";  ///< of sheet, over its number in the title block
  bool landscape = true;
  std::vector<SheetDraft> drafts = {};
  Page blank() const { return blank_page(setting.paper, landscape); }
  Rect content() const { return content_of(blank(), setting.input.event); }
};

/// The areas that `setting.options` asks for; none where it names one that is not there.
std::vector<const Area*> wanted_areas(const Setting& setting);

/// One page for each wanted area, with its drawing and key (tables that do not fit go on to further pages), or a note why
/// it is not drawn; turned as suits the drawings best. A note where the event has no areas.
SheetDocument area_document(const Setting& setting, std::string kind);

/// As many columns of at least this width [mm] as the document's pages hold; one at least.
std::size_t columns_for(const SheetDocument& document, double width);

/// Full pages of tables, from `place` on; each is named `name`. `text` is what stands in the frame but for the scale.
void add_table_pages(SheetDocument& document, const std::vector<Block>& blocks, FlowPlace place, std::size_t columns,
                     const std::string& name, FrameText text);

/// The pages, framed and numbered.
std::vector<Page> finished(SheetDocument document);

}  // namespace quadrille
