#include "studio/window/dialogs/array_dialog.hpp"

#include <utility>

#include "studio/arrange/arraying.hpp"
#include "studio/form/field_units.hpp"
#include "studio/form/typed.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr std::int64_t most_pieces = 500;  // beyond it nobody sees what is what

Parameter number_field() {
  Parameter number;
  number.label = "The number", number.kind = Kind::count;
  number.hard_min = number.display_min = 1, number.hard_max = number.display_max = 200;
  return number;
}

/// A length of either sign, shown in metres or in feet and inches.
Parameter length_field(const char* label, double most_m) {
  Parameter length;
  length.label = label, length.kind = Kind::length;
  length.hard_min = length.display_min = -most_m, length.hard_max = length.display_max = most_m;
  length.decimals = 3;
  return length;
}

Parameter step_field() { return length_field("The step", 50); }
Parameter whole_length_field() { return length_field("The length", 200); }

}  // namespace

/// What one direction says, or what is wrong in which field.
struct ArrayDialog::Reading {
  std::optional<Steps> steps;
  std::string fault;
};

ArrayDialog::ArrayDialog(wxWindow* parent, std::size_t pieces, const FloorPlace& steps, Units units)
    : wxDialog(parent, wxID_ANY, "Array"), pieces_(pieces), units_(units) {
  const int gap = FromDIP(12);
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  auto* words =
      new wxStaticText(this, wxID_ANY,
                       wxString::FromUTF8("The selected pieces are the first; copies stand in even steps from "
                                          "there. Write lengths in any unit,\n8'6\", 2.4 m or 20ft / 3; with a "
                                          "minus it goes to the left, or towards the audience."));
  sizer->Add(words, wxSizerFlags().Border(wxALL, gap));
  along_ = make_direction(*sizer, "Along the front line", 2, steps.x_m);
  depth_ = make_direction(*sizer, "In depth, away from the audience", 1, steps.y_m);
  facing_ = new wxCheckBox(this, wxID_ANY, "The &halves along the front line face each other, as pairs at an aisle do");
  sizer->Add(facing_, wxSizerFlags().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
  preview_ = new wxStaticText(this, wxID_ANY, " \n ");
  preview_->SetFont(GetFont().Bold());
  sizer->Add(preview_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, gap));
  sizer->Add(CreateStdDialogButtonSizer(wxOK | wxCANCEL), wxSizerFlags().Expand().Border(wxALL, gap));
  FindWindow(wxID_OK)->SetLabel("Make &copies");
  SetSizerAndFit(sizer);
  follow();
  CentreOnParent();
  along_.number->SetFocus();
  along_.number->SelectAll();
}

ArrayDialog::Direction ArrayDialog::make_direction(wxSizer& rows, const wxString& title, int number, double step_m) {
  const int gap = FromDIP(12), small = FromDIP(6);
  Direction made;
  auto* heading = new wxStaticText(this, wxID_ANY, title);
  heading->SetFont(GetFont().Bold());
  rows.Add(heading, wxSizerFlags().Border(wxLEFT | wxRIGHT, gap));
  const wxString ways[] = {"So many, a step apart", "So many over a length", "As many as fit into a length"};
  made.way = new wxChoice(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, 3, ways);
  made.way->SetSelection(number_and_step);
  set_accessible_name(made.way, title + ": how the places are given", "");
  auto* line = new wxBoxSizer(wxHORIZONTAL);
  line->Add(made.way, wxSizerFlags().CentreVertical());
  const auto add = [&](const char* label, const std::string& text, const std::string& unit, int width) {
    auto* name = new wxStaticText(this, wxID_ANY, label);
    auto* field = new wxTextCtrl(this, wxID_ANY, shown(text), wxDefaultPosition, FromDIP(wxSize(width, -1)));
    set_accessible_name(field, title + ": " + wxStaticText::RemoveMnemonics(label), "");
    line->Add(name, wxSizerFlags().CentreVertical().Border(wxLEFT, gap));
    line->Add(field, wxSizerFlags().CentreVertical().Border(wxLEFT, small));
    if (!unit.empty())
      line->Add(new wxStaticText(this, wxID_ANY, shown(unit)), wxSizerFlags().CentreVertical().Border(wxLEFT, small));
    field->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { follow(); });
    return field;
  };
  const std::string unit = unit_of(step_field(), units_).name;
  const auto length = [this](double metres) {
    return text_of(step_field(), Value::of_number(Kind::length, metres), units_).text;
  };
  made.number = add("Number", std::to_string(number), "", 60);
  made.step = add("Step", length(step_m), unit, 100);
  made.length = add("Length", length(4 * step_m), unit, 100);
  rows.Add(line, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, gap));
  made.fault = new wxStaticText(this, wxID_ANY, " ");
  rows.Add(made.fault, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
  made.way->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) { follow(); });
  return made;
}

ArrayDialog::Reading ArrayDialog::read(const Direction& direction) const {
  Reading reading;
  const auto take = [&](const Parameter& parameter, const wxTextCtrl& field) {
    const auto value = read_typed(parameter, text_of(field.GetValue()), units_);
    if (!value && reading.fault.empty()) reading.fault = value.error;
    return value ? value->number : 0.0;
  };
  const int way = direction.way->GetSelection();
  const int number = way == step_within_length ? 0 : static_cast<int>(take(number_field(), *direction.number));
  const double step_m = way == number_over_length ? 0 : take(step_field(), *direction.step);
  const double length_m = way == number_and_step ? 0 : take(whole_length_field(), *direction.length);
  if (!reading.fault.empty()) return reading;
  if (way == step_within_length && step_m <= 0)
    reading.fault = "The step is above 0 here; a length with a minus goes the other way.";
  else if (way == number_and_step && number > 1 && step_m == 0)
    reading.fault = "The step is not 0: the copies would stand in each other.";
  else if (way == number_over_length && number > 1 && length_m == 0)
    reading.fault = "The length is not 0: the copies would stand in each other.";
  else if (way == number_and_step)
    reading.steps = steps_of(number, step_m);
  else if (way == number_over_length)
    reading.steps = Steps{number, length_m};
  else
    reading.steps = steps_within(length_m, step_m);
  return reading;
}

std::optional<ArrayPlan> ArrayDialog::plan() const {
  const Reading along = read(along_), depth = read(depth_);
  if (!along.steps || !depth.steps) return std::nullopt;
  ArrayPlan plan{*along.steps, *depth.steps, facing_->IsChecked()};
  if (pieces_of(plan, pieces_) > most_pieces) return std::nullopt;
  return plan;
}

void ArrayDialog::follow() {
  for (const Direction* direction : {&along_, &depth_}) {
    if (direction->fault == nullptr) return;  // still being made
    const int way = direction->way->GetSelection();
    direction->number->Enable(way != step_within_length);
    direction->step->Enable(way != number_over_length);
    direction->length->Enable(way != number_and_step);
  }
  Reading along = read(along_);
  const Reading depth = read(depth_);
  wxString words;
  if (along.steps && depth.steps) {
    const ArrayPlan plan{*along.steps, *depth.steps, false};
    if (pieces_of(plan, pieces_) > most_pieces)
      along.fault = "That would be " + std::to_string(pieces_of(plan, pieces_)) + " pieces; at most " +
                    std::to_string(most_pieces) + " are made at once.";
    else
      words = shown(array_words(plan, pieces_, units_));
    facing_->Enable(along.steps->count > 1);
  }
  along_.fault->SetLabelText(shown(along.fault));
  depth_.fault->SetLabelText(shown(depth.fault));
  preview_->SetLabelText(words);
  if (GetClientSize().x > 0) preview_->Wrap(GetClientSize().x - FromDIP(24));
  const auto made = plan();
  FindWindow(wxID_OK)->Enable(made && pieces_of(*made, pieces_) > static_cast<std::int64_t>(pieces_));
  Layout();
}

}  // namespace quadrille
