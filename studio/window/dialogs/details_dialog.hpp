// What is known of the job as a whole: title, client, venue, the day's times, money, terms, palettes.
#pragma once

#include <wx/checklst.h>
#include <wx/dialog.h>
#include <wx/stattext.h>

#include <memory>

#include "studio/files/palette_file.hpp"
#include "studio/model/event.hpp"
#include "studio/window/toolkit/fact_rows.hpp"

namespace quadrille {

class DetailsDialog : public wxDialog {
 public:
  DetailsDialog(wxWindow* parent, Event event, std::shared_ptr<const LoadedPalettes> palettes);

  /// The event with what was typed.
  const Event& event() const { return event_; }
  FactRows& fields() { return *fields_; }
  wxCheckListBox& palettes() { return *list_; }
  wxString palette_fault() const { return fault_->GetLabel(); }
  /// Takes what is typed; false where something of it was refused: then the keyboard is there.
  bool settle();

 private:
  void show_fields();
  void toggle(unsigned palette);

  Event event_;
  std::shared_ptr<const LoadedPalettes> palettes_;
  FactRows* fields_;
  wxCheckListBox* list_;
  wxStaticText* fault_;
};

}  // namespace quadrille
