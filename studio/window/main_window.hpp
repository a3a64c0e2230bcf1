// The studio's one window: fixed panes, the document, and the worker that keeps them true.
#pragma once

#include <wx/frame.h>
#include <wx/infobar.h>
#include <wx/notebook.h>

#include <filesystem>
#include <memory>
#include <optional>
#include <string>

#include "studio/window/canvas.hpp"
#include "studio/window/commands.hpp"
#include "studio/window/document.hpp"
#include "studio/window/findings_panel.hpp"
#include "studio/window/outline.hpp"
#include "studio/window/pieces_dialog.hpp"
#include "studio/window/totals_panel.hpp"
#include "studio/window/worker.hpp"

namespace quadrille {

class MainWindow : public wxFrame {
 public:
  /// `executable` is where plugins and palettes are looked for beside.
  explicit MainWindow(std::filesystem::path executable);
  ~MainWindow() override;

  /// Opens the event at `file` in place of the present one, after asking about unsaved changes. False where that was
  /// declined or failed; the user has then been told, and the present event stays.
  bool open_file(const std::filesystem::path& file);
  /// False where it failed or was declined; the user has then been told.
  bool save();
  bool save_as(const std::filesystem::path& file);
  /// Exports the drawing as soon as its figures are those of the present event.
  void export_to(const std::filesystem::path& file);
  void undo();
  void redo();
  /// Moves the selected piece along the floor.
  void move_selected(double right_m);
  void set_units(Units units);
  void select(const std::string& area, const std::string& piece);

  /// Null where no event is open.
  const Document* document() const { return document_.get(); }
  /// What was worked out last; null before.
  const Study* study() const { return study_.get(); }
  /// True while what is shown is older than the event.
  bool updating() const { return document_ && (!study_ || study_->revision != revision_); }
  const std::string& selected_piece() const { return piece_; }
  const std::string& shown_area() const { return area_; }
  Canvas& canvas() { return *canvas_; }
  Outline& outline() { return *outline_; }
  TotalsPanel& totals() { return *totals_; }
  FindingsPanel& findings() { return *findings_; }

 private:
  // main_window.cpp: panes, and what they show
  void lay_out();
  void receive(std::shared_ptr<const Study> study);
  void receive(std::shared_ptr<const PieceTypes> types);
  void event_changed();
  void show_area();
  void show_state();
  void show_stale();
  void show_place(std::optional<Point2> place);
  const Area* area() const;
  MenuState menu_state() const;

  // main_window_files.cpp: opening, saving, exporting, closing
  void choose_and_open();
  bool choose_and_save();
  void choose_and_export();
  bool settle_changes();
  bool finish_save(const std::optional<std::string>& fault);
  BuiltEvent built_now() const;
  void export_now(const std::filesystem::path& file);
  void close(wxCloseEvent& event);

  // main_window_commands.cpp: menus, keys and edits
  void bind_commands();
  bool may_edit(const std::string& piece);
  void commit(const std::string& name, Event event);
  void drag(const std::string& piece, double moved_m);
  void step_area(int by);
  void next_pane();
  void show_piece_types();
  void try_crashed_again();
  void show_about();

  std::filesystem::path executable_;
  std::unique_ptr<Document> document_;
  std::uint64_t revision_ = 0;  ///< grows with every change; never begins anew, so that no old answer is taken
  std::shared_ptr<const Study> study_;
  std::shared_ptr<const PieceTypes> types_;
  std::string area_, piece_;  ///< ids of what is shown and selected
  std::optional<double> drag_from_m_;
  std::optional<std::filesystem::path> export_pending_;
  std::optional<Paper> paper_;  ///< chosen for drawings; none: the usual one for the event's units
  SceneLook look_;

  wxInfoBar* info_ = nullptr;
  Outline* outline_ = nullptr;
  Canvas* canvas_ = nullptr;
  wxNotebook* strip_ = nullptr;
  TotalsPanel* totals_ = nullptr;
  FindingsPanel* findings_ = nullptr;
  PiecesDialog* pieces_dialog_ = nullptr;  ///< while it is open
  std::unique_ptr<Worker> worker_;         ///< last: it answers to all above
};

}  // namespace quadrille
