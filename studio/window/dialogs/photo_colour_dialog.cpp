#include "studio/window/dialogs/photo_colour_dialog.hpp"

#include <wx/button.h>
#include <wx/sizer.h>
#include <wx/statbmp.h>
#include <wx/stattext.h>

#include <cmath>
#include <utility>

#include "sdk/number.hpp"
#include "studio/colour/difference.hpp"
#include "studio/form/colour_choices.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

wxColour screen_colour(const Ink& ink) {
  const auto byte = [](double v) { return static_cast<unsigned char>(std::lround(v * 255)); };
  return {byte(ink.red), byte(ink.green), byte(ink.blue)};
}

TableRow row_of(const NearColour& near, std::span<const Palette> palettes) {
  const Colour* const colour = find_colour(palettes, near.reference);
  TableRow row;
  row.cells = {shown(near.name), colour ? shown(std::string(finish_in_words(colour->finish))) : wxString(),
               shown(near.palette_name), shown(std::string(difference_in_words(near.difference))),
               shown(print_fixed(near.difference, 1))};
  if (colour) row.swatch = make_swatch(wxColour(colour->red, colour->green, colour->blue));
  row.swatch_key = near.reference.palette + "/" + near.reference.colour;
  return row;
}

}  // namespace

PhotoColourDialog::PhotoColourDialog(wxWindow* parent, const Ink& seen, std::vector<NearColour> near,
                                     std::span<const Palette> palettes, const std::vector<SlotField>& slots,
                                     const std::string& piece)
    : wxDialog(parent, wxID_ANY, "Colour from the photo", wxDefaultPosition, wxDefaultSize,
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER),
      near_(std::move(near)) {
  const wxColour colour = screen_colour(seen);
  auto* head = new wxBoxSizer(wxHORIZONTAL);
  head->Add(new wxStaticBitmap(this, wxID_ANY, make_swatch(colour)), wxSizerFlags().CentreVertical());
  head->Add(new wxStaticText(this, wxID_ANY,
                             "Seen in the photo: " + colour.GetAsString(wxC2S_HTML_SYNTAX) +
                                 ". These look most like it; light and camera change colours, so "
                                 "hold a balloon against it."),
            wxSizerFlags(1).CentreVertical().Border(wxLEFT, FromDIP(8)));
  colours_ = make_table(this,
                        {{"Colour", 190, false, true},
                         {"Finish", 90},
                         {"Palette", 130},
                         growing({"Likeness", 170}),
                         {"Difference", 100, true}},
                        "Colours that look most like it");
  colours_.list->SetMinSize(FromDIP(wxSize(680, 220)));
  std::vector<TableRow> rows;
  for (const NearColour& one : near_) rows.push_back(row_of(one, palettes));
  colours_.model->set_rows(std::move(rows));
  colours_.list->Select(colours_.model->GetItem(0));

  slot_ = new wxChoice(this, wxID_ANY);
  set_accessible_name(slot_, "Slot to put the colour on", "");
  for (const SlotField& slot : slots) {
    const Colour* const now = slot.colour ? find_colour(palettes, *slot.colour) : nullptr;
    slot_->Append(shown(slot.letter + (now ? ", now " + now->name : std::string())));
    slots_.push_back(slot.slot);
  }
  if (slots_.empty()) slot_->Append("No piece is selected");
  slot_->SetSelection(0);
  slot_->Enable(!slots_.empty());
  auto* choose = new wxBoxSizer(wxHORIZONTAL);
  wxString label = "Put it on &slot";
  // An ampersand in a piece's name is no shortcut.
  if (!slots_.empty()) label += " of " + wxControl::EscapeMnemonics(shown(piece.empty() ? "the piece" : piece));
  choose->Add(new wxStaticText(this, wxID_ANY, label), wxSizerFlags().CentreVertical());
  choose->Add(slot_, wxSizerFlags(1).Border(wxLEFT, FromDIP(12)));

  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(head, wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  sizer->Add(colours_.list, wxSizerFlags(1).Expand().Border(wxLEFT | wxRIGHT, FromDIP(12)));
  sizer->Add(choose, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(12)));
  sizer->Add(CreateStdDialogButtonSizer(wxOK | wxCANCEL), wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  FindWindow(wxID_OK)->SetLabel("&Use this colour");
  FindWindow(wxID_OK)->Enable(!slots_.empty());
  FindWindow(wxID_CANCEL)->SetLabel("&Close");
  SetSizerAndFit(sizer);
  colours_.list->SetFocus();
}

const ColourReference& PhotoColourDialog::colour() const {
  const int row = colours_.selected();
  return near_[row < 0 ? 0 : static_cast<std::size_t>(row)].reference;
}

std::optional<std::size_t> PhotoColourDialog::slot() const {
  const int chosen = slot_->GetSelection();
  if (slots_.empty() || chosen == wxNOT_FOUND) return std::nullopt;
  return slots_[static_cast<std::size_t>(chosen)];
}

}  // namespace quadrille
