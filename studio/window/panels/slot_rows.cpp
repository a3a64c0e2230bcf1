#include "studio/window/panels/slot_rows.hpp"

#include <algorithm>

#include "studio/form/colour_choices.hpp"
#include "studio/window/panels/pattern_picture.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/table.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

SlotRows::SlotRows(wxWindow* parent, wxSizer& rows, const std::vector<SlotField>& slots,
                   std::function<void(std::size_t)> pick, std::function<void(const wxString&)> help) {
  const int edge = parent->FromDIP(10);
  auto* heading = new wxStaticText(parent, wxID_ANY, "Colours");
  heading->SetFont(parent->GetFont().Bold());
  rows.Add(heading, wxSizerFlags().Border(wxLEFT | wxTOP | wxRIGHT, edge));
  words_.resize(slots.size());
  for (std::size_t i = 0; i < slots.size(); ++i) {
    auto* letter =
        new wxStaticText(parent, wxID_ANY, shown(slots[i].letter), wxDefaultPosition, parent->FromDIP(wxSize(16, -1)));
    auto* button = new wxButton(parent, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxBU_LEFT);
    button->Bind(wxEVT_BUTTON, [pick, slot = slots[i].slot](wxCommandEvent&) { pick(slot); });
    const auto tell = [this, help, i](auto& event) {
      event.Skip();
      help(words_[i]);
    };
    button->Bind(wxEVT_SET_FOCUS, [tell](wxFocusEvent& event) { tell(event); });
    button->Bind(wxEVT_ENTER_WINDOW, [tell](wxMouseEvent& event) { tell(event); });
    auto* count = new wxStaticText(parent, wxID_ANY, "", wxDefaultPosition, parent->FromDIP(wxSize(54, -1)),
                                   wxALIGN_RIGHT | wxST_NO_AUTORESIZE);
    auto* line = new wxBoxSizer(wxHORIZONTAL);
    line->Add(letter, wxSizerFlags().CentreVertical().Border(wxRIGHT, parent->FromDIP(4)));
    line->Add(button, wxSizerFlags(1).CentreVertical());
    line->Add(count, wxSizerFlags().CentreVertical().Border(wxLEFT, parent->FromDIP(4)));
    rows.AddSpacer(parent->FromDIP(4));
    rows.Add(line, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, edge));
    buttons_.push_back(button), counts_.push_back(count), letters_.push_back(slots[i].letter);
  }
}

void SlotRows::fill(const std::vector<SlotField>& slots, std::span<const Palette> palettes, bool may_edit) {
  const std::vector<wxColour> colours = colours_of(slots, palettes);
  for (std::size_t i = 0; i < slots.size() && i < buttons_.size(); ++i) {
    const SlotField& slot = slots[i];
    const std::string words = slot.colour ? colour_in_words(palettes, *slot.colour) : "various";
    const wxString label = wxControl::EscapeMnemonics(shown(words));
    if (buttons_[i]->GetLabel() != label) buttons_[i]->SetLabel(label);
    buttons_[i]->SetBitmap(make_swatch(colours[i]));
    buttons_[i]->Enable(may_edit);
    counts_[i]->SetLabelText(slot.balloons == 0 ? wxString() : wxString::FromUTF8("× ") << slot.balloons);
    words_[i] = shown("Colour " + slot.letter + ": " + words + ". " + std::to_string(slot.balloons) +
                      (slot.balloons == 1 ? " balloon bears it." : " balloons bear it.") + " Press to choose another.");
    set_accessible_name(buttons_[i], shown("Colour " + slot.letter + ": " + words), words_[i]);
  }
}

wxButton* SlotRows::button_of(std::string_view key) const {
  if (key.starts_with("slot ")) key.remove_prefix(5);
  const auto found = std::ranges::find(letters_, key);
  return found == letters_.end() ? nullptr : buttons_[static_cast<std::size_t>(found - letters_.begin())];
}

std::vector<wxColour> colours_of(const std::vector<SlotField>& slots, std::span<const Palette> palettes) {
  std::vector<wxColour> colours;
  for (const SlotField& slot : slots) {
    const Colour* const colour = slot.colour ? find_colour(palettes, *slot.colour) : nullptr;
    colours.push_back(colour ? wxColour(colour->red, colour->green, colour->blue) : no_colour());
  }
  return colours;
}

}  // namespace quadrille
