// Pages to a printer, with the painter that makes the files.
#pragma once

#include <wx/cmndata.h>
#include <wx/print.h>

#include <string>
#include <vector>

#include "studio/paint/balloon_stamps.hpp"
#include "studio/paper/sheet.hpp"

namespace quadrille {

class SheetPrintout : public wxPrintout {
 public:
  SheetPrintout(const std::string& title, std::vector<Page> pages);
  bool HasPage(int number) override;
  void GetPageInfo(int* least, int* most, int* from, int* to) override;
  bool OnPrintPage(int number) override;

 private:
  std::vector<Page> pages_;
  BalloonStamps stamps_;
};

/// What to ask of the printer: this paper, always upright, since lying paper comes out shifted (a known fault of wxWidgets 3.2.2);
/// lying pages are turned instead.
wxPrintData print_data(Paper paper);

}  // namespace quadrille
