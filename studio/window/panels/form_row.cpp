#include "studio/window/panels/form_row.hpp"

#include <wx/checkbox.h>
#include <wx/choice.h>

#include <algorithm>
#include <utility>

#include "studio/window/panels/list_editor.hpp"
#include "studio/window/panels/row_editor.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/flag_box.hpp"
#include "studio/window/toolkit/wheel.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int label_width = 140, unit_width = 26, usual_side = 26, edge = 10;  // [DIP]
constexpr int surely_shown = 96;  // [DIP], so much of what is chosen, in the narrowest form that there is at first

/// What it does; what is chosen, which may be too long for its field; its range, what is usual, and what it waits for.
wxString help_of(const Field& field) {
  const bool chosen = field.parameter.kind == Kind::choice && !field.various;
  std::string help = field.parameter.label + ": " + (chosen ? field.text + ". " : std::string()) + field.help;
  if (!field.range.empty()) help += " From " + field.range + ".";
  if (!field.standard.empty()) help += " Usually " + field.standard + ".";
  if (!field.applies && !field.waits_for.empty()) help += " It matters when " + field.waits_for + ".";
  return shown(help);
}

}  // namespace

FormRow::FormRow(wxScrolledWindow* parent, wxSizer& rows, const Field& field, FormRowAnswers answers)
    : key_(field.parameter.key), kind_(field.parameter.kind), answers_(std::move(answers)) {
  label_ =
      new wxStaticText(parent, wxID_ANY, wxControl::EscapeMnemonics(shown(field.parameter.label)), wxDefaultPosition,
                       parent->FromDIP(wxSize(label_width, -1)), wxST_NO_AUTORESIZE | wxST_ELLIPSIZE_END);
  input_ = make_input(parent, field);
  set_accessible_name(input_, shown(field.parameter.label), help_of(field));
  unit_ =
      new wxStaticText(parent, wxID_ANY, shown(field.unit), wxDefaultPosition, parent->FromDIP(wxSize(unit_width, -1)));
  usual_ = new wxButton(parent, wxID_ANY, wxString::FromUTF8("↺"), wxDefaultPosition,
                        parent->FromDIP(wxSize(usual_side, usual_side)), wxBU_EXACTFIT | wxBORDER_NONE);
  usual_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { answers_.to_owner->standard(key_); });
  fault_ = new wxStaticText(parent, wxID_ANY, "");
  fault_->Hide();
  auto* line = new wxBoxSizer(wxHORIZONTAL);
  line->Add(label_, wxSizerFlags().CentreVertical());
  line->Add(input_, wxSizerFlags(1).CentreVertical().ReserveSpaceEvenIfHidden());
  line->Add(unit_, wxSizerFlags().CentreVertical().Border(wxLEFT, parent->FromDIP(4)));
  unit_->Show(kind_ != Kind::choice);  // which has none, and long words of its own
  line->Add(usual_, wxSizerFlags().CentreVertical().ReserveSpaceEvenIfHidden());
  rows.AddSpacer(parent->FromDIP(4));
  rows.Add(line, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, parent->FromDIP(edge)));
  rows.Add(fault_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, parent->FromDIP(edge)));
  make_editors(parent, rows);
  for (wxWindow* window :
       {input_, static_cast<wxWindow*>(label_), static_cast<wxWindow*>(unit_), static_cast<wxWindow*>(usual_)})
    tell_help_of(window);
}

wxWindow* FormRow::make_input(wxScrolledWindow* parent, const Field& field) {
  if (kind_ == Kind::choice) {
    auto* choice = new wxChoice(parent, wxID_ANY);
    for (const Choice& one : field.parameter.choices) choice->Append(shown(one.label));
    leave_wheel_to(parent, choice);
    choice->Bind(wxEVT_CHOICE,
                 [this, choice, real = static_cast<int>(field.parameter.choices.size())](wxCommandEvent&) {
                   if (telling_ && choice->GetSelection() < real) commit(text_of(choice->GetStringSelection()));
                 });
    return choice;
  }
  if (kind_ == Kind::flag) {
    auto* box = new wxCheckBox(parent, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxCHK_3STATE);
    box->Bind(wxEVT_CHECKBOX,
              [this, box](wxCommandEvent&) { commit(flag_after_click(*box, shown_flag_) ? "yes" : "no"); });
    return box;
  }
  auto* text = new wxTextCtrl(parent, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxTE_PROCESS_ENTER);
  text->Bind(wxEVT_TEXT_ENTER, [this](wxCommandEvent&) { take_text(); });
  text->Bind(wxEVT_KILL_FOCUS, [this](wxFocusEvent& event) {
    event.Skip();
    take_text();
  });
  text->Bind(wxEVT_KEY_DOWN, [this, text](wxKeyEvent& event) {
    if (event.GetKeyCode() != WXK_ESCAPE) return event.Skip();
    text->ChangeValue(shown_text_);  // what was typed is given up
    say_fault("");
  });
  return text;
}

void FormRow::make_editors(wxWindow* parent, wxSizer& rows) {
  const auto told = [this] { answers_.help(help_); };
  wxWindow* editor = nullptr;
  if (kind_ == Kind::path || kind_ == Kind::mix)
    editor = list_ = new ListEditor(
        parent, {[this](const Value& value) { answers_.to_owner->set(key_, value); }, answers_.grown, told});
  if (kind_ == Kind::rows)
    editor = pattern_ = new RowEditor(
        parent, {[this](const RowGrid& grid) { answers_.to_owner->rows(key_, grid); }, answers_.grown, told});
  if (editor == nullptr) return;
  editor->Hide();
  rows.Add(editor, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxTOP, parent->FromDIP(edge)));
}

/// Where the keyboard or the pointer is. A tip over the field would lie on the ones around it.
void FormRow::tell_help_of(wxWindow* window) {
  window->Bind(wxEVT_SET_FOCUS, [this](wxFocusEvent& event) {
    event.Skip();
    answers_.help(help_);
  });
  window->Bind(wxEVT_ENTER_WINDOW, [this](wxMouseEvent& event) {
    event.Skip();
    answers_.help(help_);
  });
}

void FormRow::fill(const Field& field, const FormContent& content, const std::vector<wxColour>& colours) {
  telling_ = false;
  const wxString text = shown(field.text);
  const bool enabled = content.may_edit && field.applies;
  if (auto* choice = dynamic_cast<wxChoice*>(input_)) {
    // Where the pieces differ, an entry says so; choosing it changes nothing.
    const unsigned int real = static_cast<unsigned int>(field.parameter.choices.size());
    if (field.various && choice->GetCount() == real) choice->Append("various");
    if (!field.various && choice->GetCount() > real) choice->Delete(real);
    choice->SetSelection(field.various ? static_cast<int>(real) : choice->FindString(text, true));
    const bool may_be_cut = choice->GetTextExtent(text).x > choice->FromDIP(surely_shown);
    choice->SetToolTip(may_be_cut && !field.various ? text : wxString());
  } else if (auto* box = dynamic_cast<wxCheckBox*>(input_)) {
    shown_flag_ = field.various ? std::nullopt : std::optional(field.text == "yes");
    show_flag(*box, shown_flag_);
    box->SetLabel(field.various ? "various" : "");
  } else if (auto* typed = dynamic_cast<wxTextCtrl*>(input_)) {
    const bool being_typed = typed->GetValue() != shown_text_ && (typed->HasFocus() || fault_->IsShown());
    if (!being_typed && typed->GetValue() != text) typed->ChangeValue(text);
    if (!being_typed) shown_text_ = text;
    typed->SetHint(field.various ? wxString("various") : wxString());
  }
  input_->Enable(enabled);
  label_->Enable(field.applies);
  const wxString help = help_of(field);
  if (help != help_) set_accessible_name(input_, shown(field.parameter.label), help_ = help);
  const bool lists = list_ && enabled && field.value;
  if (list_ && lists) list_->show(field.parameter, *field.value, content.form.units);
  if (list_ && list_->IsShown() != lists) list_->Show(lists), answers_.grown();
  // Beside the whole list the same as one text would only be in the way, and in metres always.
  if (list_) input_->Show(!lists || !list_->is_whole());
  if (pattern_) {
    const bool rows = enabled && !field.various;
    const auto grid = grid_of(field.text, content.places);
    if (rows && grid) pattern_->show(*grid, content.hand, colours);
    if (pattern_->IsShown() != (rows && bool(grid))) pattern_->Show(rows && bool(grid)), answers_.grown();
  }
  usual_->Show(content.may_edit && !field.is_standard);
  const wxString back = shown("Back to " + (field.standard.empty() ? "what is usual" : field.standard));
  set_accessible_name(usual_, shown(field.parameter.label + ": ") + back, "");
  if (unit_->GetLabel() != shown(field.unit)) unit_->SetLabelText(shown(field.unit));
  telling_ = true;
}

void FormRow::take_text() {
  const auto* typed = dynamic_cast<wxTextCtrl*>(input_);
  if (telling_ && typed != nullptr && typed->GetValue() != shown_text_) commit(text_of(typed->GetValue()));
}

void FormRow::commit(const std::string& text) {
  const auto* typed = dynamic_cast<wxTextCtrl*>(input_);
  const wxString before = shown_text_;
  if (typed != nullptr) shown_text_ = typed->GetValue();  // taken, unless it is refused
  const auto fault = answers_.to_owner->typed(key_, text);
  if (fault) shown_text_ = before;
  say_fault(fault.value_or(""));
}

void FormRow::say_fault(const std::string& sentence) {
  if (sentence == fault_text_) return;
  fault_text_ = sentence;
  fault_->Show(!sentence.empty());
  wrap(width_);
  answers_.grown();
}

void FormRow::wrap(int width) {
  width_ = width;
  if (list_) list_->wrap(width);
  if (fault_text_.empty()) return;
  fault_->SetLabelText(wxString::FromUTF8("⚠ ") + shown(fault_text_));
  fault_->Wrap(std::max(width, fault_->FromDIP(120)));
}

wxString FormRow::fault() const { return shown(fault_text_); }

wxWindow* FormRow::first() const {
  if (list_ && list_->IsShown()) return list_->cell(0, 0);
  if (pattern_ && pattern_->IsShown()) return pattern_->grid();
  return input_;
}

}  // namespace quadrille
