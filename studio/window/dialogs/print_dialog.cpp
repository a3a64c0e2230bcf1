#include "studio/window/dialogs/print_dialog.hpp"

#include <wx/dcbuffer.h>
#include <wx/display.h>
#include <wx/panel.h>
#include <wx/print.h>
#include <wx/sizer.h>

#include <algorithm>
#include <exception>
#include <utility>

#include "studio/paint/painter.hpp"
#include "studio/window/dialogs/paper_choice.hpp"
#include "studio/window/job/sheet_printout.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/notices.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

PrintDialog::PrintDialog(wxWindow* parent, std::shared_ptr<const Study> study, Paper paper)
    : wxDialog(parent, wxID_ANY, "Print", wxDefaultPosition, wxDefaultSize,
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER | wxMAXIMIZE_BOX),
      study_(std::move(study)),
      maker_(study_) {
  const int gap = FromDIP(8);
  auto* top = new wxBoxSizer(wxHORIZONTAL);
  const auto add_choice = [&](const char* label, wxChoice*& choice) {
    top->Add(new wxStaticText(this, wxID_ANY, label), 0, wxALIGN_CENTRE_VERTICAL | wxRIGHT, gap / 2);
    choice = new wxChoice(this, wxID_ANY);
    top->Add(choice, 0, wxRIGHT, gap * 2);
  };
  add_choice("&Sheet:", sheet_);
  for (const SheetKind& kind : sheet_kinds()) sheet_->Append(shown(std::string(kind.title)));
  add_choice("P&aper:", paper_);
  offer_papers(*paper_, paper);

  preview_ = new wxPanel(this, wxID_ANY, wxDefaultPosition, FromDIP(wxSize(760, 560)), wxBORDER_THEME);
  preview_->SetBackgroundStyle(wxBG_STYLE_PAINT);
  preview_->SetLayoutDirection(wxLayout_LeftToRight);
  preview_->Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  preview_->Bind(wxEVT_SIZE, [this](wxSizeEvent& event) { preview_->Refresh(), event.Skip(); });
  set_accessible_name(preview_, "Preview of the page", "The page as it will be printed");

  auto* row = new wxBoxSizer(wxHORIZONTAL);
  back_ = new wxButton(this, wxID_BACKWARD, "P&revious page");
  next_ = new wxButton(this, wxID_FORWARD, "&Next page");
  place_ = new wxStaticText(this, wxID_ANY, "");
  print_ = new wxButton(this, wxID_PRINT, wxString::FromUTF8("&Print…"));
  for (wxWindow* window :
       {static_cast<wxWindow*>(back_), static_cast<wxWindow*>(next_), static_cast<wxWindow*>(place_)})
    row->Add(window, 0, wxALIGN_CENTRE_VERTICAL | wxRIGHT, gap);
  row->AddStretchSpacer();
  row->Add(new wxButton(this, wxID_CANCEL, "&Close"), 0, wxRIGHT, gap);
  row->Add(print_);

  auto* all = new wxBoxSizer(wxVERTICAL);
  all->Add(top, 0, wxALL, gap);
  all->Add(preview_, 1, wxEXPAND | wxLEFT | wxRIGHT, gap);
  all->Add(row, 0, wxEXPAND | wxALL, gap);
  SetSizerAndFit(all);
  // As large as the desktop allows, so that a page can be read, and no larger than a page needs.
  const wxSize room = wxDisplay(this).GetClientArea().GetSize(), most = FromDIP(wxSize(1100, 1300));
  SetSize(std::clamp(room.x * 8 / 10, GetSize().x, std::max(most.x, GetSize().x)),
          std::clamp(room.y * 9 / 10, GetSize().y, std::max(most.y, GetSize().y)));
  CentreOnParent();

  sheet_->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) { choose_sheet(sheet_->GetSelection()); });
  paper_->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) { choose_paper(static_cast<Paper>(paper_->GetSelection())); });
  back_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { turn(-1); });
  next_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { turn(1); });
  print_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { print(); });
  print_->SetDefault();
  newest_ = std::make_unique<Newest<Wanted>>([this](const Wanted& wanted, const Stale& stale) { make(wanted, stale); });
  choose_sheet(0);
}

// What is being made is given up first: it answers to this dialog.
PrintDialog::~PrintDialog() { newest_.reset(); }

void PrintDialog::choose_sheet(int sheet) {
  sheet_->SetSelection(sheet);
  make_pages();
}

void PrintDialog::choose_paper(Paper paper) {
  paper_->SetSelection(static_cast<int>(paper));
  make_pages();
}

void PrintDialog::turn(int by) {
  page_ = std::clamp(page_ + by, 0, std::max(0, static_cast<int>(pages_.size()) - 1));
  show_page();
}

void PrintDialog::make_pages() {
  pages_.clear();
  page_ = 0;
  fault_.clear();
  newest_->ask(
      {++asked_, static_cast<std::size_t>(sheet_->GetSelection()), static_cast<Paper>(paper_->GetSelection())});
  show_page();
}

/// On the maker's thread.
void PrintDialog::make(const Wanted& wanted, const Stale& stale) {
  auto pages = std::make_shared<std::vector<Page>>();
  std::string fault;
  try {
    SheetOptions options;
    options.paper = wanted.paper;
    auto made = maker_.pages(sheet_kinds()[wanted.sheet], options, stale);
    if (!made) return;
    *pages = std::move(*made);
  } catch (const std::exception& error) {
    fault = "The sheet could not be made: " + std::string(error.what());
  }
  CallAfter([this, number = wanted.number, pages, fault] { receive(number, pages, fault); });
}

void PrintDialog::receive(std::uint64_t number, std::shared_ptr<const std::vector<Page>> pages,
                          const std::string& fault) {
  if (number != asked_) return;  // another one is wanted by now
  shown_ = number;
  pages_ = *pages;
  fault_ = fault;
  show_page();
}

void PrintDialog::show_page() {
  const int count = static_cast<int>(pages_.size());
  std::string text = making() ? "The pages are being made…" : fault_.empty() ? "There is nothing to print." : fault_;
  if (count > 0) {
    const Page& page = pages_[static_cast<std::size_t>(page_)];
    text = "Page " + std::to_string(page_ + 1) + " of " + std::to_string(count);
    if (!page.sheet.empty()) text += ", " + page.sheet;
    if (!page.name.empty() && page.name != page.sheet) text += ", " + page.name;
  }
  place_->SetLabel(wxControl::EscapeMnemonics(shown(text)));
  back_->Enable(page_ > 0), next_->Enable(page_ + 1 < count), print_->Enable(count > 0);
  Layout();
  preview_->Refresh();
}

void PrintDialog::paint() {
  wxPaintDC dc(preview_);
  dc.SetBackground(wxBrush(wxColour(120, 124, 130)));
  dc.Clear();
  auto* cairo = static_cast<cairo_t*>(dc.GetImpl()->GetCairoContext());
  if (cairo == nullptr || pages_.empty()) return;
  const Page& page = pages_[static_cast<std::size_t>(page_)];
  const wxSize size = preview_->GetClientSize();
  const double border = FromDIP(12), width = size.x - 2 * border, height = size.y - 2 * border;
  if (width < 1 || height < 1) return;
  paint_page_within(cairo, page, stamps_, {border, border, width, height});
}

void PrintDialog::print() {
  wxPrintDialogData data(print_data(static_cast<Paper>(paper_->GetSelection())));
  data.SetFromPage(1), data.SetToPage(static_cast<int>(pages_.size()));
  data.SetMinPage(1), data.SetMaxPage(static_cast<int>(pages_.size()));
  wxPrinter printer(&data);
  SheetPrintout printout(study_->event.title, pages_);
  if (!printer.Print(this, &printout, true) && wxPrinter::GetLastError() == wxPRINTER_ERROR)
    tell_error(this, "The sheet could not be printed", "The printer refused it, or there is none.");
}

}  // namespace quadrille
