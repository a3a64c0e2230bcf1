// The short question sheet that a new event begins with.
#pragma once

#include <wx/choice.h>
#include <wx/dialog.h>
#include <wx/radiobut.h>
#include <wx/statbmp.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "sdk/result.hpp"
#include "studio/files/palette_file.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/new_event.hpp"

namespace quadrille {

class NewEventDialog : public wxDialog {
 public:
  /// `types` may be null while they are still being looked for: then no first piece is offered.
  NewEventDialog(wxWindow* parent, std::shared_ptr<const LoadedPalettes> palettes,
                 std::shared_ptr<const PieceTypes> types);

  /// What was answered; nothing where the day or the width cannot be read: the dialog says so and stays open.
  std::optional<NewEventAnswers> answers() const;

  wxTextCtrl& title_field() { return *title_; }
  wxTextCtrl& width_field() { return *width_; }
  wxRadioButton& outdoors() { return *outdoors_; }
  wxChoice& first_piece() { return *first_; }
  wxChoice& palette() { return *palette_; }
  const std::vector<wxChoice*>& colours() const { return colours_; }
  wxTextCtrl& date_field() { return *date_; }
  wxString fault() const { return fault_->GetLabel(); }

 private:
  void show_colours();
  void show_swatches();
  Units units() const;
  std::optional<double> width_m() const;
  Result<std::string> day() const;
  bool check();

  std::shared_ptr<const LoadedPalettes> palettes_;
  std::shared_ptr<const PieceTypes> types_;
  wxTextCtrl *title_, *width_, *date_;
  wxRadioButton *outdoors_, *metres_;  ///< each beside the button of the other answer, which is chosen first
  wxChoice *palette_, *first_;
  std::vector<wxChoice*> colours_;
  std::vector<wxStaticBitmap*> swatches_;  ///< of the chosen colours
  wxStaticText* fault_;
};

}  // namespace quadrille
