#include "studio/window/panels/form_panel.hpp"

#include <wx/statline.h>
#include <wx/wupdlock.h>

#include <algorithm>
#include <utility>

#include "studio/window/panels/list_editor.hpp"
#include "studio/window/panels/row_editor.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int edge = 10, help_lines = 3;  // [DIP], and lines of text for which there is always room

/// Of the focus: this window or one inside it.
bool holds(const wxWindow* outer, const wxWindow* inner) {
  while (inner != nullptr && inner != outer) inner = inner->GetParent();
  return inner != nullptr && outer != nullptr;
}

}  // namespace

FormPanel::FormPanel(wxWindow* parent, FormAnswers answers)
    : wxPanel(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxTAB_TRAVERSAL), answers_(std::move(answers)) {
  fields_ = new wxScrolledWindow(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL | wxTAB_TRAVERSAL);
  fields_->SetScrollRate(0, FromDIP(12));
  set_accessible_name(fields_, "Fields", "What can be changed of the selected pieces");
  fields_->SetSizer(new wxBoxSizer(wxVERTICAL));
  help_ = new wxStaticText(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_NO_AUTORESIZE);
  help_->SetMinSize(wxSize(-1, help_height(0)));
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(fields_, wxSizerFlags(1).Expand());
  sizer->Add(new wxStaticLine(this), wxSizerFlags().Expand());
  sizer->Add(help_, wxSizerFlags().Expand().Border(wxALL, FromDIP(edge)));
  SetSizer(sizer);
  fields_->Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    lay_out_fields();
  });
  make_anew();
}

void FormPanel::show(std::optional<FormContent> content, const LoadedPalettes* palettes) {
  palettes_ = palettes ? palettes->palettes : std::vector<Palette>();
  const bool same = content && content_ && same_fields(*content);
  const bool same_pieces = content && content_ && content->pieces == content_->pieces;
  const bool nothing_still = !content && !content_;
  const bool alike = content && content_ && content->heading == content_->heading;
  content_ = std::move(content);
  if (!alike) fields_->Scroll(0, 0);  // of another piece of the kind one wants to see the same fields
  if (nothing_still) return;
  if (same) return fill(*content_);
  if (!same_pieces) return make_anew();
  // A control whose event is being handled must outlive it: other fields of the same pieces are made after that.
  if (std::exchange(made_later_, true)) return;
  CallAfter([this] {
    if (made_later_) make_anew();
  });
}

void FormPanel::make_anew() {
  made_later_ = false;
  if (focus_later_.empty() && content_) focus_later_ = focused_key();
  wxWindowUpdateLocker no_flicker(fields_);
  std::pair<std::size_t, std::size_t> mark;
  for (const auto& row : rows_)
    if (row->rows()) mark = {row->rows()->grid()->row(), row->rows()->grid()->place()};
  // A field that loses the keyboard as it goes would commit what was typed to other pieces.
  for (const auto& row : rows_) row->silence();
  if (head_) head_->silence();
  fields_->GetSizer()->Clear(true);
  rows_.clear();
  slots_.reset(), head_.reset();
  picture_ = nullptr;
  say_help("");
  if (content_)
    make(*content_);
  else
    fields_->GetSizer()->Add(new wxStaticText(fields_, wxID_ANY, "Select a piece to see and change it here."),
                             wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  if (content_) fill(*content_);
  for (const auto& row : rows_)
    if (row->rows()) row->rows()->grid()->go_to(mark.first, mark.second);
  lay_out_fields();
  if (const std::string key = std::exchange(focus_later_, ""); !key.empty()) focus_field(key);
}

void FormPanel::make(const FormContent& content) {
  wxSizer& all = *fields_->GetSizer();
  const auto help = [this](const wxString& text) { say_help(text); };
  head_ = std::make_unique<FormHead>(fields_, all, content.pieces.size() > 1, answers_);
  if (!content.slots.empty())
    slots_ = std::make_unique<SlotRows>(fields_, all, content.slots, answers_.pick_colour, help);
  for (const FieldGroup& group : content.form.groups) {
    if (group.fields.empty()) continue;
    auto* heading = new wxStaticText(fields_, wxID_ANY, wxControl::EscapeMnemonics(shown(group.name)));
    heading->SetFont(GetFont().Bold());
    all.Add(heading, wxSizerFlags().Expand().Border(wxLEFT | wxTOP | wxRIGHT, FromDIP(edge)));
    for (const Field& field : group.fields)
      rows_.push_back(std::make_unique<FormRow>(fields_, all, field,
                                                FormRowAnswers{&answers_, help, [this] { lay_out_fields(); }}));
    const bool has_pattern =
        std::ranges::any_of(group.fields, [](const Field& field) { return field.parameter.kind == Kind::rows; });
    if (!has_pattern || picture_ != nullptr) continue;
    picture_ = new PatternPicture(fields_);
    all.Add(picture_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(edge)));
  }
  all.AddSpacer(FromDIP(edge));
}

void FormPanel::settle() {
  if (head_) head_->take_name();
  // What one field takes may change what others there are.
  for (std::size_t row = 0; row < rows_.size(); ++row) rows_[row]->take_text();
}

bool FormPanel::same_fields(const FormContent& content) const {
  if (made_later_ || content.pieces != content_->pieces || content.heading != content_->heading) return false;
  if (content.slots.size() != colours().size()) return false;
  std::size_t at = 0;
  for (const FieldGroup& group : content.form.groups)
    for (const Field& field : group.fields)
      if (at >= rows_.size() || rows_[at++]->key() != field.parameter.key) return false;
  return at == rows_.size();
}

void FormPanel::fill(const FormContent& content) {
  head_->fill(content);
  if (slots_) slots_->fill(content.slots, palettes_, content.may_edit);
  const std::vector<wxColour> colours = colours_of(content.slots, palettes_);
  for (const auto& row : rows_)
    if (const Field* field = content.form.find(row->key())) row->fill(*field, content, colours);
  if (picture_ == nullptr) return;
  picture_->show(content.unrolled, content.clusters, content.places, colours);
  if (picture_->IsShown() == content.unrolled.empty()) {
    picture_->Show(!content.unrolled.empty());
    lay_out_fields();
  }
}

int FormPanel::text_width() const { return fields_->GetClientSize().x - 2 * FromDIP(edge); }

/// After the event at hand, and once for all that changed in it.
void FormPanel::lay_out_fields() {
  if (std::exchange(laid_later_, true)) return;
  CallAfter([this] {
    laid_later_ = false;
    const int width = text_width();
    if (head_) head_->wrap(width);
    for (const auto& row : rows_) row->wrap(width);
    say_help(help_text_);
    if (std::exchange(help_changed_, false)) {
      Layout();  // tells the fields their size, which lays them out once more
      // The field that is written in stays in sight where there is less room for the fields now.
      if (wxWindow* const focus = FindFocus(); holds(fields_, focus) && seen_later_ == nullptr) seen_later_ = focus;
    }
    fields_->FitInside();
    fields_->Layout();
    if (const wxWindow* const seen = seen_later_.get()) scroll_to(*seen);
    seen_later_ = nullptr;
  });
}

/// Of a help of so many lines.
int FormPanel::help_height(int lines) const { return std::max(lines, help_lines) * GetCharHeight() + FromDIP(4); }

void FormPanel::say_help(const wxString& text) {
  help_text_ = text;
  help_->SetLabelText(text);
  help_->Wrap(std::max(GetClientSize().x - 2 * FromDIP(edge), FromDIP(120)));
  const int lines = help_->GetLabelText().Freq('\n') + 1, height = help_height(lines);
  // It takes more room as it needs it, and gives that back with the next piece: a shorter help must not move the fields
  // under a mouse that is being pressed.
  const int had = help_->GetMinHeight();
  if (height == had || (height < had && !text.empty())) return;
  help_->SetMinSize(wxSize(-1, height));
  help_changed_ = true;
  lay_out_fields();
}

FormRow* FormPanel::row_of(std::string_view key) const {
  const auto bears = [&](const auto& row) {
    if (row->key() == key) return true;
    const Field* const field = content_ ? content_->form.find(row->key()) : nullptr;
    return field != nullptr && std::ranges::find(field->parameter.aliases, key) != field->parameter.aliases.end();
  };
  const auto found = std::ranges::find_if(rows_, bears);
  return found == rows_.end() ? nullptr : found->get();
}

std::string FormPanel::focused_key() const {
  const wxWindow* const focus = wxWindow::FindFocus();
  if (focus == nullptr || !holds(fields_, focus)) return {};
  for (const auto& row : rows_)
    if (holds(row->input(), focus) || (row->list() && holds(row->list(), focus)) ||
        (row->rows() && holds(row->rows(), focus)))
      return row->key();
  return {};
}

bool FormPanel::focus_field(std::string_view key) {
  if (made_later_) {
    focus_later_ = key;
    return true;
  }
  wxWindow* target = nullptr;
  if (const FormRow* row = row_of(key)) target = row->input()->IsEnabled() ? row->first() : nullptr;
  if (target == nullptr && slots_) target = slots_->button_of(key);
  if (target == nullptr) return false;
  target->SetFocus();
  seen_later_ = target;
  lay_out_fields();
  return true;
}

/// Scrolls so that all of the window is seen, as far as there is room; its top where there is not.
void FormPanel::scroll_to(const wxWindow& window) {
  int per_unit = 0, across = 0, top = 0;
  fields_->GetScrollPixelsPerUnit(&across, &per_unit);
  fields_->GetViewStart(&across, &top);
  if (per_unit <= 0) return;
  const int room = fields_->GetClientSize().y, margin = FromDIP(edge);
  const int y = window.GetScreenPosition().y - fields_->GetScreenPosition().y;
  const int below = y + window.GetSize().y + margin - room;
  const int by = y < margin ? y - margin : std::min(std::max(below, 0), y - margin);
  if (by != 0) fields_->Scroll(-1, std::max(top + (by + (by > 0 ? per_unit - 1 : 0)) / per_unit, 0));
}

wxWindow* FormPanel::input(std::string_view key) const {
  const FormRow* const found = row_of(key);
  return found ? found->input() : nullptr;
}

const FormRow* FormPanel::row(std::string_view key) const { return row_of(key); }

wxButton* FormPanel::usual_button(std::string_view key) const {
  const FormRow* const found = row_of(key);
  return found ? found->usual() : nullptr;
}

wxString FormPanel::fault(std::string_view key) const {
  const FormRow* const found = row_of(key);
  return found ? found->fault() : wxString();
}

const std::vector<wxButton*>& FormPanel::colours() const {
  static const std::vector<wxButton*> none;
  return slots_ ? slots_->buttons() : none;
}

}  // namespace quadrille
