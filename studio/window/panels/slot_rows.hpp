// The colour slots of the form: letter, swatch, name of the colour and how many balloons bear it.
#pragma once

#include <wx/button.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include <functional>
#include <span>
#include <string>
#include <vector>

#include "studio/model/palette.hpp"
#include "studio/window/panels/form_content.hpp"

namespace quadrille {

/// Its controls belong to the window they are made in.
class SlotRows {
 public:
  /// `pick` hears of the slot that is to get another colour, `help` what is to be said of the one with the focus.
  SlotRows(wxWindow* parent, wxSizer& rows, const std::vector<SlotField>& slots, std::function<void(std::size_t)> pick,
           std::function<void(const wxString&)> help);
  SlotRows(const SlotRows&) = delete;
  SlotRows& operator=(const SlotRows&) = delete;

  /// `slots` are as many as it was made with.
  void fill(const std::vector<SlotField>& slots, std::span<const Palette> palettes, bool may_edit);
  /// What opens the choice of a colour, in the order of the slots.
  const std::vector<wxButton*>& buttons() const { return buttons_; }
  /// The button of "slot A" or "A"; null where there is none.
  wxButton* button_of(std::string_view key) const;

 private:
  std::vector<wxButton*> buttons_;
  std::vector<wxStaticText*> counts_;
  std::vector<std::string> letters_;
  std::vector<wxString> words_;
};

/// The slots' colours on the screen; grey where there is none.
std::vector<wxColour> colours_of(const std::vector<SlotField>& slots, std::span<const Palette> palettes);

}  // namespace quadrille
