// A colour seen in the photo, the palettes' colours that look most like it, and a slot to put one on.
#pragma once

#include <wx/choice.h>
#include <wx/dialog.h>

#include <optional>
#include <span>
#include <vector>

#include "studio/form/slot_fields.hpp"
#include "studio/model/palette.hpp"
#include "studio/paint/display_list.hpp"
#include "studio/takeoff/nearest_colours.hpp"
#include "studio/window/toolkit/table.hpp"

namespace quadrille {

class PhotoColourDialog : public wxDialog {
 public:
  /// `seen` is the photo's colour there; `near` is not empty; `piece` is the name of the piece with the slots. Without
  /// `slots` (no piece is selected) the colours are only shown.
  PhotoColourDialog(wxWindow* parent, const Ink& seen, std::vector<NearColour> near, std::span<const Palette> palettes,
                    const std::vector<SlotField>& slots, const std::string& piece);

  /// The colour that is chosen in the list.
  const ColourReference& colour() const;
  /// The slot to put it on, 0 = A; nothing where there is none to choose.
  std::optional<std::size_t> slot() const;

  Table& colours() { return colours_; }
  wxChoice& slot_choice() { return *slot_; }

 private:
  std::vector<NearColour> near_;
  std::vector<std::size_t> slots_;
  Table colours_;
  wxChoice* slot_;
};

}  // namespace quadrille
