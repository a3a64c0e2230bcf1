#include "studio/window/dialogs/house_fields.hpp"

#include <wx/choice.h>
#include <wx/combobox.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>

#include <algorithm>
#include <utility>

#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wheel.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int fault_width = 520, widest_label = 420, beside_width = 226;  // [DIP]

// What can be typed into is asked for first: a combo box is a choice too, which knows nothing of what was typed.

wxString text_in(const wxWindow& input) {
  if (const auto* entry = dynamic_cast<const wxTextEntry*>(&input)) return entry->GetValue();
  if (const auto* choice = dynamic_cast<const wxChoice*>(&input)) return choice->GetStringSelection();
  return {};
}

void put_text(wxWindow& input, const wxString& text) {
  if (auto* entry = dynamic_cast<wxTextEntry*>(&input))
    entry->ChangeValue(text);
  else if (auto* choice = dynamic_cast<wxChoice*>(&input))
    choice->SetSelection(choice->FindString(text, true));
}

/// What may be chosen follows the house, such as its inflators. What is chosen stays so as long as it is among them.
void offer(wxWindow& input, const std::vector<std::string>& choices) {
  auto* const list = dynamic_cast<wxItemContainer*>(&input);
  if (list == nullptr) return;
  wxArrayString wanted;
  for (const std::string& choice : choices) wanted.Add(shown(choice));
  if (list->GetStrings() == wanted) return;
  const wxString text = text_in(input);
  list->Set(wanted);
  put_text(input, text);
}

/// "s/kg, 0.1 to 120"
wxString beside_text(const HouseField& field) {
  return shown(field.unit + (field.unit.empty() || field.range.empty() ? "" : ", ") + field.range);
}

}  // namespace

HouseFields::HouseFields(wxWindow* parent, HouseFieldsAnswers answers)
    : wxScrolledWindow(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL | wxTAB_TRAVERSAL),
      answers_(std::move(answers)) {
  SetScrollRate(0, FromDIP(12));
  SetSizer(new wxBoxSizer(wxVERTICAL));
}

void HouseFields::show(const std::vector<HouseFieldGroup>& groups) {
  std::size_t at = 0;
  bool same = true;
  for (const HouseFieldGroup& group : groups)
    for (const HouseField& field : group.fields) {
      same = same && at < rows_.size() && rows_[at].key == field.key;
      ++at;
    }
  if (!same || at != rows_.size()) make(groups);
  for (const HouseFieldGroup& group : groups)
    for (const HouseField& field : group.fields) fill(*find(field.key), field);
}

void HouseFields::make(const std::vector<HouseFieldGroup>& groups) {
  GetSizer()->Clear(true);
  rows_.clear();
  label_width_ = 0;
  for (const HouseFieldGroup& group : groups)
    for (const HouseField& field : group.fields)
      label_width_ = std::max(label_width_, GetTextExtent(shown(field.label)).x + FromDIP(8));
  label_width_ = std::min(label_width_, FromDIP(widest_label));
  for (const HouseFieldGroup& group : groups) {
    if (!group.name.empty()) {
      auto* heading = new wxStaticText(this, wxID_ANY, wxControl::EscapeMnemonics(shown(group.name)));
      heading->SetFont(GetFont().Bold());
      GetSizer()->AddSpacer(FromDIP(12));
      GetSizer()->Add(heading, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, FromDIP(6)));
    }
    for (const HouseField& field : group.fields) make_row(field, *GetSizer());
  }
  GetSizer()->AddSpacer(FromDIP(12));
  FitInside();
  Layout();
}

wxWindow* HouseFields::make_input(const HouseField& field, std::size_t row) {
  wxArrayString choices;
  for (const std::string& choice : field.choices) choices.Add(shown(choice));
  const auto on_leaving = [this, row](wxWindow* window) {
    window->Bind(wxEVT_KILL_FOCUS, [this, row](wxFocusEvent& event) {
      event.Skip();
      if (answers_.typed) take(row);
    });
  };
  if (!field.may_be_typed) {
    auto* choice = new wxChoice(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, choices);
    leave_wheel_to(this, choice);
    choice->Bind(wxEVT_CHOICE, [this, row](wxCommandEvent&) {
      if (answers_.typed) take(row);
    });
    return choice;
  }
  if (!field.choices.empty()) {
    auto* box = new wxComboBox(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, choices);
    leave_wheel_to(this, box);
    on_leaving(box);
    return box;
  }
  auto* text = new wxTextCtrl(this, wxID_ANY, "");
  on_leaving(text);
  return text;
}

void HouseFields::make_row(const HouseField& field, wxSizer& all) {
  Row row;
  row.key = field.key;
  auto* label = new wxStaticText(this, wxID_ANY, wxControl::EscapeMnemonics(shown(field.label)), wxDefaultPosition,
                                 wxSize(label_width_, -1), wxST_NO_AUTORESIZE | wxST_ELLIPSIZE_END);
  label->SetToolTip(shown(field.label));
  row.input = make_input(field, rows_.size());
  row.input->SetMinSize(FromDIP(wxSize(110, -1)));
  row.beside = new wxStaticText(this, wxID_ANY, "", wxDefaultPosition, FromDIP(wxSize(beside_width, -1)),
                                wxST_NO_AUTORESIZE | wxST_ELLIPSIZE_END);
  std::string spoken = field.help;
  if (!field.range.empty()) spoken += (spoken.empty() ? "" : " ") + field.range + ".";
  set_accessible_name(row.input, shown(field.label), shown(spoken));
  auto* line = new wxBoxSizer(wxHORIZONTAL);
  line->Add(label, wxSizerFlags().CentreVertical());
  line->Add(row.input, wxSizerFlags(1).CentreVertical().Border(wxLEFT, FromDIP(6)));
  line->Add(row.beside, wxSizerFlags().CentreVertical().Border(wxLEFT, FromDIP(8)));
  // The place of the button is kept, so that fields stand in line.
  row.usual = new wxButton(this, wxID_ANY, "Default", wxDefaultPosition, wxDefaultSize, wxBU_EXACTFIT);
  row.usual->SetMinSize(row.usual->GetBestSize() + FromDIP(wxSize(12, 0)));  // the word alone fills it to its edges
  set_accessible_name(row.usual, shown("Back to the default: " + field.label), "");
  row.usual->Bind(wxEVT_BUTTON, [this, key = row.key](wxCommandEvent&) {
    if (Row* const its = find(key)) its->shown_text = text_in(*its->input), say(*its, "");
    if (answers_.back_to_default) answers_.back_to_default(key);
  });
  line->Add(row.usual, wxSizerFlags().CentreVertical().ReserveSpaceEvenIfHidden().Border(wxLEFT, FromDIP(6)));
  row.usual->Hide();
  row.fault = new wxStaticText(this, wxID_ANY, "");
  row.fault->Hide();
  all.Add(line, wxSizerFlags().Expand().Border(wxLEFT | wxTOP | wxRIGHT, FromDIP(6)));
  all.Add(row.fault, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, FromDIP(12)));
  rows_.push_back(std::move(row));
}

void HouseFields::fill(Row& row, const HouseField& field) {
  const wxString text = shown(field.text);
  offer(*row.input, field.choices);
  const bool refused = row.fault->IsShown() || (row.input->HasFocus() && text_in(*row.input) != row.shown_text);
  if (!refused) {
    if (text_in(*row.input) != text) put_text(*row.input, text);
    row.shown_text = text;
  }
  wxString tip = shown(field.help);
  if (field.has_standard) tip += (tip.empty() ? "" : "\n") + shown("Default: " + field.standard + ".");
  row.input->SetToolTip(tip);
  wxString beside = beside_text(field);
  if (field.has_standard && field.is_standard) beside += (beside.empty() ? "default" : "; default");
  if (row.beside->GetLabel() != beside) row.beside->SetLabelText(beside);
  row.beside->SetToolTip(beside);
  const bool usual = field.has_standard && !field.is_standard;
  if (row.usual->IsShown() != usual) row.usual->Show(usual);
  row.usual->SetToolTip(shown("Back to the default, " + field.standard));
}

bool HouseFields::take(std::size_t number) {
  if (number >= rows_.size()) return true;
  Row& row = rows_[number];
  const wxString typed = text_in(*row.input);
  if (typed == row.shown_text) return say(row, ""), true;
  const std::string key = row.key;
  const wxString before = std::exchange(row.shown_text, typed);
  const auto fault = answers_.typed(key, text_of(typed));
  if (fault) row.shown_text = before;
  say(row, fault.value_or(""));
  return !fault;
}

bool HouseFields::settle() {
  if (!answers_.typed) return true;
  for (std::size_t i = 0; i < rows_.size(); ++i)
    if (!take(i)) return rows_[i].input->SetFocus(), false;
  return true;
}

std::map<std::string, std::string> HouseFields::texts() const {
  std::map<std::string, std::string> texts;
  for (const Row& row : rows_) texts[row.key] = text_of(text_in(*row.input));
  return texts;
}

void HouseFields::say(Row& row, const std::string& sentence) {
  if (sentence.empty() && !row.fault->IsShown()) return;
  row.fault->SetLabelText(shown(sentence));
  row.fault->Wrap(FromDIP(fault_width));
  row.fault->Show(!sentence.empty());
  FitInside();
  Layout();
}

void HouseFields::say_fault(std::string_view key, const std::string& sentence) {
  if (Row* const row = find(key)) say(*row, sentence);
}

HouseFields::Row* HouseFields::find(std::string_view key) {
  const auto row = std::ranges::find(rows_, key, &Row::key);
  return row == rows_.end() ? nullptr : &*row;
}

const HouseFields::Row* HouseFields::find(std::string_view key) const {
  const auto row = std::ranges::find(rows_, key, &Row::key);
  return row == rows_.end() ? nullptr : &*row;
}

wxWindow* HouseFields::input(std::string_view key) const {
  const Row* const row = find(key);
  return row == nullptr ? nullptr : row->input;
}

wxButton* HouseFields::default_button(std::string_view key) const {
  const Row* const row = find(key);
  return row == nullptr ? nullptr : row->usual;
}

wxString HouseFields::fault(std::string_view key) const {
  const Row* const row = find(key);
  return row == nullptr || !row->fault->IsShown() ? wxString() : row->fault->GetLabel();
}

void HouseFields::type(std::string_view key, const std::string& text) {
  if (Row* const row = find(key)) put_text(*row->input, shown(text));
}

}  // namespace quadrille
