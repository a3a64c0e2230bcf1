#include "studio/window/panels/start_page.hpp"

#include <wx/settings.h>
#include <wx/stattext.h>
#include <wx/wrapsizer.h>

#include <utility>

#include "studio/window/toolkit/file_names.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

StartPage::StartPage(wxWindow* parent, StartAnswers answers, const std::vector<std::filesystem::path>& samples)
    : wxPanel(parent), answers_(std::move(answers)) {
  auto* ways = new wxBoxSizer(wxVERTICAL);
  auto* heading = new wxStaticText(this, wxID_ANY, "What do you want to dress?");
  heading->SetFont(GetFont().Bold().Scaled(1.5f));
  ways->Add(heading, wxSizerFlags().Border(wxBOTTOM, FromDIP(14)));
  begin_ = add_way(
      wxString::FromUTF8("&New event…"), "A few questions: where, how wide, which colours, what first.",
      [this] { answers_.begin(); }, ways);
  add_way(
      wxString::FromUTF8("&Open an event…"), "One that you saved before. You can also drop its file here.",
      [this] { answers_.open(); }, ways);
  recent_room_ = new wxBoxSizer(wxVERTICAL);
  ways->Add(recent_room_);
  if (!samples.empty()) {
    auto* label = new wxStaticText(this, wxID_ANY, "Or look at a sample; you get a copy that you can change:");
    ways->Add(label, wxSizerFlags().Border(wxTOP | wxBOTTOM, FromDIP(8)));
    auto* row = new wxWrapSizer(wxHORIZONTAL);
    for (const auto& file : samples) {
      auto* button = new wxButton(this, wxID_ANY, wxControl::EscapeMnemonics(shown(sample_title(file))));
      button->Bind(wxEVT_BUTTON, [this, file](wxCommandEvent&) { CallAfter([this, file] { answers_.sample(file); }); });
      row->Add(button, wxSizerFlags().Border(wxRIGHT | wxBOTTOM, FromDIP(8)));
      samples_.push_back(button);
    }
    ways->Add(row, wxSizerFlags().Expand());
  }
  auto* middle = new wxBoxSizer(wxVERTICAL);
  middle->AddStretchSpacer();
  middle->Add(ways, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, FromDIP(40)));
  middle->AddStretchSpacer(2);
  SetSizer(middle);
}

wxButton* StartPage::add_way(const wxString& label, const wxString& words, std::function<void()> way, wxSizer* to) {
  auto* button = new wxButton(this, wxID_ANY, label, wxDefaultPosition, FromDIP(wxSize(190, 38)));
  button->Bind(wxEVT_BUTTON, [this, act = std::move(way)](wxCommandEvent&) { CallAfter(act); });
  to->Add(button);
  to->Add(new wxStaticText(this, wxID_ANY, words), wxSizerFlags().Border(wxTOP, FromDIP(3)));
  to->AddSpacer(FromDIP(12));
  return button;
}

void StartPage::show_recent(const std::vector<std::filesystem::path>& files) {
  recent_room_->Clear(true);
  recent_.clear();
  constexpr std::size_t most = 4;
  if (!files.empty())
    recent_room_->Add(new wxStaticText(this, wxID_ANY, "Open again:"), wxSizerFlags().Border(wxTOP, FromDIP(4)));
  for (std::size_t i = 0; i < files.size() && i < most; ++i) {
    auto* button = new wxButton(this, wxID_ANY, wxControl::EscapeMnemonics(shown(files[i].filename().string())),
                                wxDefaultPosition, wxDefaultSize, wxBU_LEFT | wxBORDER_NONE);
    button->SetToolTip(shown(files[i].string()));
    button->Bind(wxEVT_BUTTON, [this, file = files[i]](wxCommandEvent&) {
      CallAfter([this, file] { answers_.recent(file); });  // the button goes while the list is made anew
    });
    recent_room_->Add(button);
    recent_.push_back(button);
  }
  Layout();
}

}  // namespace quadrille
