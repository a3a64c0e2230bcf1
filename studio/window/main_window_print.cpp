// The window's part in printing and in exporting sheets: the dialogs are shown for what is worked out of the present event.
#include <wx/stdpaths.h>

#include "studio/window/dialogs/export_sheets_dialog.hpp"
#include "studio/window/dialogs/print_dialog.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

void MainWindow::show_print() {
  if (!document_) return;
  settle_fields();
  if (updating()) {
    SetStatusText("The pieces are still being built. Print again in a moment.");
    return;
  }
  PrintDialog dialog(this, study_, paper_.value_or(usual_paper(document_->event().units)));
  dialog.ShowModal();
}

void MainWindow::show_export_sheets() {
  if (!document_) return;
  settle_fields();
  if (updating()) {
    SetStatusText("The pieces are still being built. Export again in a moment.");
    return;
  }
  const auto folder =
      document_->has_file() ? document_->file().parent_path() : path_of(wxStandardPaths::Get().GetDocumentsDir());
  const std::string name =
      document_->has_file() ? document_->file().stem().string() : file_stem_of(document_->event().title);
  ExportSheetsDialog dialog(this, study_, paper_.value_or(usual_paper(document_->event().units)), folder, name);
  dialog.ShowModal();
  if (!dialog.done().files.empty())
    SetStatusText(shown("Exported " + dialog.done().files.front().parent_path().string()));
}

}  // namespace quadrille
