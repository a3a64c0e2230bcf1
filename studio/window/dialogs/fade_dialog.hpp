// How much the photo is faded towards white, seen at once behind the dialog.
#pragma once

#include <wx/dialog.h>
#include <wx/slider.h>

#include <functional>

namespace quadrille {

class FadeDialog : public wxDialog {
 public:
  /// `fade` is 0 to 1; `faded` hears of each that the slider comes to.
  FadeDialog(wxWindow* parent, double fade, std::function<void(double fade)> faded);

  double fade() const { return slider_->GetValue() / 100.0; }
  wxSlider& slider() { return *slider_; }

 private:
  wxSlider* slider_;
};

}  // namespace quadrille
