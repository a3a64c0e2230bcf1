// How long something in the photo is: two points and the length between them.
#pragma once

#include <wx/dialog.h>
#include <wx/spinctrl.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include <array>
#include <functional>
#include <string>

#include "sdk/result.hpp"
#include "studio/model/backdrop.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

class CalibrateDialog : public wxDialog {
 public:
  /// `measured` gives the photo as it would be, or says why it cannot.
  using Measured = std::function<Result<Backdrop>(PictureSpot fixed, PictureSpot other, double length_m)>;
  /// Begins with the points [pixels] and the length that is between them as the photo lies now.
  CalibrateDialog(wxWindow* parent, const Backdrop& photo, PictureSpot fixed, PictureSpot other, Units units,
                  Measured measured);

  /// What was typed; to be asked after the dialog was accepted.
  PictureSpot fixed() const { return spot(0); }
  PictureSpot other() const { return spot(2); }
  double length_m() const { return length_m_; }

  wxTextCtrl& length() { return *length_; }
  wxSpinCtrl& pixel(std::size_t number) { return *pixels_[number]; }
  /// What follows from the fields, or what is wrong with them.
  const std::string& words() const { return said_; }

 private:
  PictureSpot spot(std::size_t first) const;
  /// Shows what follows from the fields; true where they can be accepted.
  bool check();

  Units units_;
  Measured measured_;
  double length_m_ = 0;
  wxTextCtrl* length_;
  std::array<wxSpinCtrl*, 4> pixels_{};  ///< x and y of the one, x and y of the other
  std::array<double, 4> set_{};          ///< what they were set to, of which they show whole pixels
  std::string said_;
  wxStaticText* words_;
};

}  // namespace quadrille
