// What leaves the window: sheets to the printer, the drawing and the sheets into files.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "studio/paper/sheet.hpp"

class wxFrame;

namespace quadrille {

class EventDesk;
struct Study;

class SheetHands {
 public:
  /// `frame` owns the dialogs; both outlive this.
  SheetHands(EventDesk& desk, wxFrame& frame) : desk_(desk), frame_(frame) {}

  void print();
  void export_sheets();
  void choose_and_export();
  /// Exports the drawing as soon as its figures are those of the present event.
  void export_to(const std::filesystem::path& file);
  /// Exports what waits, where what was worked out is that of the present event by now.
  void follow();
  /// Another event was opened: what waits was about the one before.
  void forget() { waiting_.reset(); }

  void choose_paper(Paper paper) { paper_ = paper; }
  /// The chosen one, else the usual one for the event's units. While an event is open.
  Paper paper() const;

 private:
  std::string name() const;
  void export_now(const Study& study, const std::filesystem::path& file);

  EventDesk& desk_;
  wxFrame& frame_;
  std::optional<std::filesystem::path> waiting_;  ///< where the drawing goes once its figures are there
  std::optional<Paper> paper_;
};

}  // namespace quadrille
