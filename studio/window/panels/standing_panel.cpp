#include "studio/window/panels/standing_panel.hpp"

#include <wx/sizer.h>
#include <wx/splitter.h>

#include <algorithm>
#include <utility>

#include "studio/standing/wind.hpp"
#include "studio/window/panels/standing_words.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr double beyond_limit = 1.25;  // how far the slider goes past what fails first, as a share of it
constexpr double least_top_m_s = 4;    // and at least so far, where a piece bears next to nothing

std::string site_words(const Area& area, Units units) {
  const bool outdoors = area.site.surroundings == Surroundings::outdoors;
  if (area.site.gust_m_s)
    return std::string(outdoors ? "outdoors" : "indoors") + ", forecast gust " + gust_words(*area.site.gust_m_s, units);
  return outdoors ? "outdoors, no gust is forecast" : "indoors, no wind to speak of";
}

}  // namespace

StandingPanel::StandingPanel(wxWindow* parent, StandingPanelAnswers answers)
    : wxPanel(parent), answers_(std::move(answers)) {
  lay_out();
  pieces_.list->Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, [this](wxDataViewEvent&) {
    const int row = pieces_.selected();
    if (telling_ && area_ && row >= 0 && row < static_cast<int>(area_->pieces.size()))
      answers_.picked(area_->pieces[static_cast<std::size_t>(row)]->id);
  });
  show_pieces();
}

void StandingPanel::lay_out() {
  auto* panes =
      new wxSplitterWindow(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxSP_LIVE_UPDATE | wxSP_NOBORDER);
  auto* left = new wxPanel(panes);
  auto* right = new wxPanel(panes);
  headline_ =
      new wxStaticText(left, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_ELLIPSIZE_END | wxST_NO_AUTORESIZE);
  headline_->SetFont(GetFont().Bold());
  pieces_ = make_table(left,
                       {growing({"Piece", 136}),
                        {"Bears", 76},
                        {"Verdict", 118},
                        {"Watch", 62},
                        {"Down", 62},
                        growing({"Fails first", 136})},
                       "How the pieces stand");
  wxString caution = planning_aid;
  caution.Replace(": ", ":\n", false);
  caution_ = new wxStaticText(left, wxID_ANY, caution);
  advice_ = new wxButton(left, wxID_ANY, wxString::FromUTF8("Use advised &lines…"));
  advice_->SetToolTip("Tie the selected piece with lines that the check found; the page Site then shows them");
  advice_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { answers_.advised(); });
  const auto border = FromDIP(6);
  auto* beneath = new wxBoxSizer(wxHORIZONTAL);
  beneath->Add(caution_, wxSizerFlags(1).CentreVertical());
  beneath->Add(advice_, wxSizerFlags().CentreVertical().Border(wxLEFT, border));
  auto* on_left = new wxBoxSizer(wxVERTICAL);
  on_left->Add(headline_, wxSizerFlags().Expand().Border(wxALL, border));
  on_left->Add(pieces_.list, wxSizerFlags(1).Expand());
  on_left->Add(beneath, wxSizerFlags().Expand().Border(wxALL, border));
  left->SetSizer(on_left);
  lay_out_with_room(left);

  gust_ = new GustSlider(right, [this] { ask(), show_gust(); });
  state_ = new wxStaticText(right, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_NO_AUTORESIZE);
  checks_ = make_table(
      right, {growing({"Check", 152}), {"Used", 56, true}, {"Asked", 70, true}, {"Borne", 70, true}, {"Wind", 92}},
      "Checks of the selected piece in this gust");
  text_ = new wxTextCtrl(right, wxID_ANY, "", wxDefaultPosition, FromDIP(wxSize(200, 60)),
                         wxTE_MULTILINE | wxTE_READONLY | wxBORDER_NONE);
  set_accessible_name(text_, "What the selected piece bears, and what would make it stand", "");
  auto* below = new wxBoxSizer(wxHORIZONTAL);
  below->Add(checks_.list, wxSizerFlags(9).Expand());
  below->Add(text_, wxSizerFlags(4).Expand().Border(wxLEFT | wxRIGHT, border));
  auto* on_right = new wxBoxSizer(wxVERTICAL);
  on_right->Add(gust_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxTOP, border));
  on_right->Add(state_, wxSizerFlags().Expand().Border(wxALL, border));
  on_right->Add(below, wxSizerFlags(1).Expand().Border(wxLEFT, border));
  right->SetSizer(on_right);
  lay_out_with_room(right);
  right->Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    say_state(state_words_);
  });

  panes->SetSize(FromDIP(wxSize(1240, 240)));  // some room until there is the real one
  panes->SetMinimumPaneSize(FromDIP(240));
  panes->SetSashGravity(0.44);
  panes->SplitVertically(left, right, FromDIP(590));
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(panes, wxSizerFlags(1).Expand());
  SetSizer(sizer);
  lay_out_with_room(this);
}

void StandingPanel::show(const Area* area, Units units, std::shared_ptr<const Study> study) {
  area_ = area != nullptr ? std::optional<Area>(*area) : std::nullopt;
  units_ = units;
  study_ = std::move(study);
  show_pieces();
  show_piece();
}

void StandingPanel::set_revision(std::uint64_t revision) {
  revision_ = revision;
  show_pieces();
  show_piece();
}

void StandingPanel::select(const std::string& piece) {
  if (piece_ == piece) return;
  piece_ = piece;
  bent_ = nullptr;
  show_pieces();
  show_piece();
}

void StandingPanel::take(std::shared_ptr<const StandingReport> report) {
  auto& held = reports_[report->piece];
  if (held && held->revision > report->revision) return;
  held = std::move(report);
  show_pieces();
  if (held->piece == piece_) show_piece();
}

void StandingPanel::take(std::shared_ptr<const GustReport> report) {
  // Of another piece or another wind, or the first of a gust that is known all round already: a later one is under way.
  if (report->piece != piece_ || report->asked_deg != gust_->direction_deg()) return;
  const bool newer = bent_ && bent_->revision == report->revision && bent_->asked_deg == report->asked_deg &&
                     bent_->state.all_round && !report->state.all_round &&
                     bent_->state.gust_m_s == report->state.gust_m_s;
  if (newer) return;
  bent_ = std::move(report);
  show_gust();
}

void StandingPanel::forget() {
  reports_.clear();
  bent_ = nullptr;
  piece_.clear();
  slider_piece_.clear();
  show(nullptr, units_, nullptr);
}

bool StandingPanel::is_built(const std::string& piece) const {
  if (!study_) return false;
  const auto found = study_->built.find(piece);
  return found != study_->built.end() && found->second->status == Status::ok;
}

const StandingReport* StandingPanel::report_of(const std::string& piece) const {
  const auto found = reports_.find(piece);
  return found != reports_.end() ? found->second.get() : nullptr;
}

bool StandingPanel::is_up_to_date() const {
  if (!area_ || !study_ || study_->revision != revision_) return false;
  return std::ranges::all_of(area_->pieces, [this](const auto& placed) {
    const StandingReport* report = report_of(placed->id);
    return !is_built(placed->id) || (report != nullptr && report->revision == revision_ && report->advised);
  });
}

bool StandingPanel::gust_is_up_to_date() const {
  return bent_ && bent_->revision == revision_ && bent_->piece == piece_ &&
         bent_->asked_deg == gust_->direction_deg() && bent_->state.gust_m_s == gust_->gust_m_s() &&
         (bent_->asked_deg || bent_->state.all_round);
}

TableRow StandingPanel::row_of(const PlacedPiece& placed) const {
  TableRow row;
  const StandingReport* report = report_of(placed.id);
  const wxString name = placed.name.empty() ? wxString("Unnamed piece") : shown(placed.name);
  if (study_ && !is_built(placed.id)) {
    row.cells = {name, shown("–"), "not built", shown("–"), shown("–"), ""};
    return row;
  }
  if (report == nullptr) {
    row.cells = {name, shown("…"), shown("reckoning…"), shown("…"), shown("…"), ""};
    return row;
  }
  const PieceStanding& standing = report->standing;
  const bool older = report->revision != revision_;
  const bool levels = standing.outdoors && !standing.checks.empty();
  row.cells = {name,
               shown(limit_speed(standing, units_)),
               shown(older ? "older: " + verdict_words(standing) : verdict_words(standing)),
               shown(levels ? speed_in(standing.watch_m_s, units_) : "–"),
               shown(levels ? speed_in(standing.take_down_m_s, units_) : "–"),
               standing.governing.code.empty() ? wxString() : shown(check_words(standing.governing))};
  return row;
}

void StandingPanel::show_pieces() {
  std::vector<TableRow> rows;
  int selected = -1;
  if (area_)
    for (const auto& placed : area_->pieces) {
      if (placed->id == piece_) selected = static_cast<int>(rows.size());
      rows.push_back(row_of(*placed));
    }
  telling_ = false;
  pieces_.model->set_rows(std::move(rows));
  if (selected != pieces_.selected()) {
    pieces_.list->UnselectAll();
    if (selected >= 0) pieces_.list->Select(pieces_.model->GetItem(static_cast<unsigned int>(selected)));
  }
  telling_ = true;
  say_headline();
}

void StandingPanel::say_headline() {
  wxString text;
  if (area_) {
    text = shown((area_->name.empty() ? std::string("This area") : area_->name) + ": " + site_words(*area_, units_));
    std::size_t done = 0, all = 0;
    for (const auto& placed : area_->pieces) {
      if (study_ && !is_built(placed->id)) continue;
      ++all;
      const StandingReport* report = report_of(placed->id);
      done += report != nullptr && report->revision == revision_ ? 1 : 0;
    }
    if (done < all) text += shown(" · reckoning, " + std::to_string(done) + " of " + std::to_string(all) + " done");
  }
  if (headline_->GetLabel() != text) headline_->SetLabelText(text);
}

GustScale StandingPanel::scale_of(const PieceStanding& standing) const {
  GustScale scale;
  if (standing.checks.empty()) return scale;
  scale.limit_m_s = standing.limit_gust_m_s;
  scale.most_m_s = std::max(beyond_limit * standing.limit_gust_m_s, least_top_m_s);
  if (standing.forecast_known) {
    scale.forecast_m_s = std::min(standing.gust_m_s, highest_gust_m_s);
    scale.most_m_s = std::max(scale.most_m_s, *scale.forecast_m_s);
  }
  scale.most_m_s = std::min(scale.most_m_s, highest_gust_m_s);
  if (standing.outdoors) scale.watch_m_s = standing.watch_m_s, scale.take_down_m_s = standing.take_down_m_s;
  return scale;
}

void StandingPanel::ask() {
  const StandingReport* report = report_of(piece_);
  if (report == nullptr || report->standing.checks.empty() || !study_ || study_->revision != revision_) return;
  if (!gust_is_up_to_date())
    answers_.asked(gust_->gust_m_s(), gust_->direction_deg(), report->standing.governing.direction_deg);
}

void StandingPanel::show_piece() {
  const StandingReport* report = report_of(piece_);
  std::string text;
  if (!area_)
    text = "";
  else if (area_->pieces.empty())
    text = "This area has no pieces yet.";
  else if (piece_.empty())
    text = "Select a piece to see its checks, and move the slider to see what a gust does to it.";
  else if (study_ && !is_built(piece_))
    text =
        "This piece was not built: its type is not there, or refused its values. Nothing can be said of how it stands.";
  else if (report == nullptr)
    text = "It is being reckoned…";
  else
    text = (report->revision != revision_ ? "Before the last change; newer figures are under way.\n" : "") +
           standing_text(*report, units_);
  if (text_->GetValue() != shown(text)) text_->ChangeValue(shown(text));
  advice_->Enable(report != nullptr && report->revision == revision_ && is_built(piece_) && !report->advice.empty());

  const bool known = report != nullptr && is_built(piece_);
  const bool moved = slider_piece_ == piece_ && gust_->gust_m_s() != slider_put_m_s_;  // by the user
  gust_->set_scale(known ? scale_of(report->standing) : GustScale(), units_);
  if (!known) slider_piece_.clear();
  if (known && !moved) {
    slider_piece_ = piece_;
    // Where nothing is forecast, outdoors, at what it bears; indoors in still air.
    const PieceStanding& standing = report->standing;
    gust_->set_gust(standing.forecast_known ? standing.gust_m_s : standing.outdoors ? standing.limit_gust_m_s : 0);
    slider_put_m_s_ = gust_->gust_m_s();
  }
  ask();
  show_gust();
}

void StandingPanel::show_gust() {
  std::vector<TableRow> rows;
  const bool known = bent_ && bent_->piece == piece_ && is_built(piece_);
  std::vector<StandingCheck> checks = known ? bent_->state.checks : std::vector<StandingCheck>();
  std::ranges::stable_sort(checks, std::greater(), &StandingCheck::utilisation);
  for (const StandingCheck& check : checks)
    rows.push_back({{shown(check_words(check)), shown(used_words(check.utilisation)),
                     shown(amount_words(check.value, check.unit, units_)),
                     shown(amount_words(check.limit, check.unit, units_)), shown(side_words(check.direction_deg))},
                    {},
                    ""});
  checks_.model->set_rows(std::move(rows));
  say_state(known || report_of(piece_) != nullptr ? state_words() : wxString());
  answers_.bent(known ? bent_.get() : nullptr);
}

/// In as many lines as it takes.
void StandingPanel::say_state(const wxString& words) {
  const int width = state_->GetParent()->GetClientSize().x - FromDIP(12);
  if (words == state_words_ && width == state_width_) return;
  state_words_ = words, state_width_ = width;
  const int before = state_->GetBestSize().y;
  state_->SetLabelText(words);
  state_->Wrap(std::max(width, FromDIP(120)));
  state_->InvalidateBestSize();
  if (state_->GetBestSize().y != before) state_->GetParent()->Layout();
}

/// "Past the limit of 16 mph. Worst wind from the front: it moves 5\" to the right…"
wxString StandingPanel::state_words() const {
  const StandingReport* report = report_of(piece_);
  if (report == nullptr || report->standing.checks.empty()) return "";
  const PieceStanding& standing = report->standing;
  std::string text;
  if (gust_->gust_m_s() > standing.limit_gust_m_s && !standing.limit_beyond)
    text = "Past the limit of " + speed_in(standing.limit_gust_m_s, units_) + ". ";
  else
    text = "Within what it bears. ";
  if (!bent_ || bent_->piece != piece_) return shown(text + "Reckoning…");
  const GustState& state = bent_->state;
  const std::string from = (state.all_round ? "Worst wind " : "Wind ") + wind_words(state.direction_deg);
  const std::string shift = shift_words(state.farthest_m, units_);
  if (!state.stands && state.deflected.empty())
    text += from + ": it finds no rest and goes over, so no shape is drawn.";
  else if (!state.stands)
    text += from + ": it topples, and comes to lie as drawn.";
  else if (shift.empty())
    text += from + ": it hardly moves.";
  else
    text += from + ": it moves " + shift + ".";
  if (!gust_is_up_to_date()) text += " Reckoning…";
  return shown(text);
}

}  // namespace quadrille
