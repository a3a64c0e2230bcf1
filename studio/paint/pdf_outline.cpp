#include "studio/paint/pdf_outline.hpp"

#include <cairo-pdf.h>

#include <string>

#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

/// Returns the bookmark's own number, under which others may stand.
int add_bookmark(cairo_surface_t* pdf, int parent, const std::string& text, std::size_t page) {
  const std::string target = "page=" + std::to_string(page + 1);
  return cairo_pdf_surface_add_outline(pdf, parent, printable(text).c_str(), target.c_str(),
                                       CAIRO_PDF_OUTLINE_FLAG_OPEN);
}

}  // namespace

void add_outline(cairo_surface_t* pdf, std::span<const Page> pages) {
  int sheet = CAIRO_PDF_OUTLINE_ROOT;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const Page& page = pages[i];
    const bool new_sheet = i == 0 || pages[i - 1].sheet != page.sheet;
    if (new_sheet)
      sheet = page.sheet.empty() ? CAIRO_PDF_OUTLINE_ROOT : add_bookmark(pdf, CAIRO_PDF_OUTLINE_ROOT, page.sheet, i);
    if (page.name == page.sheet) continue;
    if (!page.name.empty() && (new_sheet || pages[i - 1].name != page.name)) add_bookmark(pdf, sheet, page.name, i);
  }
}

}  // namespace quadrille
