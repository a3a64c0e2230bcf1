#include "studio/window/panels/gust_slider.hpp"

#include <wx/sizer.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "sdk/units.hpp"
#include "studio/standing/wind.hpp"
#include "studio/window/panels/standing_words.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int steps_per_unit = 10;

/// Choices of the wind; the first is all round, where the direction does not count.
constexpr struct {
  const char* words;
  double direction_deg;
} winds[] = {{"all round", 0}, {"the front", 90}, {"behind", 270}, {"the left", 0}, {"the right", 180}};

constexpr const char* level_names[] = {"Forecast", "Watch", "Take down", "Limit"};
constexpr const char* level_hints[] = {
    "Sets the slider to the gust that is forecast", "Sets the slider to the gust from which the piece is watched",
    "Sets the slider to the gust at which the piece is taken down", "Sets the slider to the highest gust it bears"};

}  // namespace

GustSlider::GustSlider(wxWindow* parent, std::function<void()> moved) : wxPanel(parent), moved_(std::move(moved)) {
  auto* label = new wxStaticText(this, wxID_ANY, "&Gust");
  slider_ = new wxSlider(this, wxID_ANY, 0, 0, 100, wxDefaultPosition, FromDIP(wxSize(140, -1)));
  set_accessible_name(slider_, "Gust", "");
  readout_ = new wxStaticText(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize,
                              wxALIGN_RIGHT | wxST_ELLIPSIZE_END | wxST_NO_AUTORESIZE);
  readout_->SetFont(GetFont().Bold());
  auto* above = new wxBoxSizer(wxHORIZONTAL);
  above->Add(label, wxSizerFlags().CentreVertical().Border(wxRIGHT, FromDIP(6)));
  above->Add(slider_, wxSizerFlags(1).CentreVertical());
  above->Add(readout_, wxSizerFlags().CentreVertical().Border(wxLEFT, FromDIP(8)));
  auto* below = new wxBoxSizer(wxHORIZONTAL);
  for (std::size_t i = 0; i < levels; ++i) {
    buttons_[i] = new wxButton(this, wxID_ANY, level_names[i], wxDefaultPosition, wxDefaultSize, wxBU_EXACTFIT);
    buttons_[i]->SetMinSize(buttons_[i]->GetBestSize() + FromDIP(wxSize(10, 0)));
    buttons_[i]->SetToolTip(level_hints[i]);
    buttons_[i]->Bind(wxEVT_BUTTON, [this, i](wxCommandEvent&) {
      if (const auto level = level_m_s(static_cast<Level>(i))) choose(*level);
    });
    below->Add(buttons_[i], wxSizerFlags().CentreVertical().Border(wxRIGHT, FromDIP(4)));
  }
  below->AddStretchSpacer();
  below->Add(new wxStaticText(this, wxID_ANY, "&Wind from"), wxSizerFlags().CentreVertical());
  direction_ = new wxChoice(this, wxID_ANY);
  for (const auto& wind : winds) direction_->Append(wind.words);
  direction_->SetSelection(0);
  direction_->SetMinSize(direction_->GetBestSize());
  direction_->SetToolTip("The side that the wind comes from; all round, the worst side counts");
  set_accessible_name(direction_, "Wind from", "The side that the wind comes from");
  direction_->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) { moved_(); });
  below->Add(direction_, wxSizerFlags().CentreVertical().Border(wxLEFT, FromDIP(6)));
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(above, wxSizerFlags().Expand());
  sizer->Add(below, wxSizerFlags().Expand().Border(wxTOP, FromDIP(2)));
  SetSizer(sizer);
  slider_->Bind(wxEVT_SLIDER, [this](wxCommandEvent&) {
    // What is past the scale by a part of a step is not chosen by it.
    choose(std::min(slider_->GetValue() * step_m_s(), scale_.most_m_s));
  });
  show_gust();
}

double GustSlider::step_m_s() const {
  const double unit = units_ == Units::feet ? metres_per_second_per_mph : 1 / 3.6;
  return unit / steps_per_unit;
}

std::optional<double> GustSlider::level_m_s(Level level) const {
  switch (level) {
    case forecast:
      return scale_.forecast_m_s;
    case watch:
      return scale_.watch_m_s;
    case take_down:
      return scale_.take_down_m_s;
    case limit:
      return scale_.limit_m_s;
    case levels:
      break;
  }
  return std::nullopt;
}

void GustSlider::set_scale(const GustScale& scale, Units units) {
  scale_ = scale;
  units_ = units;
  keep_room_for_readout();
  const int most = std::max(1, static_cast<int>(std::ceil(scale.most_m_s / step_m_s() - 1e-9)));
  if (slider_->GetMax() != most) slider_->SetRange(0, most);
  // The toolkit forgets these with every new range.
  slider_->SetLineSize(steps_per_unit);
  slider_->SetPageSize(5 * steps_per_unit);
  for (std::size_t i = 0; i < levels; ++i) buttons_[i]->Enable(level_m_s(static_cast<Level>(i)).has_value());
  Enable(scale.most_m_s > 0);
  set_gust(gust_m_s_);
}

/// As much as the longest words take, so that the slider keeps its length while it is moved.
void GustSlider::keep_room_for_readout() {
  int widest = 0;
  for (const BeaufortBand& band : beaufort_scale)
    widest = std::max(widest, readout_->GetTextExtent(shown(gust_in_full(band.from_m_s, units_))).x);
  const wxSize least(widest + FromDIP(8), -1);
  if (readout_->GetMinSize().x == least.x) return;
  readout_->SetMinSize(least);
  Layout();
}

void GustSlider::set_gust(double m_s) {
  gust_m_s_ = std::clamp(m_s, 0.0, scale_.most_m_s);
  const int place = static_cast<int>(std::lround(gust_m_s_ / step_m_s()));
  if (slider_->GetValue() != place) slider_->SetValue(place);
  show_gust();
}

std::optional<double> GustSlider::direction_deg() const {
  const int choice = direction_->GetSelection();
  return choice > 0 ? std::optional(winds[choice].direction_deg) : std::nullopt;
}

void GustSlider::choose(double m_s) {
  set_gust(m_s);
  moved_();
}

void GustSlider::show_gust() {
  const wxString text = scale_.most_m_s > 0 ? shown(gust_in_full(gust_m_s_, units_)) : wxString();
  if (readout_->GetLabel() == text) return;
  readout_->SetLabelText(text);
  set_accessible_name(slider_, "Gust", text);
}

}  // namespace quadrille
