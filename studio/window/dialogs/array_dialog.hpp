// Asks how many copies stand how far apart, along the front line and in depth.
#pragma once

#include <wx/checkbox.h>
#include <wx/choice.h>
#include <wx/dialog.h>
#include <wx/sizer.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include <optional>
#include <string>

#include "studio/arrange/copies.hpp"
#include "studio/arrange/cut_out.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

class ArrayDialog : public wxDialog {
 public:
  /// For so many selected pieces; `steps` along and in depth [m] stand in the fields at first.
  ArrayDialog(wxWindow* parent, std::size_t pieces, const FloorPlace& steps, Units units);

  /// What the fields say; nothing where one of them cannot be used: the dialog says why beside it and stays open.
  std::optional<ArrayPlan> plan() const;

  /// How the places of one direction are given, and the fields for it.
  enum Way : int { number_and_step, number_over_length, step_within_length };
  struct Direction {
    wxChoice* way = nullptr;
    wxTextCtrl *number = nullptr, *step = nullptr, *length = nullptr;
    wxStaticText* fault = nullptr;
  };
  Direction& along() { return along_; }
  Direction& depth() { return depth_; }
  wxCheckBox& facing() { return *facing_; }
  /// What the fields would make, in words; empty where one cannot be used.
  wxString preview() const { return preview_->GetLabel(); }
  /// Reads the fields anew, as after every key.
  void follow();

 private:
  struct Reading;
  Direction make_direction(wxSizer& rows, const wxString& title, int number, double step_m);
  Reading read(const Direction& direction) const;

  std::size_t pieces_;
  Units units_;
  Direction along_, depth_;
  wxCheckBox* facing_;
  wxStaticText* preview_;
};

}  // namespace quadrille
