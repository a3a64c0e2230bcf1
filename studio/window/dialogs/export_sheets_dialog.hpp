// The dialog "Export sheets": which, on what paper, into which folder; then how far it is, and a way to give it up.
#pragma once

#include <wx/button.h>
#include <wx/checkbox.h>
#include <wx/choice.h>
#include <wx/dialog.h>
#include <wx/gauge.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "studio/window/job/newest.hpp"
#include "studio/window/job/sheet_export.hpp"

namespace quadrille {

class ExportSheetsDialog : public wxDialog {
 public:
  /// `name` is what the files' names begin with.
  ExportSheetsDialog(wxWindow* parent, std::shared_ptr<const Study> study, Paper paper, std::filesystem::path folder,
                     std::string name);
  ~ExportSheetsDialog() override;

  /// As if the boxes, lists and fields had been used.
  void choose(const std::vector<std::string>& kinds, Paper paper, const std::filesystem::path& folder);
  /// Begins, after asking about files that would be replaced. False where it cannot, or that was declined.
  bool begin();
  /// Gives up what is under way.
  void give_up();
  bool working() const { return working_; }
  /// How the last one ended.
  const SheetsExported& done() const { return done_; }
  wxString words() const { return words_->GetLabel(); }

 private:
  SheetExport wanted() const;
  void receive(std::uint64_t number, const SheetProgress& progress);
  void receive(std::uint64_t number, const SheetsExported& done);
  void show_state();
  void say(const std::string& words);
  void choose_folder();

  std::shared_ptr<const Study> study_;
  std::string name_;
  std::vector<wxCheckBox*> kinds_;
  wxChoice* paper_ = nullptr;
  wxTextCtrl* folder_ = nullptr;
  wxGauge* gauge_ = nullptr;
  wxStaticText* words_ = nullptr;
  wxButton *export_ = nullptr, *close_ = nullptr, *browse_ = nullptr;
  bool working_ = false;
  SheetsExported done_;
  std::uint64_t number_ = 0;  ///< of what was asked last; answers of another number are too late
  struct Order {
    std::uint64_t number = 0;
    std::optional<SheetExport> wanted;  ///< nothing: the one of this number is given up
  };
  std::unique_ptr<Newest<Order>> newest_;  ///< last, so that all it uses is there before it starts
};

}  // namespace quadrille
