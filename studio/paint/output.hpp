// Pages to bytes: PDF, SVG and PNG from the one painter.
#pragma once

#include <span>
#include <string>

#include "sdk/result.hpp"
#include "studio/paint/display_list.hpp"

namespace quadrille {

struct DocumentInfo {
  std::string title;
  std::string
      date;  ///< ISO 8601 date written as the document's time of creation, so that equal input gives equal bytes
};

/// All pages in one document, fonts embedded, with bookmarks (pdf_outline.hpp) and the title. Equal pages and info give equal bytes.
Result<std::string> to_pdf(std::span<const Page> pages, const DocumentInfo& info);
/// One page, sized in millimetres. Equal pages give equal bytes.
Result<std::string> to_svg(const Page& page);
/// One page at `dots_per_inch` (30 to 1200); an error where a side would exceed 32,767 pixels.
Result<std::string> to_png(const Page& page, double dots_per_inch);

}  // namespace quadrille
