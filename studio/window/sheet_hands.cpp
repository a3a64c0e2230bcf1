// Printing and exporting: always of what is worked out of the present event.
#include "studio/window/sheet_hands.hpp"

#include <wx/filedlg.h>
#include <wx/frame.h>
#include <wx/stdpaths.h>
#include <wx/utils.h>

#include <utility>

#include "studio/window/dialogs/export_sheets_dialog.hpp"
#include "studio/window/dialogs/print_dialog.hpp"
#include "studio/window/job/drawing_export.hpp"
#include "studio/window/job/event_desk.hpp"
#include "studio/window/job/sheet_export.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/toolkit/file_names.hpp"
#include "studio/window/toolkit/notices.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

Paper SheetHands::paper() const { return paper_.value_or(usual_paper(desk_.event().units)); }

/// What the names of files begin with.
std::string SheetHands::name() const {
  return desk_.file().empty() ? file_stem_of(desk_.event().title) : desk_.file().stem().string();
}

void SheetHands::print() {
  if (!desk_.is_open()) return;
  desk_.settle_fields();
  const auto study = desk_.study_now();
  if (!study) return desk_.say("The pieces are still being built. Print again in a moment.");
  PrintDialog(&frame_, study, paper()).ShowModal();
}

void SheetHands::export_sheets() {
  if (!desk_.is_open()) return;
  desk_.settle_fields();
  const auto study = desk_.study_now();
  if (!study) return desk_.say("The pieces are still being built. Export again in a moment.");
  const auto folder =
      desk_.file().empty() ? path_of(wxStandardPaths::Get().GetDocumentsDir()) : desk_.file().parent_path();
  ExportSheetsDialog dialog(&frame_, study, paper(), folder, name());
  dialog.ShowModal();
  if (!dialog.done().files.empty()) desk_.say("Exported " + dialog.done().files.front().parent_path().string());
}

void SheetHands::choose_and_export() {
  if (!desk_.is_open()) return;
  wxFileDialog dialog(&frame_, "Export the drawing", shown(desk_.file().parent_path().string()), shown(name() + ".pdf"),
                      "PDF, all pages in one file (*.pdf)|*.pdf|SVG, one file a page (*.svg)|*.svg|"
                      "PNG, one file a page (*.png)|*.png",
                      wxFD_SAVE | wxFD_OVERWRITE_PROMPT);
  if (dialog.ShowModal() != wxID_OK) return;
  static constexpr const char* endings[] = {".pdf", ".svg", ".png"};
  const auto typed = path_of(dialog.GetPath());
  auto file = typed;
  const int format = dialog.GetFilterIndex();
  // Where the kind was changed in the list, the name offered still ends in .pdf.
  if (format > 0 && format < 3 && file.extension() == ".pdf") file.replace_extension(endings[format]);
  file = with_ending(file, format >= 0 && format < 3 ? endings[format] : ".pdf");
  if (may_become(&frame_, typed, file)) export_to(file);
}

void SheetHands::export_to(const std::filesystem::path& file) {
  if (!desk_.is_open()) return;
  desk_.settle_fields();
  if (const auto study = desk_.study_now()) return export_now(*study, file);
  waiting_ = file;
  desk_.say("The drawing is exported as soon as the pieces are built…");
}

void SheetHands::follow() {
  const auto study = waiting_ ? desk_.study_now() : nullptr;
  if (study) export_now(*study, *std::exchange(waiting_, std::nullopt));
}

void SheetHands::export_now(const Study& study, const std::filesystem::path& file) {
  const Exported planned = plan_export(study, file, paper());
  std::string replaced;
  for (const auto& page : planned.files)
    if (page != file && is_there(page)) replaced += (replaced.empty() ? "" : ", ") + page.filename().string();
  if (!replaced.empty() &&
      !ask_whether(&frame_, "There are such files already",
                   "Each page goes into a file of its own, and these would be replaced: " + replaced + ".",
                   "&Replace them"))
    return;
  Exported done;
  {
    const wxBusyCursor busy;
    done = export_drawing(study, file, paper());
  }
  if (!done.fault.empty()) return tell_error(&frame_, "The drawing could not be exported", done.fault);
  std::string text = "Exported " + done.files.front().string();
  if (done.files.size() > 1) text += " to " + done.files.back().filename().string();
  desk_.say(text);
}

}  // namespace quadrille
