// Two lists and the sentence of the selected refusal.
#include "studio/window/dialogs/pieces_dialog.hpp"

#include <wx/sizer.h>
#include <wx/stattext.h>

#include <algorithm>
#include <utility>

#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

wxString in_words(RefusalReason reason) {
  switch (reason) {
    case RefusalReason::not_a_library:
      return "no library";
    case RefusalReason::no_symbol:
      return "no piece types in it";
    case RefusalReason::cannot_load:
      return "cannot be loaded";
    case RefusalReason::newer_major:
    case RefusalReason::newer_minor:
      return "made for a newer studio";
    case RefusalReason::other_major:
      return "made for an older studio";
    case RefusalReason::struct_too_small:
    case RefusalReason::bad_table:
      return "faulty description";
    case RefusalReason::duplicate_id:
      return "found twice";
    case RefusalReason::build_throws:
    case RefusalReason::build_not_finite:
    case RefusalReason::build_too_large:
    case RefusalReason::build_broken:
      return "cannot build its piece";
    case RefusalReason::crashed_before:
      return "ended the studio before";
  }
  return "refused";
}

}  // namespace

PiecesDialog::PiecesDialog(wxWindow* parent, std::function<void()> try_again)
    : wxDialog(parent, wxID_ANY, "Piece types", wxDefaultPosition, wxDefaultSize,
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER) {
  const auto heading = [this](const wxString& text) {
    auto* label = new wxStaticText(this, wxID_ANY, text);
    label->SetFont(GetFont().Bold());
    return label;
  };
  auto* found_heading = heading("Piece types found");
  found_ =
      make_table(this, {{"Name", 124}, {"Id", 80}, {"Plugin", 164}, growing({"What it is", 400})}, "Piece types found");
  auto* refused_heading = heading("Files refused");
  refused_ = make_table(this, {{"File", 240}, {"Reason", 200}, {"Folder", 0}}, "Files refused");
  reason_ =
      new wxTextCtrl(this, wxID_ANY, "", wxDefaultPosition, FromDIP(wxSize(-1, 72)), wxTE_MULTILINE | wxTE_READONLY);
  set_accessible_name(reason_, "Why the selected file was refused", "");
  again_ = new wxButton(this, wxID_ANY, "&Try crashed ones again");
  auto* close = new wxButton(this, wxID_CLOSE);
  SetEscapeId(wxID_CLOSE);
  SetAffirmativeId(wxID_CLOSE);
  close->SetDefault();

  const int gap = FromDIP(12), small = FromDIP(6);
  auto* buttons = new wxBoxSizer(wxHORIZONTAL);
  buttons->Add(again_);
  buttons->AddStretchSpacer();
  buttons->Add(close);
  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(found_heading, wxSizerFlags().Border(wxLEFT | wxTOP | wxRIGHT, gap));
  sizer->Add(found_.list, wxSizerFlags(3).Expand().Border(wxLEFT | wxRIGHT | wxTOP, small).Border(wxALL, gap));
  sizer->Add(refused_heading, wxSizerFlags().Border(wxLEFT | wxRIGHT, gap));
  sizer->Add(refused_.list, wxSizerFlags(2).Expand().Border(wxALL, gap));
  sizer->Add(reason_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
  sizer->Add(buttons, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
  SetSizer(sizer);
  SetSize(FromDIP(wxSize(820, 560)));
  SetMinSize(FromDIP(wxSize(560, 420)));
  CentreOnParent();

  refused_.list->Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, [this](wxDataViewEvent&) { show_reason(); });
  again_->Bind(wxEVT_BUTTON, [this, again = std::move(try_again)](wxCommandEvent&) {
    again_->Disable();
    again();
  });
}

void PiecesDialog::show(std::shared_ptr<const PieceTypes> types) {
  types_ = types ? std::move(types) : std::make_shared<const PieceTypes>();
  std::vector<TableRow> found, refused;
  for (const PieceType& type : types_->types)
    found.push_back(
        {{shown(type.name), shown(type.id), shown(type.plugin_id + " " + type.plugin_version), shown(type.description)},
         {},
         ""});
  for (const RefusedFile& file : types_->refused) {
    const std::string name = file.file.filename().string();
    refused.push_back({{shown(file.type.empty() ? name : name + " (" + file.type + ")"), in_words(file.reason),
                        shown(file.file.parent_path().string())},
                       {},
                       ""});
  }
  found_.model->set_rows(std::move(found));
  refused_.model->set_rows(std::move(refused));
  again_->Enable(std::ranges::any_of(
      types_->refused, [](const RefusedFile& file) { return file.reason == RefusalReason::crashed_before; }));
  show_reason();
}

void PiecesDialog::show_reason() {
  const int row = refused_.selected();
  wxString text = types_->refused.empty() ? "No file was refused." : "Select a file to read why it was refused.";
  if (row >= 0 && row < static_cast<int>(types_->refused.size()))
    text = shown(types_->refused[static_cast<std::size_t>(row)].sentence);
  reason_->ChangeValue(text);
}

}  // namespace quadrille
