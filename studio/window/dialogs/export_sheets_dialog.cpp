#include "studio/window/dialogs/export_sheets_dialog.hpp"

#include <wx/dirdlg.h>
#include <wx/sizer.h>

#include <algorithm>
#include <system_error>
#include <utility>

#include "studio/sheets/sheet_kinds.hpp"
#include "studio/window/dialogs/paper_choice.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/notices.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int steps = 1000;  // of the gauge

}  // namespace

ExportSheetsDialog::ExportSheetsDialog(wxWindow* parent, std::shared_ptr<const Study> study, Paper paper,
                                       std::filesystem::path folder, std::string name)
    : wxDialog(parent, wxID_ANY, "Export sheets", wxDefaultPosition, wxDefaultSize,
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER),
      study_(std::move(study)),
      name_(std::move(name)) {
  const int gap = FromDIP(8);
  auto* all = new wxBoxSizer(wxVERTICAL);
  for (const SheetKind& kind : sheet_kinds()) {
    auto* box = new wxCheckBox(this, wxID_ANY, shown(std::string(kind.title) + ": " + std::string(kind.what)));
    box->SetValue(kind.key != "all" && kind.key != "elevation");
    box->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent&) { show_state(); });
    all->Add(box, wxSizerFlags().Border(wxLEFT | wxTOP | wxRIGHT, gap));
    kinds_.push_back(box);
  }
  auto* fields = new wxFlexGridSizer(2, FromDIP(wxSize(12, 8)));
  fields->AddGrowableCol(1);
  paper_ = new wxChoice(this, wxID_ANY);
  offer_papers(*paper_, paper);
  set_accessible_name(paper_, "Paper", "");
  folder_ = new wxTextCtrl(this, wxID_ANY, shown(folder.string()));
  set_accessible_name(folder_, "Folder", "The sheets are written into it, a PDF each");
  folder_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { show_state(); });
  browse_ = new wxButton(this, wxID_ANY, wxString::FromUTF8("&Choose…"));
  set_accessible_name(browse_, "Choose the folder", "");
  browse_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { choose_folder(); });
  fields->Add(new wxStaticText(this, wxID_ANY, "Paper"), wxSizerFlags().CentreVertical());
  fields->Add(paper_);
  fields->Add(new wxStaticText(this, wxID_ANY, "Folder"), wxSizerFlags().CentreVertical());
  auto* row = new wxBoxSizer(wxHORIZONTAL);
  row->Add(folder_, wxSizerFlags(1).CentreVertical());
  row->Add(browse_, wxSizerFlags().CentreVertical().Border(wxLEFT, gap));
  fields->Add(row, wxSizerFlags().Expand());
  all->Add(fields, wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  gauge_ = new wxGauge(this, wxID_ANY, steps);
  set_accessible_name(gauge_, "How far the export is", "");
  words_ = new wxStaticText(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize,
                            wxST_NO_AUTORESIZE | wxST_ELLIPSIZE_MIDDLE);
  all->Add(gauge_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, FromDIP(12)));
  all->Add(words_, wxSizerFlags().Expand().Border(wxLEFT | wxTOP | wxRIGHT, FromDIP(12)));
  all->AddStretchSpacer();
  auto* buttons = new wxBoxSizer(wxHORIZONTAL);
  close_ = new wxButton(this, wxID_CANCEL, "&Close");
  export_ = new wxButton(this, wxID_OK, "&Export");
  buttons->AddStretchSpacer();
  buttons->Add(close_, wxSizerFlags().Border(wxRIGHT, gap));
  buttons->Add(export_);
  all->Add(buttons, wxSizerFlags().Expand().Border(wxALL, FromDIP(12)));
  SetSizerAndFit(all);
  SetSize(wxSize(FromDIP(600), GetSize().y + FromDIP(8)));
  Bind(
      wxEVT_BUTTON, [this](wxCommandEvent&) { begin(); }, wxID_OK);
  Bind(
      wxEVT_BUTTON, [this](wxCommandEvent& event) { working_ ? give_up() : event.Skip(); }, wxID_CANCEL);
  export_->SetDefault();
  newest_ = std::make_unique<Newest<Order>>([this](const Order& order, const Stale& stale) {
    const auto told = [this, number = order.number](const SheetProgress& progress) {
      CallAfter([this, number, progress] { receive(number, progress); });
    };
    SheetsExported done{{}, {}, true};
    if (order.wanted) done = export_sheets(*order.wanted, stale, told);
    CallAfter([this, number = order.number, done] { receive(number, done); });
  });
  show_state();
}

// What is under way is given up first: it answers to this dialog.
ExportSheetsDialog::~ExportSheetsDialog() { newest_.reset(); }

void ExportSheetsDialog::choose(const std::vector<std::string>& kinds, Paper paper,
                                const std::filesystem::path& folder) {
  for (std::size_t i = 0; i < kinds_.size(); ++i)
    kinds_[i]->SetValue(std::ranges::find(kinds, sheet_kinds()[i].key) != kinds.end());
  paper_->SetSelection(static_cast<int>(paper));
  folder_->ChangeValue(shown(folder.string()));
  show_state();
}

SheetExport ExportSheetsDialog::wanted() const {
  SheetExport wanted{study_, {}, static_cast<Paper>(paper_->GetSelection()), path_of(folder_->GetValue()), name_};
  for (std::size_t i = 0; i < kinds_.size(); ++i)
    if (kinds_[i]->GetValue()) wanted.kinds.emplace_back(sheet_kinds()[i].key);
  return wanted;
}

bool ExportSheetsDialog::begin() {
  const SheetExport wanted = this->wanted();
  if (working_ || wanted.kinds.empty()) return false;
  std::error_code unknown;
  std::filesystem::create_directories(wanted.folder, unknown);  // one that is named is wanted
  if (!std::filesystem::is_directory(wanted.folder, unknown)) {
    say("This folder is not there and cannot be made; choose another.");
    folder_->SetFocus();
    return false;
  }
  say("");
  std::string replaced;
  for (const auto& file : files_of(wanted))
    if (std::filesystem::exists(file, unknown)) replaced += (replaced.empty() ? "" : ", ") + file.filename().string();
  if (!replaced.empty() &&
      !ask_whether(this, "There are such files already", "These would be replaced: " + replaced + ".", "&Replace them"))
    return false;
  working_ = true;
  done_ = {};
  gauge_->SetValue(0);
  newest_->ask({++number_, wanted});
  say("The sheets are being made…");
  show_state();
  return true;
}

/// It is over when an answer says so: what is being written is written whole. One that was not even begun is forgotten for
/// the order to give it up, which answers in its place.
void ExportSheetsDialog::give_up() {
  if (!working_) return;
  newest_->ask({number_, std::nullopt});
  close_->Disable();
  say("Giving up…");
}

void ExportSheetsDialog::receive(std::uint64_t number, const SheetProgress& progress) {
  if (number != number_ || !working_) return;
  if (!close_->IsEnabled()) return;  // it is being given up
  // Pieces that are reckoned at once may tell of themselves in another order.
  gauge_->SetValue(std::max(gauge_->GetValue(), static_cast<int>(progress.share * steps)));
  say(progress.doing);
}

void ExportSheetsDialog::receive(std::uint64_t number, const SheetsExported& done) {
  if (number != number_ || !working_) return;
  working_ = false;
  done_ = done;
  gauge_->SetValue(done.fault.empty() && !done.given_up ? steps : 0);
  if (done.given_up)
    say("Given up; nothing was written.");
  else if (done.fault.empty())
    say(std::to_string(done.files.size()) + (done.files.size() == 1 ? " sheet was" : " sheets were") + " written.");
  else
    say(done.fault);
  show_state();
  if (!done.fault.empty()) tell_error(this, "The sheets could not be exported", done.fault);
}

void ExportSheetsDialog::show_state() {
  const SheetExport now = wanted();
  for (wxCheckBox* box : kinds_) box->Enable(!working_);
  for (wxWindow* window :
       {static_cast<wxWindow*>(paper_), static_cast<wxWindow*>(folder_), static_cast<wxWindow*>(browse_)})
    window->Enable(!working_);
  export_->Enable(!working_ && !now.kinds.empty() && !now.folder.empty());
  close_->Enable();
  close_->SetLabel(working_ ? "&Give up" : "&Close");
}

void ExportSheetsDialog::say(const std::string& words) {
  words_->SetLabelText(shown(words));
  words_->SetToolTip(shown(words));
}

void ExportSheetsDialog::choose_folder() {
  wxDirDialog dialog(this, "Folder for the sheets", folder_->GetValue(), wxDD_DEFAULT_STYLE);
  if (dialog.ShowModal() == wxID_OK) folder_->SetValue(dialog.GetPath());
}

}  // namespace quadrille
