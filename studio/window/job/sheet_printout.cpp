#include "studio/window/job/sheet_printout.hpp"

#include <wx/dc.h>

#include <utility>

#include "studio/paint/painter.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

SheetPrintout::SheetPrintout(const std::string& title, std::vector<Page> pages)
    : wxPrintout(shown(title.empty() ? "Untitled event" : title)), pages_(std::move(pages)) {}

bool SheetPrintout::HasPage(int number) { return number >= 1 && number <= static_cast<int>(pages_.size()); }

void SheetPrintout::GetPageInfo(int* least, int* most, int* from, int* to) {
  *least = *from = 1;
  *most = *to = static_cast<int>(pages_.size());
}

bool SheetPrintout::OnPrintPage(int number) {
  if (!HasPage(number) || GetDC() == nullptr) return false;
  auto* cairo = static_cast<cairo_t*>(GetDC()->GetImpl()->GetCairoContext());
  if (cairo == nullptr) return false;
  constexpr double points_per_mm = 72 / 25.4;  // a printer's context is in points, whatever its resolution
  paint_upright(cairo, pages_[static_cast<std::size_t>(number - 1)], stamps_, points_per_mm);
  return true;
}

wxPrintData print_data(Paper paper) {
  constexpr wxPaperSize sizes[] = {wxPAPER_A4, wxPAPER_LETTER, wxPAPER_A3, wxPAPER_TABLOID};
  wxPrintData data;
  data.SetPaperId(sizes[static_cast<std::size_t>(paper)]);
  data.SetOrientation(wxPORTRAIT);
  data.SetQuality(wxPRINT_QUALITY_HIGH);
  return data;
}

}  // namespace quadrille
