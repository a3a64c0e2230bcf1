// What every sheet has around its content: the heading on top, the title block and the caution at the foot.
#pragma once

#include <string>

#include "studio/model/event.hpp"
#include "studio/paint/display_list.hpp"
#include "studio/paper/sheet.hpp"

namespace quadrille {

/// An empty page of this paper.
Page blank_page(Paper paper, bool landscape);

/// What the title block says beside the event's own data.
struct FrameText {
  std::string heading;  ///< of the page, beside the event's title
  std::string area;     ///< in the title block
  std::string scale;    ///< as printed; empty = the page has no drawing
  int sheet = 1, sheets = 1;
  std::string kind = "Sheet";  ///< caption over the number: "Build sheet"
};

/// The room that is left between heading and title block on `page`.
Rect content_of(const Page& page, const Event& event);

/// Puts heading, title block and caution on the page.
void add_frame(Page& page, const Event& event, const FrameText& text);

}  // namespace quadrille
