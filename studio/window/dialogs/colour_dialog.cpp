#include "studio/window/dialogs/colour_dialog.hpp"

#include <wx/sizer.h>

#include <algorithm>
#include <utility>

#include "sdk/number.hpp"
#include "studio/colour/difference.hpp"
#include "studio/files/palette_file.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

ColourDialog::ColourDialog(wxWindow* parent, ColourQuestion question)
    : wxDialog(parent, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER),
      question_(std::move(question)) {
  const std::string letter = question_.slot < question_.slots.size() ? question_.slots[question_.slot].letter : "";
  SetTitle(shown("Colour " + letter));
  search_ = new wxTextCtrl(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxTE_PROCESS_ENTER);
  // Not a hint in the field: that is not seen while it has the keyboard, which it has from the start.
  auto* how = new wxStaticText(this, wxID_ANY, "Name, finish or palette; #e06a4c finds the nearest");
  set_accessible_name(search_, "Search colours", "A name, a finish, a palette, or a colour such as #e06a4c");
  table_ = make_table(this, {{"Colour", 170, false, true}, {"Finish", 80}, {"From", 120}, {"Likeness", 0}}, "Colours");
  words_ = new wxStaticText(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_NO_AUTORESIZE);
  words_->SetMinSize(wxSize(-1, 3 * GetCharHeight()));
  like_this_ = new wxButton(this, wxID_ANY, wxString::FromUTF8("Ones &like this"));
  auto* none = new wxButton(this, wxID_ANY, "&No colour");
  auto* buttons = new wxBoxSizer(wxHORIZONTAL);
  buttons->Add(like_this_, wxSizerFlags().CentreVertical());
  buttons->Add(none, wxSizerFlags().CentreVertical().Border(wxLEFT, FromDIP(6)));
  buttons->AddStretchSpacer();
  buttons->Add(CreateStdDialogButtonSizer(wxOK | wxCANCEL), wxSizerFlags().CentreVertical());
  FindWindow(wxID_OK)->SetLabel("&Choose");
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(how, wxSizerFlags().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(10)));
  sizer->AddSpacer(FromDIP(4));
  sizer->Add(search_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(10)));
  sizer->Add(table_.list, wxSizerFlags(1).Expand().Border(wxLEFT | wxRIGHT, FromDIP(10)));
  sizer->Add(words_, wxSizerFlags().Expand().Border(wxALL, FromDIP(10)));
  sizer->Add(buttons, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(10)));
  SetSizer(sizer);
  SetMinSize(FromDIP(wxSize(440, 360)));
  SetSize(FromDIP(wxSize(580, 520)));
  CentreOnParent();

  search_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { fill(); });
  search_->Bind(wxEVT_TEXT_ENTER, [this](wxCommandEvent&) {
    if (chosen()) EndModal(wxID_OK);
  });
  search_->Bind(wxEVT_KEY_DOWN, [this](wxKeyEvent& event) {
    if (event.GetKeyCode() == WXK_DOWN)
      table_.list->SetFocus();
    else
      event.Skip();
  });
  table_.list->Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, [this](wxDataViewEvent&) { show_words(); });
  table_.list->Bind(wxEVT_DATAVIEW_ITEM_ACTIVATED, [this](wxDataViewEvent&) {
    CallAfter([this] {
      if (IsModal() && chosen()) EndModal(wxID_OK);
    });
  });
  like_this_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) {
    if (const auto entry = selected())
      search(shown(srgb_text({"", "", entry->srgb.red, entry->srgb.green, entry->srgb.blue, entry->finish, {}})));
  });
  none->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) {
    none_ = true;
    if (IsModal()) EndModal(wxID_OK);
  });
  fill();
  const auto here = question_.slot < question_.slots.size() ? question_.slots[question_.slot].colour : std::nullopt;
  if (here) select(*here);
  search_->SetFocus();
}

void ColourDialog::search(const wxString& text) { search_->SetValue(text); }

void ColourDialog::fill() {
  const auto before = selected();
  rows_.clear();
  std::vector<TableRow> rows;
  for (const ColourGroup& group :
       colour_choices(question_.event, question_.palettes, question_.recent, text_of(search_->GetValue())))
    for (const ColourEntry& entry : group.colours) {
      const bool near = entry.difference.has_value();
      std::string last;
      if (near)
        last = std::string(difference_in_words(*entry.difference)) + " (" + print_fixed(*entry.difference, 1) + ")";
      else if (!entry.in_event)
        last = "new to this event";
      rows.push_back({{shown(entry.name), shown(std::string(finish_in_words(entry.finish))),
                       shown(near ? entry.palette_name : group.heading), shown(last)},
                      make_swatch(wxColour(entry.srgb.red, entry.srgb.green, entry.srgb.blue)),
                      entry.reference.palette + "/" + entry.reference.colour});
      rows_.push_back(entry);
    }
  table_.model->set_rows(std::move(rows));
  if (!(before && select(before->reference)) && !rows_.empty()) table_.list->Select(table_.model->GetItem(0));
  show_words();
}

bool ColourDialog::select(const ColourReference& colour) {
  const auto found = std::ranges::find(rows_, colour, &ColourEntry::reference);
  if (found == rows_.end()) return false;
  const wxDataViewItem item = table_.model->GetItem(static_cast<unsigned int>(found - rows_.begin()));
  table_.list->Select(item);
  table_.list->EnsureVisible(item);
  show_words();
  return true;
}

std::optional<ColourEntry> ColourDialog::selected() const {
  const int row = table_.selected();
  if (row < 0 || row >= static_cast<int>(rows_.size())) return std::nullopt;
  return rows_[static_cast<std::size_t>(row)];
}

std::optional<ColourReference> ColourDialog::chosen() const {
  if (none_) return ColourReference{};
  const auto entry = selected();
  return entry ? std::optional(entry->reference) : std::nullopt;
}

/// What is selected, and what it would lie too near to.
void ColourDialog::show_words() {
  const auto entry = selected();
  std::string words = "No colour has that in its name. Clear the field to see all.";
  if (entry) {
    words = colour_in_words(question_.palettes, entry->reference) + ", from " + entry->palette_name +
            (entry->in_event ? "." : ", which this event will draw from too.");
    const std::string alike = alike_in_words(question_.palettes, question_.slots, question_.slot, entry->reference);
    if (!alike.empty()) words += "\n⚠ " + alike;
  }
  words_text_ = shown(words);
  words_->SetLabelText(words_text_);
  words_->Wrap(std::max(GetClientSize().x - FromDIP(20), FromDIP(200)));
  like_this_->Enable(entry.has_value());
  FindWindow(wxID_OK)->Enable(entry.has_value());
}

}  // namespace quadrille
