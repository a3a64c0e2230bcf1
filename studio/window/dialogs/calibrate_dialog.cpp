#include "studio/window/dialogs/calibrate_dialog.hpp"

#include <wx/button.h>
#include <wx/sizer.h>

#include <cmath>
#include <utility>

#include "sdk/units.hpp"
#include "studio/form/field_units.hpp"
#include "studio/form/sums.hpp"
#include "studio/model/lengths.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int words_width = 380;  // [DIP]

}  // namespace

CalibrateDialog::CalibrateDialog(wxWindow* parent, const Backdrop& photo, PictureSpot fixed, PictureSpot other,
                                 Units units, Measured measured)
    : wxDialog(parent, wxID_ANY, "Calibrate the photo"),
      units_(units),
      measured_(std::move(measured)),
      set_{fixed.x_px, fixed.y_px, other.x_px, other.y_px} {
  auto* intro = new wxStaticText(this, wxID_ANY,
                                 "How far apart are the two points in truth? A door, a tile or a table that you "
                                 "measured will do; the longer, the better.");
  intro->Wrap(FromDIP(words_width));
  const double apart_px = std::hypot(other.x_px - fixed.x_px, other.y_px - fixed.y_px);
  length_ = new wxTextCtrl(this, wxID_ANY, shown(print_length(apart_px * photo.metres_per_pixel, lengths_in(units))));
  set_accessible_name(length_, "Length between the two points", "Such as 2.03 m, 6'8\" or 80in");
  auto* fields = new wxFlexGridSizer(2, FromDIP(wxSize(12, 8)));
  fields->AddGrowableCol(1);
  const auto label = [&](const char* text) {
    fields->Add(new wxStaticText(this, wxID_ANY, text), wxSizerFlags().CentreVertical());
  };
  label("&Length between them");
  fields->Add(length_, wxSizerFlags().Expand());
  const int width = photo.picture->width_px, height = photo.picture->height_px;
  constexpr const char* names[] = {"First point, pixels from the left", "First point, pixels from the top",
                                   "Second point, pixels from the left", "Second point, pixels from the top"};
  for (std::size_t point = 0; point < 2; ++point) {
    label(point == 0 ? "&First point [pixels]" : "&Second point [pixels]");
    auto* row = new wxBoxSizer(wxHORIZONTAL);
    for (std::size_t i = 2 * point; i < 2 * point + 2; ++i) {
      // A point may lie beyond the photo's edge, along a line that goes on there.
      const int most = i % 2 == 0 ? width : height;
      pixels_[i] = new wxSpinCtrl(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxSP_ARROW_KEYS, -most,
                                  2 * most, static_cast<int>(std::lround(set_[i])));
      set_accessible_name(pixels_[i], names[i], "");
      pixels_[i]->SetToolTip(names[i]);
      pixels_[i]->Bind(wxEVT_SPINCTRL, [this](wxSpinEvent&) { check(); });
      row->Add(pixels_[i], wxSizerFlags(1).Border(i % 2 == 0 ? wxRIGHT : 0, FromDIP(8)));
    }
    fields->Add(row, wxSizerFlags().Expand());
  }
  words_ =
      new wxStaticText(this, wxID_ANY, "", wxDefaultPosition, FromDIP(wxSize(words_width, 54)), wxST_NO_AUTORESIZE);
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(intro, wxSizerFlags().Border(wxALL, FromDIP(12)));
  sizer->Add(fields, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, FromDIP(12)));
  sizer->Add(words_, wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  sizer->Add(CreateStdDialogButtonSizer(wxOK | wxCANCEL), wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  FindWindow(wxID_OK)->SetLabel("&Calibrate");
  SetSizerAndFit(sizer);
  length_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { check(); });
  Bind(
      wxEVT_BUTTON,
      [this](wxCommandEvent& event) {
        if (check()) event.Skip();
      },
      wxID_OK);
  check();
  length_->SelectAll();
  length_->SetFocus();
}

PictureSpot CalibrateDialog::spot(std::size_t first) const {
  // As long as a field shows what it was set to, the point is the very one that was clicked.
  const auto exact = [this](std::size_t i) {
    const int whole = pixels_[i]->GetValue();
    return whole == std::lround(set_[i]) ? set_[i] : whole;
  };
  return {exact(first), exact(first + 1)};
}

bool CalibrateDialog::check() {
  const auto length =
      read_sum(text_of(length_->GetValue()), measure_of(Kind::length), units_ == Units::feet ? "ft" : "m");
  length_m_ = length ? *length : 0;
  const auto photo = length ? measured_(fixed(), other(), length_m_) : Result<Backdrop>::bad(length.error);
  const LengthStyle style = lengths_in(units_);
  said_ = photo.error;
  if (photo)
    said_ = "The photo is then " + print_length(photo->width_m(), style) + " wide and " +
            print_length(photo->height_m(), style) + " high; the first point stays where it is.";
  words_->SetLabelText(shown(said_));
  words_->Wrap(FromDIP(words_width));
  FindWindow(wxID_OK)->Enable(static_cast<bool>(photo));
  return static_cast<bool>(photo);
}

}  // namespace quadrille
