#include "studio/window/toolkit/fact_rows.hpp"

#include <wx/choice.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>

#include <algorithm>
#include <utility>

#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wheel.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int label_width = 124, unit_width = 34, side = 10;  // [DIP]

wxString tip_of(const FactField& field) {
  std::string tip = field.kind == FactKind::choice ? field.text : std::string();  // which may be too long for its room
  if (!field.help.empty()) tip += (tip.empty() ? "" : "\n") + field.help;
  if (!field.range.empty()) tip += (tip.empty() ? "From " : "\nFrom ") + field.range + ".";
  return shown(tip);
}

}  // namespace

FactRows::FactRows(wxWindow* parent, Typed typed)
    : wxScrolledWindow(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL | wxTAB_TRAVERSAL),
      typed_(std::move(typed)) {
  SetScrollRate(0, FromDIP(12));
  set_accessible_name(this, "Facts", "One field for each");
  SetSizer(new wxBoxSizer(wxVERTICAL));
}

void FactRows::show(FactFields fields, const std::string& of, bool may_edit) {
  const bool same = same_rows(fields, of), same_thing = of == of_;
  fields_ = std::move(fields);
  of_ = of;
  may_edit_ = may_edit;
  if (same) return fill();
  if (!same_thing) return make_anew();
  // A control whose event is being handled must outlive it: other fields of the same thing are made after that.
  if (std::exchange(made_later_, true)) return;
  CallAfter([this] {
    if (made_later_) make_anew();
  });
}

bool FactRows::same_rows(const FactFields& fields, const std::string& of) const {
  if (made_later_ || of != of_ || fields.size() != rows_.size()) return false;
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const Row& row = rows_[i];
    if (row.key != fields[i].key || row.kind != fields[i].kind) return false;
    if (!std::ranges::equal(row.labels, fields[i].choices, {}, {}, &Choice::label)) return false;
  }
  return true;
}

void FactRows::make_anew() {
  made_later_ = false;
  telling_ = false;
  GetSizer()->Clear(true);
  rows_.clear();
  std::string group;
  for (const FactField& field : fields_) {
    if (field.group != group && !field.group.empty()) {
      auto* heading = new wxStaticText(this, wxID_ANY, wxControl::EscapeMnemonics(shown(field.group)));
      heading->SetFont(GetFont().Bold());
      // Across the whole width: in the room that it asks for, bold words are broken and lose the last one.
      GetSizer()->Add(heading, wxSizerFlags().Expand().Border(wxLEFT | wxTOP | wxRIGHT, FromDIP(side)));
    }
    group = field.group;
    make_row(field);
  }
  GetSizer()->AddSpacer(FromDIP(6));
  fill();
  FitInside();
  Layout();
}

wxWindow* FactRows::make_input(const FactField& field, std::size_t row) {
  if (field.kind == FactKind::choice) {
    auto* choice = new wxChoice(this, wxID_ANY);
    for (const Choice& one : field.choices) choice->Append(shown(one.label));
    leave_wheel_to(this, choice);
    choice->Bind(wxEVT_CHOICE, [this, choice, row](wxCommandEvent&) {
      if (telling_) commit(row, text_of(choice->GetStringSelection()));
    });
    return choice;
  }
  auto* text = new wxTextCtrl(this, wxID_ANY, "", wxDefaultPosition, FromDIP(wxSize(60, -1)), wxTE_PROCESS_ENTER);
  text->Bind(wxEVT_TEXT_ENTER, [this, row](wxCommandEvent&) { take_text(row); });
  text->Bind(wxEVT_KILL_FOCUS, [this, row](wxFocusEvent& event) {
    event.Skip();
    take_text(row);
  });
  text->Bind(wxEVT_KEY_DOWN, [this, text, row](wxKeyEvent& event) {
    const bool typing = row < rows_.size() && text->GetValue() != rows_[row].shown_text;
    if (event.GetKeyCode() != WXK_ESCAPE || !typing) return event.Skip();
    text->ChangeValue(rows_[row].shown_text);  // what was typed is given up
    say(*rows_[row].fault, "");
  });
  return text;
}

void FactRows::make_row(const FactField& field) {
  Row row;
  row.key = field.key, row.kind = field.kind;
  for (const Choice& one : field.choices) row.labels.push_back(one.label);
  auto* label = new wxStaticText(this, wxID_ANY, wxControl::EscapeMnemonics(shown(field.label)), wxDefaultPosition,
                                 FromDIP(wxSize(label_width, -1)), wxST_NO_AUTORESIZE | wxST_ELLIPSIZE_END);
  row.input = make_input(field, rows_.size());
  row.unit = new wxStaticText(this, wxID_ANY, shown(field.unit), wxDefaultPosition, FromDIP(wxSize(unit_width, -1)));
  row.note = new wxStaticText(this, wxID_ANY, "");
  row.fault = new wxStaticText(this, wxID_ANY, "");
  row.note->Hide(), row.fault->Hide();
  set_accessible_name(row.input, shown(field.label), shown(field.help));
  auto* line = new wxBoxSizer(wxHORIZONTAL);
  line->Add(label, wxSizerFlags().CentreVertical());
  line->Add(row.input, wxSizerFlags(1).CentreVertical());
  line->Add(row.unit, wxSizerFlags().CentreVertical().Border(wxLEFT, FromDIP(4)));
  GetSizer()->AddSpacer(FromDIP(4));
  GetSizer()->Add(line, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, FromDIP(side)));
  auto* beneath = new wxBoxSizer(wxVERTICAL);
  beneath->Add(row.note, wxSizerFlags().Expand().Border(wxLEFT, FromDIP(label_width)));
  beneath->Add(row.fault, wxSizerFlags().Expand());
  GetSizer()->Add(beneath, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, FromDIP(side)));
  rows_.push_back(std::move(row));
}

void FactRows::fill() {
  telling_ = false;
  for (std::size_t i = 0; i < rows_.size() && i < fields_.size(); ++i) fill_row(rows_[i], fields_[i]);
  telling_ = true;
}

void FactRows::fill_row(Row& row, const FactField& field) {
  const wxString text = shown(field.text);
  if (auto* choice = dynamic_cast<wxChoice*>(row.input)) {
    choice->SetSelection(choice->FindString(text, true));
  } else if (auto* typed = dynamic_cast<wxTextCtrl*>(row.input)) {
    // What is being typed, or was refused, stays until it is taken or given up.
    const bool being_typed = typed->GetValue() != row.shown_text && (typed->HasFocus() || row.fault->IsShown());
    if (!being_typed && typed->GetValue() != text) typed->ChangeValue(text);
    if (!being_typed) row.shown_text = text;
  }
  row.input->Enable(may_edit_ && field.applies);
  row.input->SetToolTip(tip_of(field));
  if (row.unit->GetLabel() != shown(field.unit)) row.unit->SetLabelText(shown(field.unit));
  if (row.note->GetLabel() != shown(field.note) || row.note->IsShown() != !field.note.empty())
    say(*row.note, field.note, FromDIP(label_width));
}

bool FactRows::settle() {
  for (std::size_t row = 0; row < rows_.size(); ++row) take_text(row);
  return std::ranges::none_of(rows_, [](const Row& row) { return row.fault->IsShown(); });
}

void FactRows::focus_fault() {
  const auto row = std::ranges::find_if(rows_, [](const Row& one) { return one.fault->IsShown(); });
  if (row != rows_.end()) row->input->SetFocus();
}

void FactRows::take_text(std::size_t row) {
  if (!telling_ || row >= rows_.size()) return;
  const auto* typed = dynamic_cast<wxTextCtrl*>(rows_[row].input);
  if (typed != nullptr && typed->GetValue() != rows_[row].shown_text) commit(row, text_of(typed->GetValue()));
}

void FactRows::commit(std::size_t row, const std::string& text) {
  const std::string key = rows_[row].key;
  auto* const typed = dynamic_cast<wxTextCtrl*>(rows_[row].input);
  const wxString before = rows_[row].shown_text;
  if (typed != nullptr) rows_[row].shown_text = typed->GetValue();  // taken, unless it is refused
  const auto fault = typed_(key, text);
  if (row >= rows_.size() || rows_[row].key != key) return;  // other fields have come in their place
  if (!fault) return say(*rows_[row].fault, "");
  rows_[row].shown_text = before;
  say(*rows_[row].fault, *fault);
}

void FactRows::say(wxStaticText& line, const std::string& sentence, int indent) {
  if (sentence.empty() && !line.IsShown()) return;
  line.SetLabelText(shown(sentence));
  line.Wrap(std::max(FromDIP(120), GetClientSize().x - indent - FromDIP(2 * side + 4)));
  line.Show(!sentence.empty());
  FitInside();
}

wxWindow* FactRows::input(std::string_view key) const {
  const auto row = std::ranges::find(rows_, key, &Row::key);
  return row == rows_.end() ? nullptr : row->input;
}

wxString FactRows::fault(std::string_view key) const {
  const auto row = std::ranges::find(rows_, key, &Row::key);
  return row == rows_.end() || !row->fault->IsShown() ? wxString() : row->fault->GetLabel();
}

wxString FactRows::note(std::string_view key) const {
  const auto row = std::ranges::find(rows_, key, &Row::key);
  return row == rows_.end() || !row->note->IsShown() ? wxString() : row->note->GetLabel();
}

}  // namespace quadrille
