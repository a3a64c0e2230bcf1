// The list, the sentence below it, and the buttons beside that.
#include "studio/window/panels/findings_panel.hpp"

#include <wx/clipbrd.h>
#include <wx/menu.h>
#include <wx/sizer.h>
#include <wx/statline.h>

#include <algorithm>
#include <utility>

#include "studio/form/site_form.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/words.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

/// Where it is, of several pieces as well.
std::string place_of_told(const ToldFinding& told, const Findings& findings, const Event& event) {
  return told.findings.size() == 1 ? place_text(findings[told.findings.front()], event) : told.place;
}

bool is_enter(int key) { return key == WXK_RETURN || key == WXK_NUMPAD_ENTER; }

}  // namespace

FindingsPanel::FindingsPanel(wxWindow* parent, FindingsAnswers answers)
    : wxPanel(parent), answers_(std::move(answers)) {
  table_ = make_table(this, {{"Weight", 76}, {"Where", 264}, growing({"What was found", 400})}, "Findings");
  details_ = new wxTextCtrl(this, wxID_ANY, "", wxDefaultPosition, FromDIP(wxSize(-1, 72)),
                            wxTE_MULTILINE | wxTE_READONLY | wxBORDER_NONE);
  set_accessible_name(details_, "The selected finding in full", "");
  go_ = new wxButton(this, wxID_ANY, "&Go to the field");
  apply_ = new wxButton(this, wxID_ANY, "Apply the &remedy");
  set_accessible_name(go_, "Go to the field that the finding is about", "");
  auto* buttons = new wxBoxSizer(wxVERTICAL);
  buttons->Add(apply_, wxSizerFlags().Expand().Border(wxBOTTOM, FromDIP(4)));
  buttons->Add(go_, wxSizerFlags().Expand());
  auto* below = new wxBoxSizer(wxHORIZONTAL);
  below->Add(details_, wxSizerFlags(1).Expand().Border(wxRIGHT, FromDIP(8)));
  below->Add(buttons, wxSizerFlags());
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(table_.list, wxSizerFlags(1).Expand());
  sizer->Add(new wxStaticLine(this), wxSizerFlags().Expand());
  sizer->Add(below, wxSizerFlags().Expand().Border(wxALL, FromDIP(6)));
  SetSizer(sizer);
  lay_out_with_room(this);
  go_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { go_to_selected(); });
  apply_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { apply_selected(); });
  // The control may still be at work with its rows: what these lead to comes after it.
  table_.list->Bind(wxEVT_DATAVIEW_ITEM_ACTIVATED,
                    [this](wxDataViewEvent&) { CallAfter([this] { go_to_selected(); }); });
  table_.list->Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, [this](wxDataViewEvent&) {
    show_details();
    const Findings told = selected();
    if (!telling_ || told.empty()) return;
    picked_ = true;
    answers_.picked(told.front());
  });
  table_.list->Bind(wxEVT_DATAVIEW_ITEM_CONTEXT_MENU, [this](wxDataViewEvent&) { CallAfter([this] { show_menu(); }); });
  table_.list->Bind(wxEVT_CHAR_HOOK, [this](wxKeyEvent& event) {
    const int key = event.GetKeyCode();
    const bool menu = key == WXK_WINDOWS_MENU || (key == WXK_F10 && event.ShiftDown());
    if (menu)
      show_menu();
    else if (is_enter(key) && event.ControlDown())
      apply_selected();
    else
      event.Skip();
  });
  details_->ChangeValue("Nothing to say about this event.");
  apply_->Disable(), go_->Disable();
}

void FindingsPanel::show(const Study* study, Findings all, std::size_t waiting) {
  const Findings selected_before = selected();
  const Finding before = selected_before.empty() ? Finding() : selected_before.front();
  findings_ = std::move(all);
  std::ranges::stable_sort(findings_, std::greater(), &Finding::weight);
  told_ = study ? told(findings_, study->event) : std::vector<ToldFinding>();
  std::vector<TableRow> rows;
  for (const ToldFinding& one : told_) {
    const Finding& first = findings_[one.findings.front()];
    rows.push_back({{shown(std::string(weight_text(first.weight))), shown(place_of_told(one, findings_, study->event)),
                     shown(first.text)},
                    {},
                    ""});
  }
  if (waiting > 0)
    rows.push_back(
        {{"", "",
          wxString::FromUTF8("Still reckoning how ") << waiting << (waiting == 1 ? " piece stands" : " pieces stand")},
         {},
         ""});
  // One is always selected: a native list that gets the focus without would select its first by itself, and the drawing
  // would jump to it.
  telling_ = false;
  table_.model->set_rows(std::move(rows));
  std::size_t row = 0;  // the gravest, until somebody has picked another
  picked_ = picked_ && study != nullptr;
  for (std::size_t i = 0; i < told_.size(); ++i)
    for (const std::size_t at : told_[i].findings)
      if (picked_ && findings_[at] == before) row = i;
  if (!told_.empty()) table_.list->Select(table_.model->GetItem(static_cast<unsigned int>(row)));
  telling_ = true;
  show_details();
}

Findings FindingsPanel::of_row(int row) const {
  Findings of;
  if (row >= 0 && row < static_cast<int>(told_.size()))
    for (const std::size_t at : told_[static_cast<std::size_t>(row)].findings) of.push_back(findings_[at]);
  return of;
}

Findings FindingsPanel::selected() const { return of_row(table_.selected()); }

void FindingsPanel::go_to_selected() {
  if (const Findings told = selected(); !told.empty()) answers_.go_to(told.front());
}

void FindingsPanel::step(int by) {
  if (told_.empty()) return;
  const int row = std::clamp(table_.selected() + by, 0, static_cast<int>(told_.size()) - 1);
  const wxDataViewItem item = table_.model->GetItem(static_cast<unsigned int>(row));
  picked_ = true;
  table_.list->Select(item);
  table_.list->EnsureVisible(item);
  show_details();
}

void FindingsPanel::apply_selected() {
  if (const Findings told = selected(); !told.empty()) answers_.apply(told);
}

void FindingsPanel::show_details() {
  const int row = table_.selected();
  std::string text = told_.empty() ? "Nothing to say about this event." : "Select a finding to read it in full.";
  if (row >= 0 && row < static_cast<int>(told_.size())) text = told_[static_cast<std::size_t>(row)].sentence;
  if (details_->GetValue() != shown(text)) details_->ChangeValue(shown(text));
  const Findings told = selected();
  const std::string remedy = told.empty() ? std::string() : answers_.remedy_words(told);
  const wxString label = remedy.empty() ? wxString("No one-click remedy") : wxControl::EscapeMnemonics(shown(remedy));
  apply_->Enable(!remedy.empty());
  go_->Enable(!told.empty() && (!told.front().piece.empty() || is_of_site(told.front())));
  if (apply_->GetLabel() == label) return;
  apply_->SetLabel(label);
  set_accessible_name(apply_, remedy.empty() ? wxString("No one-click remedy") : "Apply the remedy: " + shown(remedy),
                      "");
  // Not before it has its room: a native button complains of less than it needs.
  if (GetClientSize().x >= FromDIP(400)) Layout();
}

void FindingsPanel::show_menu() {
  const Findings told = selected();
  if (told.empty()) return;
  wxMenu menu;
  const int go = wxWindow::NewControlId(3), apply = go + 1, copy = go + 2;
  menu.Append(go, "&Go to the field\tEnter")->Enable(go_->IsEnabled());
  menu.Append(apply, apply_->GetLabel() + "\tCtrl+Enter")->Enable(apply_->IsEnabled());
  menu.Append(copy, "&Copy the sentence");
  const int chosen = GetPopupMenuSelectionFromUser(menu);
  if (chosen == go) go_to_selected();
  if (chosen == apply) apply_selected();
  if (chosen == copy && wxTheClipboard->Open()) {
    wxTheClipboard->SetData(new wxTextDataObject(details_->GetValue()));
    wxTheClipboard->Close();
  }
  wxWindow::UnreserveControlId(go, 3);
}

}  // namespace quadrille
