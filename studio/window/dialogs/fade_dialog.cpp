#include "studio/window/dialogs/fade_dialog.hpp"

#include <wx/sizer.h>
#include <wx/stattext.h>

#include <cmath>
#include <utility>

#include "studio/window/toolkit/accessible_name.hpp"

namespace quadrille {

FadeDialog::FadeDialog(wxWindow* parent, double fade, std::function<void(double)> faded)
    : wxDialog(parent, wxID_ANY, "Fade the photo") {
  auto* label = new wxStaticText(this, wxID_ANY, "How much it is &faded, in percent");
  slider_ = new wxSlider(this, wxID_ANY, static_cast<int>(std::lround(fade * 100)), 0, 100, wxDefaultPosition,
                         FromDIP(wxSize(320, -1)), wxSL_HORIZONTAL | wxSL_VALUE_LABEL);
  set_accessible_name(slider_, "Fade of the photo", "0 as it was taken, 100 not seen at all");
  auto* words = new wxStaticText(this, wxID_ANY,
                                 "0 shows it as it was taken, 100 not at all. Balloons stand out best at 30 to 60.");
  words->Wrap(FromDIP(320));
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(label, wxSizerFlags().Border(wxALL, FromDIP(12)));
  sizer->Add(slider_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, FromDIP(12)));
  sizer->Add(words, wxSizerFlags().Border(wxALL, FromDIP(12)));
  sizer->Add(CreateStdDialogButtonSizer(wxOK | wxCANCEL), wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  SetSizerAndFit(sizer);
  slider_->Bind(wxEVT_SLIDER, [this, faded = std::move(faded)](wxCommandEvent&) { faded(this->fade()); });
  slider_->SetFocus();
}

}  // namespace quadrille
