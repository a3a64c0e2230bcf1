// A slider for the gust, with its levels as buttons, what it stands at in words, and where the wind comes from.
#pragma once

#include <wx/button.h>
#include <wx/choice.h>
#include <wx/panel.h>
#include <wx/slider.h>
#include <wx/stattext.h>

#include <array>
#include <functional>
#include <optional>

#include "studio/model/event.hpp"

namespace quadrille {

/// What the slider reaches, and where its buttons lead [m/s]. A level that is not known has no button.
struct GustScale {
  double most_m_s = 0;
  std::optional<double> forecast_m_s, watch_m_s, take_down_m_s, limit_m_s;
  bool operator==(const GustScale&) const = default;
};

class GustSlider : public wxPanel {
 public:
  /// `moved` hears when the user has chosen another gust, or another wind.
  GustSlider(wxWindow* parent, std::function<void()> moved);

  /// From now on it goes from 0 to the scale's most; the gust stays, as far as the scale reaches.
  void set_scale(const GustScale& scale, Units units);
  void set_gust(double m_s);
  /// [m/s], exactly as it was set; where the slider was moved, in steps of a tenth of the unit that is shown.
  double gust_m_s() const { return gust_m_s_; }

  /// Where the wind comes from [degrees, as wind_way()]; nothing: from all round.
  std::optional<double> direction_deg() const;

  wxSlider& slider() { return *slider_; }
  wxString readout() const { return readout_->GetLabel(); }
  enum Level : std::size_t { forecast, watch, take_down, limit, levels };
  wxButton& button(Level level) { return *buttons_[level]; }
  wxChoice& direction() { return *direction_; }

 private:
  void choose(double m_s);
  void show_gust();
  void keep_room_for_readout();
  std::optional<double> level_m_s(Level level) const;
  double step_m_s() const;

  std::function<void()> moved_;
  GustScale scale_;
  Units units_ = Units::feet;
  double gust_m_s_ = 0;
  wxSlider* slider_;
  wxStaticText* readout_;
  wxChoice* direction_;
  std::array<wxButton*, levels> buttons_{};
};

}  // namespace quadrille
