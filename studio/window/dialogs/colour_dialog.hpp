// Choosing a colour for a slot: from all palettes, by name, or by how near it comes to another colour.
#pragma once

#include <wx/button.h>
#include <wx/dialog.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "studio/form/colour_choices.hpp"
#include "studio/window/toolkit/table.hpp"

namespace quadrille {

/// What the dialog chooses from, and for which slot.
struct ColourQuestion {
  Event event;
  std::vector<Palette> palettes;
  std::vector<ColourReference> recent;
  std::vector<SlotField> slots;  ///< of the form
  std::size_t slot = 0;
};

class ColourDialog : public wxDialog {
 public:
  ColourDialog(wxWindow* parent, ColourQuestion question);

  /// The colour that is selected, or an empty reference where the slot is to have none; nothing where no row is selected.
  std::optional<ColourReference> chosen() const;

  /// As typing into the search field.
  void search(const wxString& text);
  /// Selects the colour, where it is in the list.
  bool select(const ColourReference& colour);
  const Table& table() const { return table_; }
  wxString words() const { return words_text_; }

 private:
  void fill();
  void show_words();
  std::optional<ColourEntry> selected() const;

  ColourQuestion question_;
  std::vector<ColourEntry> rows_;
  wxTextCtrl* search_;
  Table table_;
  wxStaticText* words_;
  wxButton* like_this_;
  wxString words_text_;
  bool none_ = false;  ///< the slot is to have no colour
};

}  // namespace quadrille
