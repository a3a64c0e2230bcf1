// Standing: which gust each piece of the shown area bears, and what the selected one does in the gust of the slider.
#pragma once

#include <wx/button.h>
#include <wx/panel.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "studio/window/job/standing_worker.hpp"
#include "studio/window/panels/gust_slider.hpp"
#include "studio/window/toolkit/table.hpp"

namespace quadrille {

/// What the panel tells its owner.
struct StandingPanelAnswers {
  std::function<void(const std::string& piece)> picked;
  /// The slider stands at a gust that is not reckoned yet; `first_deg` as in GustQuestion.
  std::function<void(double gust_m_s, std::optional<double> direction_deg, double first_deg)> asked;
  /// Draw the selected piece as it is in this gust; null: draw none.
  std::function<void(const GustReport* report)> bent;
  /// Choose among the lines that were found to make the selected piece bear more.
  std::function<void()> advised;
};

class StandingPanel : public wxPanel {
 public:
  StandingPanel(wxWindow* parent, StandingPanelAnswers answers);

  /// Shows the pieces of `area`, of an event of which `study` was worked out last; null where there is none.
  void show(const Area* area, Units units, std::shared_ptr<const Study> study);
  /// The event is now of this revision: what is older is marked so, in words.
  void set_revision(std::uint64_t revision);
  void select(const std::string& piece);
  void take(std::shared_ptr<const StandingReport> report);
  void take(std::shared_ptr<const GustReport> report);
  /// Another event: nothing is known any more.
  void forget();

  const Table& pieces() const { return pieces_; }
  const Table& checks() const { return checks_; }
  GustSlider& gust() { return *gust_; }
  wxString headline() const { return headline_->GetLabel(); }
  const wxString& state() const { return state_words_; }
  wxString text() const { return text_->GetValue(); }
  wxButton& advice_button() { return *advice_; }
  wxString caution() const { return caution_->GetLabel(); }
  /// True where all that is shown of the area belongs to the event as it is.
  bool is_up_to_date() const;
  /// Likewise of the gust that the slider stands at.
  bool gust_is_up_to_date() const;

 private:
  void lay_out();
  void show_pieces();
  void show_piece();
  void show_gust();
  void say_headline();
  void say_state(const wxString& words);
  wxString state_words() const;
  TableRow row_of(const PlacedPiece& placed) const;
  bool is_built(const std::string& piece) const;
  const StandingReport* report_of(const std::string& piece) const;
  GustScale scale_of(const PieceStanding& standing) const;
  void ask();

  StandingPanelAnswers answers_;
  std::optional<Area> area_;
  Units units_ = Units::feet;
  std::shared_ptr<const Study> study_;
  std::uint64_t revision_ = 0;
  std::string piece_;          ///< id of the selected one
  std::string slider_piece_;   ///< id of the piece that the slider's gust was chosen for
  double slider_put_m_s_ = 0;  ///< where the slider was put then; elsewhere it was moved by the user
  std::map<std::string, std::shared_ptr<const StandingReport>, std::less<>> reports_;
  std::shared_ptr<const GustReport> bent_;

  wxStaticText* headline_ = nullptr;
  Table pieces_, checks_;
  GustSlider* gust_ = nullptr;
  wxStaticText* state_ = nullptr;
  wxString state_words_;  ///< what it says, without line ends
  int state_width_ = 0;   ///< [px] that it is broken for
  wxTextCtrl* text_ = nullptr;
  wxButton* advice_ = nullptr;
  wxStaticText* caution_ = nullptr;
  bool telling_ = true;  ///< false while the selection is set by the program
};

}  // namespace quadrille
