#include "studio/window/dialogs/repertoire_dialog.hpp"

#include <wx/image.h>
#include <wx/mstream.h>
#include <wx/sizer.h>

#include <utility>

#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

wxImage image_of(const std::string& png) {
  if (wxImage::FindHandler(wxBITMAP_TYPE_PNG) == nullptr) wxImage::AddHandler(new wxPNGHandler);
  wxMemoryInputStream stream(png.data(), png.size());
  const wxLogNull quiet;
  return wxImage(stream, wxBITMAP_TYPE_PNG);
}

}  // namespace

RepertoireDialog::RepertoireDialog(wxWindow* parent, RepertoireAnswers answers)
    : wxDialog(parent, wxID_ANY, "Repertoire", wxDefaultPosition, wxDefaultSize,
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER),
      answers_(std::move(answers)) {
  wxImage blank(FromDIP(picture_width), FromDIP(picture_height));
  blank.SetRGB(wxRect(blank.GetSize()), 245, 245, 245);
  blank_ = wxBitmapBundle::FromBitmap(wxBitmap(blank));
  table_ = make_table(this, {{"Piece", 330, false, true}, {"Type", 130}, {"Price", 110, true}, {"Note", 0}},
                      "Pieces of the repertoire");
  hint_ = new wxStaticText(this, wxID_ANY, "");
  rename_ = new wxButton(this, wxID_ANY, wxString::FromUTF8("Re&name…"));
  remove_ = new wxButton(this, wxID_ANY, wxString::FromUTF8("&Remove…"));
  auto* insert = new wxButton(this, wxID_OK, "&Insert");
  auto* close = new wxButton(this, wxID_CANCEL, "&Close");
  insert->SetDefault();
  auto* buttons = new wxBoxSizer(wxHORIZONTAL);
  buttons->Add(rename_);
  buttons->Add(remove_, wxSizerFlags().Border(wxLEFT, FromDIP(8)));
  buttons->AddStretchSpacer();
  buttons->Add(close);
  buttons->Add(insert, wxSizerFlags().Border(wxLEFT, FromDIP(8)));
  const int gap = FromDIP(12);
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(hint_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxTOP, gap));
  sizer->Add(table_.list, wxSizerFlags(1).Expand().Border(wxALL, gap));
  sizer->Add(buttons, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
  SetSizer(sizer);
  SetSize(FromDIP(wxSize(820, 560)));
  SetMinSize(FromDIP(wxSize(560, 360)));
  CentreOnParent();
  table_.list->Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, [this](wxDataViewEvent&) { allow(); });
  table_.list->Bind(wxEVT_DATAVIEW_ITEM_ACTIVATED, [this](wxDataViewEvent&) {
    if (!chosen().empty()) EndModal(wxID_OK);
  });
  rename_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { answers_.rename(chosen()); });
  remove_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { answers_.remove(chosen()); });
  allow();
  table_.list->SetFocus();
}

std::string RepertoireDialog::chosen() const {
  const int row = table_.selected();
  return row >= 0 && row < static_cast<int>(lines_.size()) ? lines_[static_cast<std::size_t>(row)].key : std::string();
}

void RepertoireDialog::show(std::vector<RepertoireLine> lines) {
  lines_ = std::move(lines);
  hint_->SetLabelText(
      lines_.empty()
          ? wxString::FromUTF8("Nothing is in it yet: select a piece and choose Pieces > Save to the repertoire…")
          : wxString("Your own pieces. What is inserted stands in the middle of the drawing, to be moved and "
                     "changed like any other."));
  fill();
  if (table_.selected() < 0 && !lines_.empty()) table_.list->Select(table_.model->GetItem(0));
  allow();
}

void RepertoireDialog::show_pictures(const PiecePictures& pictures) {
  for (const auto& [key, png] : pictures)
    if (const wxImage image = image_of(png); image.IsOk())
      pictures_.insert_or_assign(
          key, wxBitmapBundle::FromBitmap(wxBitmap(image, wxBITMAP_SCREEN_DEPTH, GetContentScaleFactor())));
  ++pictures_shown_;
  fill();
}

void RepertoireDialog::fill() {
  std::vector<TableRow> rows;
  for (const RepertoireLine& line : lines_) {
    const auto picture = pictures_.find(line.key);
    const bool there = picture != pictures_.end();
    rows.push_back({{shown(line.name), shown(line.type_name), shown(line.price), shown(line.note)},
                    there ? picture->second : blank_,
                    there ? line.key + " " + std::to_string(pictures_shown_) : std::string()});
  }
  table_.model->set_rows(std::move(rows));
}

void RepertoireDialog::allow() {
  const bool some = !chosen().empty();
  for (wxWindow* button : {static_cast<wxWindow*>(rename_), static_cast<wxWindow*>(remove_), FindWindow(wxID_OK)})
    button->Enable(some);
}

}  // namespace quadrille
