#include "studio/window/dialogs/new_event_dialog.hpp"

#include <wx/sizer.h>

#include <string>
#include <utility>

#include "sdk/units.hpp"
#include "studio/form/facts.hpp"
#include "studio/model/calendar.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/table.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr std::size_t most_colours = 4;
constexpr double widest_m = 200;

}  // namespace

NewEventDialog::NewEventDialog(wxWindow* parent, std::shared_ptr<const LoadedPalettes> palettes,
                               std::shared_ptr<const PieceTypes> types)
    : wxDialog(parent, wxID_ANY, "New event"), palettes_(std::move(palettes)), types_(std::move(types)) {
  auto* fields = new wxFlexGridSizer(2, FromDIP(wxSize(12, 8)));
  fields->AddGrowableCol(1);
  const auto add = [&](const char* label, wxWindow* field, wxWindow* beside = nullptr) {
    fields->Add(new wxStaticText(this, wxID_ANY, label), wxSizerFlags().CentreVertical());
    auto* row = new wxBoxSizer(wxHORIZONTAL);
    row->Add(field, wxSizerFlags(1).CentreVertical());
    if (beside) row->Add(beside, wxSizerFlags().CentreVertical().Border(wxLEFT, FromDIP(8)));
    fields->Add(row, wxSizerFlags().Expand());
    set_accessible_names(field, label);
  };
  title_ = new wxTextCtrl(this, wxID_ANY, "");
  add("What is it called?", title_);
  date_ = new wxTextCtrl(this, wxID_ANY, "");
  date_->SetHint("19 June 2027 or 2027-06-19; empty if you do not know yet");
  // What was understood is shown in words, so that nobody takes June for December.
  date_->Bind(wxEVT_KILL_FOCUS, [this](wxFocusEvent& event) {
    event.Skip();
    if (const auto day = this->day(); day && !day->empty()) date_->ChangeValue(shown(print_date(*day)));
  });
  add("On which day?", date_);
  const auto add_either = [&](const char* label, const wxString& first, const wxString& second) {
    auto* one = new wxRadioButton(this, wxID_ANY, first, wxDefaultPosition, wxDefaultSize, wxRB_GROUP);
    auto* other = new wxRadioButton(this, wxID_ANY, second);
    auto* row = new wxBoxSizer(wxHORIZONTAL);
    row->Add(one, wxSizerFlags().CentreVertical());
    row->Add(other, wxSizerFlags().CentreVertical().Border(wxLEFT, FromDIP(16)));
    fields->Add(new wxStaticText(this, wxID_ANY, label), wxSizerFlags().CentreVertical());
    fields->Add(row, wxSizerFlags().Border(wxTOP | wxBOTTOM, FromDIP(4)));
    set_accessible_name(one, wxString(label) + " " + first, "");
    set_accessible_name(other, wxString(label) + " " + second, "");
    return other;
  };
  outdoors_ = add_either("Where?", "Indoors", "Outdoors");
  metres_ = add_either("How do you measure?", "Feet and inches", "Metres");
  width_ = new wxTextCtrl(this, wxID_ANY, "");
  width_->SetHint(wxString::FromUTF8("20ft, 8'6\" or 6 m; empty if you do not know yet"));
  add("How wide is the place?", width_);
  first_ = new wxChoice(this, wxID_ANY);
  first_->Append("Nothing yet");
  if (types_)
    for (const PieceType& type : types_->types) first_->Append(shown(type.name));
  first_->SetSelection(first_->GetCount() > 1 ? 1 : 0);
  add("What comes first?", first_);
  palette_ = new wxChoice(this, wxID_ANY);
  for (const Palette& palette : palettes_->palettes) palette_->Append(shown(palette.name));
  if (!palette_->IsEmpty()) palette_->SetSelection(0);
  palette_->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) { show_colours(); });
  add("From which palette?", palette_);
  auto* row = new wxBoxSizer(wxHORIZONTAL);
  for (std::size_t i = 0; i < most_colours; ++i) {
    auto* colour = new wxChoice(this, wxID_ANY);
    set_accessible_name(colour, wxString("Colour ") << (i + 1), "");
    colour->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) { show_swatches(); });
    auto* swatch = new wxStaticBitmap(this, wxID_ANY, make_swatch(*wxWHITE));
    const wxSizerFlags beside = wxSizerFlags().CentreVertical();
    row->Add(swatch, wxSizerFlags(beside).Border(i > 0 ? wxLEFT | wxRIGHT : wxRIGHT, FromDIP(4)));
    row->Add(colour, wxSizerFlags(1));
    colours_.push_back(colour), swatches_.push_back(swatch);
  }
  fields->Add(new wxStaticText(this, wxID_ANY, "In which colours?"), wxSizerFlags().CentreVertical());
  fields->Add(row, wxSizerFlags().Expand());
  fault_ = new wxStaticText(this, wxID_ANY, "");
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(fields, wxSizerFlags(1).Expand().Border(wxALL, FromDIP(14)));
  sizer->Add(fault_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, FromDIP(14)));
  sizer->Add(CreateStdDialogButtonSizer(wxOK | wxCANCEL), wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  FindWindow(wxID_OK)->SetLabel("&Begin");
  show_colours();
  SetSizerAndFit(sizer);
  SetSize(wxSize(FromDIP(620), GetSize().y));
  Bind(
      wxEVT_BUTTON,
      [this](wxCommandEvent& event) {
        if (check()) event.Skip();
      },
      wxID_OK);
  title_->SetFocus();
}

/// The first two slots are filled, as a piece needs them; the others wait.
void NewEventDialog::show_colours() {
  const int chosen = palette_->GetSelection();
  for (std::size_t i = 0; i < colours_.size(); ++i) {
    wxChoice& choice = *colours_[i];
    choice.Clear();
    choice.Append(wxString::FromUTF8("–"));
    if (chosen >= 0)
      for (const Colour& colour : palettes_->palettes[static_cast<std::size_t>(chosen)].colours)
        choice.Append(shown(colour.name));
    choice.SetSelection(i < 2 && choice.GetCount() > i + 1 ? static_cast<int>(i) + 1 : 0);
  }
  show_swatches();
}

void NewEventDialog::show_swatches() {
  const int palette = palette_->GetSelection();
  for (std::size_t i = 0; i < colours_.size(); ++i) {
    const int chosen = colours_[i]->GetSelection();
    const bool some = palette >= 0 && chosen > 0;
    wxColour filled = GetBackgroundColour();  // an empty ring where none is chosen
    if (some) {
      const Colour& colour =
          palettes_->palettes[static_cast<std::size_t>(palette)].colours[static_cast<std::size_t>(chosen) - 1];
      filled = wxColour(colour.red, colour.green, colour.blue);
    }
    swatches_[i]->SetBitmap(make_swatch(filled));
  }
}

Units NewEventDialog::units() const { return metres_->GetValue() ? Units::metric : Units::feet; }

std::optional<double> NewEventDialog::width_m() const {
  const std::string typed = text_of(width_->GetValue().Strip(wxString::both));
  if (typed.empty()) return 0;
  const auto width = parse_length(typed);
  return width && *width > 0 && *width <= widest_m ? std::optional(*width) : std::nullopt;
}

Result<std::string> NewEventDialog::day() const { return read_day("The day", text_of(date_->GetValue()), units()); }

bool NewEventDialog::check() {
  const auto chosen = day();
  if (chosen && width_m()) return true;
  fault_->SetLabelText(chosen ? wxString::FromUTF8("The width cannot be read. Write 20ft, 8'6\" or 6 m; at most 200 m.")
                              : shown(chosen.error));
  fault_->Wrap(GetClientSize().x - 2 * FromDIP(14));
  SetClientSize(GetClientSize().x, GetSizer()->GetMinSize().y);
  Layout();
  (chosen ? width_ : date_)->SetFocus();
  return false;
}

std::optional<NewEventAnswers> NewEventDialog::answers() const {
  const auto width = width_m();
  const auto chosen_day = day();
  if (!width || !chosen_day) return std::nullopt;
  NewEventAnswers answers;
  answers.title = text_of(title_->GetValue().Strip(wxString::both));
  answers.date = *chosen_day;
  answers.surroundings = outdoors_->GetValue() ? Surroundings::outdoors : Surroundings::indoors;
  answers.units = units();
  if (*width > 0) answers.width_m = *width;
  if (const int chosen = palette_->GetSelection(); chosen >= 0) {
    const Palette& palette = palettes_->palettes[static_cast<std::size_t>(chosen)];
    answers.palette = palette.key;
    for (const wxChoice* choice : colours_)
      if (const int colour = choice->GetSelection(); colour > 0)
        answers.colours.push_back({palette.key, palette.colours[static_cast<std::size_t>(colour) - 1].key});
  }
  if (const int first = first_->GetSelection(); first > 0) {
    const PieceType& type = types_->types[static_cast<std::size_t>(first) - 1];
    answers.first_type = type.id;
    answers.first_name = type.name;
    answers.first_values = values_for_colours(type.parameters, answers.colours.size());
  }
  return answers;
}

}  // namespace quadrille
